import type { WearBand, WearBands } from "../../survey/profile-types.js";
import { angleText } from "./angle-text.js";
import { plotText } from "./plot-text.js";
import {
  nominalText,
  type ShownUnits,
  sizeMeasured,
  sizeText,
  smallMeasured,
  smallText,
  stationText,
} from "./shown-units.js";

/** What a band says of itself under the pointer. */
export function bandWords(band: WearBand, { profile, nominal }: WearBands, units: ShownUnits): string {
  const { number, state, shape, from, to, diameter, depth, smallest, ovality, readingCount } = band;
  const where = smallest.angle === undefined ? "" : ` at ${angleText(smallest.angle)}`;
  return [
    `<b>band ${number}: ${state}, ${shape}</b>`,
    `stations ${stationText(from, units)} to ${stationText(to, units)} ${units.sizeSymbol}, ${readingCount} readings`,
    `${sizeMeasured(diameter, units)} (95 %)`,
    shape === "sloping"
      ? `${sizeText(band.diameterAtFrom, units)} at its start, ${sizeText(band.diameterAtTo, units)} at its end`
      : "",
    depth && nominal ? `${smallMeasured(depth, units)} below ${nominalText(nominal, units)}` : "",
    ovality ? `oval by ${smallText(ovality, units)}` : "",
    `smallest ${sizeText(smallest.diameter, units)}, station ${stationText(smallest.station, units)}${where}`,
    plotText(profile.file),
  ]
    .filter((line) => line !== "")
    .join("<br>");
}
