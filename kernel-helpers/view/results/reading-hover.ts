import { type Length, measured } from "../../quantity/index.js";
import type { DiameterReading } from "../../survey/profile-types.js";
import { angleText } from "./angle-text.js";
import { plotText } from "./plot-text.js";
import { type ShownUnits, sizeMeasured, smallText, stationText } from "./shown-units.js";

/** The part of a reading that is told under the pointer. */
export type ReadingSaid = Pick<
  DiameterReading,
  "station" | "angle" | "diameter" | "standardUncertainty" | "line" | "remark"
>;

/** What a reading says of itself under the pointer: place, size, depth, and where it stands in the file. */
export function readingHover(
  reading: ReadingSaid,
  file: string,
  units: ShownUnits,
  nominal: Length | undefined,
  extra: string = "",
): string {
  const { station, angle, diameter, standardUncertainty, line, remark } = reading;
  const depth = nominal?.minus(diameter);
  const lines = [
    `<b>station ${stationText(station, units)} ${units.sizeSymbol}${angle ? `, ${angleText(angle)}` : ""}</b>`,
    `${sizeMeasured(measured(diameter, standardUncertainty), units)} (95 %)`,
    depth === undefined
      ? ""
      : `${smallText(depth.absolute(), units)} ${depth.si < 0 ? "above" : "below"} nominal`,
    extra,
    `${plotText(file)}, line ${line}`,
    remark === "" ? "" : `“${plotText(remark)}”`,
  ];
  return lines.filter((text) => text !== "").join("<br>");
}
