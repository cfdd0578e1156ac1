import type { DiameterReading, GrossReading, Profile } from "../../survey/profile-types.js";
import { angleText } from "./angle-text.js";
import type { FlaggedPoint } from "./flagged-marks.js";
import { onScale } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { readingHover } from "./reading-hover.js";
import { offText, type ShownUnits, sizeText } from "./shown-units.js";

/** The name under which gross readings stand in a legend. */
export const grossName = "gross, no weight";

/** Gross readings as points: of their diameter, or of their distance from the fit. */
export function grossPoints(
  profile: Profile,
  gross: readonly GrossReading[],
  units: ShownUnits,
  by: "diameter" | "residual",
): FlaggedPoint[] {
  return gross.map(({ reading: index, residual, likely }) => {
    const reading = profile.readings[index]!;
    const off = offText(residual, units);
    const slip = likely === "" ? "" : ` (${plotText(likely)})`;
    return {
      x: onScale(reading.station, units.size),
      y: by === "diameter" ? onScale(reading.diameter, units.size) : onScale(residual, units.small),
      hover: readingHover(reading, profile.file, units, undefined, `<b>${off}${slip}, given no weight</b>`),
      place: placeOf(reading),
      value: by === "diameter" ? sizeText(reading.diameter, units) : off,
    };
  });
}

/** Readings off the scale of a figure that judges none of them. */
export function farPoints(
  readings: readonly DiameterReading[],
  file: string,
  units: ShownUnits,
): FlaggedPoint[] {
  return readings.map((reading) => ({
    x: onScale(reading.station, units.size),
    y: onScale(reading.diameter, units.size),
    hover: readingHover(reading, file, units, undefined),
    place: placeOf(reading),
    value: sizeText(reading.diameter, units),
  }));
}

function placeOf({ line, angle }: DiameterReading): string {
  return `line ${line}${angle === undefined ? "" : ` at ${angleText(angle)}`}`;
}
