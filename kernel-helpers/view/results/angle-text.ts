import { type Angle, formatFixed, formatNumber } from "../../quantity/index.js";

/** An angle round the shaft, or "" where none is known: "90°". */
export function angleText(angle: Angle | undefined): string {
  return angle === undefined ? "" : `${formatNumber(angle.in("degree"))}°`;
}

/**
 * An angle in degrees, minutes and seconds, rounded to a decimal of a second.
 *
 * @param angle an angle of either sign
 * @param decimals decimals of a second, default 0
 * @example degreesMinutesSeconds(degree(1.4321)) // "1° 25′ 56″"
 */
export function degreesMinutesSeconds(angle: Angle, decimals: number = 0): string {
  // In whole steps of the last decimal, so that 59.99″ carries into the minutes and never shows as 60″.
  const step = 10 ** decimals;
  const steps = Math.round(Math.abs(angle.in("degree")) * 3600 * step);
  const seconds = (steps % (60 * step)) / step;
  const minutes = Math.floor(steps / (60 * step)) % 60;
  const degrees = Math.floor(steps / (3600 * step));
  const sign = angle.si < 0 && steps > 0 ? "−" : "";
  return `${sign}${degrees}° ${minutes}′ ${formatFixed(seconds, decimals)}″`;
}
