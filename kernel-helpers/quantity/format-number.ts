/**
 * A number for reading: rounded to a count of significant digits, trailing zeros dropped, no thousands
 * mark, a power of ten only below 10⁻⁴ and from 10⁹ on, a true minus sign. What is no finite number is
 * written as such ("Infinity", "NaN").
 *
 * @param value        the number [-]
 * @param significant  at most so many significant digits, 1 to 17 (default 6) [-]
 * @throws RangeError  the count of digits is no whole number from 1 to 17
 * @example formatNumber(2.4375)         // "2.4375"
 * @example formatNumber(-0.00043210001) // "−0.0004321"
 * @example formatNumber(0.0000117)      // "1.17×10⁻⁵"
 */
export function formatNumber(value: number, significant = 6): string {
  if (!Number.isInteger(significant) || significant < 1 || significant > 17)
    throw new RangeError(`formatNumber: significant must be a whole number from 1 to 17, got ${significant}`);
  if (!Number.isFinite(value)) return withMinus(String(value));
  const rounded = Number(value.toPrecision(significant));
  const size = Math.abs(rounded);
  if (size === 0 || (size >= 1e-4 && size < 1e9)) return withMinus(String(rounded));
  const [digits, power] = rounded.toExponential().split("e");
  return withMinus(`${digits}×10${superscript(Number(power))}`);
}

/**
 * A number with a fixed count of decimals and a true minus sign; never "−0.00".
 *
 * @param value     the number [-]
 * @param decimals  digits behind the point, 0 to 100 [-]
 * @throws RangeError  the count of decimals is no whole number from 0 to 100
 * @example formatFixed(-4.31, 1)  // "−4.3"
 * @example formatFixed(-0.001, 2) // "0.00"
 */
export function formatFixed(value: number, decimals: number): string {
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 100)
    throw new RangeError(`formatFixed: decimals must be a whole number from 0 to 100, got ${decimals}`);
  const text = value.toFixed(decimals);
  return withMinus(Number(text) === 0 ? text.replace("-", "") : text);
}

/**
 * How many decimals a value is given, so that its uncertainty keeps two significant digits.
 *
 * The uncertainty is rounded first: 0.0996 is written 0.10 and asks for two decimals, not three.
 *
 * @param uncertainty  standard or expanded, in the unit shown, > 0 [-]
 * @param digits       significant digits of the uncertainty, 1 to 17 (default 2) [-]
 * @returns the count of decimals, 0 where even the last whole digit is in doubt [-]
 * @throws RangeError  the uncertainty is not more than 0, or the count of digits is none from 1 to 17
 * @example decimalsFor(0.000238) // 5, so that 2.43317 stands beside ± 0.00024
 * @source JCGM 100:2008 (GUM), 7.2.6: two significant digits at most
 */
export function decimalsFor(uncertainty: number, digits = 2): number {
  return Math.max(0, -lastPlace("decimalsFor", uncertainty, digits));
}

/**
 * A value and its uncertainty rounded to the same place: the second significant digit of the uncertainty,
 * also where that is a ten or a hundred. Rounded to the nearest, not upward. An uncertainty of 0 leaves the
 * value as it is, to ten digits.
 *
 * @param value        the estimate [-]
 * @param uncertainty  standard or expanded, in the unit of the value, ≥ 0 [-]
 * @returns the two as text
 * @throws RangeError  the uncertainty is negative or no finite number
 * @example formatWithUncertainty(2.433172, 0.000238) // ["2.43317", "0.00024"]
 * @example formatWithUncertainty(29876.5, 1234)      // ["29900", "1200"]
 * @source JCGM 100:2008 (GUM), 7.2.6
 */
export function formatWithUncertainty(value: number, uncertainty: number): [string, string] {
  if (uncertainty === 0) return [formatNumber(value, 10), "0"];
  const place = lastPlace("formatWithUncertainty", uncertainty, 2);
  const show = (number: number): string =>
    place <= 0 ? formatFixed(number, -place) : formatFixed(Math.round(number / 10 ** place) * 10 ** place, 0);
  return [show(value), show(uncertainty)];
}

/**
 * A whole number as a superscript.
 *
 * @example superscript(-12) // "⁻¹²"
 */
export function superscript(whole: number): string {
  return [...String(whole)].map((c) => (c === "-" ? "⁻" : "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(c)])).join("");
}

/** The power of ten of the last digit kept. */
function lastPlace(caller: string, uncertainty: number, digits: number): number {
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty))
    throw new RangeError(`${caller}: uncertainty must be more than 0, got ${uncertainty}`);
  if (!Number.isInteger(digits) || digits < 1 || digits > 17)
    throw new RangeError(`${caller}: digits must be a whole number from 1 to 17, got ${digits}`);
  // toExponential rounds before the power of ten is read.
  const power = Number(uncertainty.toExponential(digits - 1).split("e")[1]);
  return power - digits + 1;
}

function withMinus(text: string): string {
  return text.replace(/^-/, "−");
}
