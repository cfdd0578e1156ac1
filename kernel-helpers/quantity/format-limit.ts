import { formatFixed, formatNumber } from "./format-number.js";

/**
 * A limit for reading, to a count of significant digits and never past it: the most that is allowed is cut
 * down, the least that is wanted is taken up. What already has so few digits stays what it is, but for the last
 * digits of a conversion.
 *
 * @param value        the limit [-]
 * @param significant  at most so many significant digits, 1 to 15 [-]
 * @param side         "at most" for what must not be passed, "at least" for what must be reached
 * @throws RangeError  the count of digits is no whole number from 1 to 15
 * @example formatLimit(467.3, 2, "at most")   // "460"
 * @example formatLimit(0.4312, 3, "at least") // "0.432"
 */
export function formatLimit(value: number, significant: number, side: "at most" | "at least"): string {
  if (!Number.isInteger(significant) || significant < 1 || significant > 15)
    throw new RangeError(`formatLimit: significant must be a whole number from 1 to 15, got ${significant}`);
  return formatNumber(roundToLimit(value, significant, side), significant);
}

/**
 * A limit for reading, to a count of decimals and never past it: a diameter to a ten-thousandth of an inch, say.
 *
 * @param value     the limit [-]
 * @param decimals  digits behind the point, 0 to 15 [-]
 * @param side      "at most" or "at least", as for `formatLimit`
 * @throws RangeError  the count of decimals is no whole number from 0 to 15
 * @example formatFixedLimit(2.42477, 4, "at most")  // "2.4247"
 * @example formatFixedLimit(2.42477, 4, "at least") // "2.4248"
 */
export function formatFixedLimit(value: number, decimals: number, side: "at most" | "at least"): string {
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 15)
    throw new RangeError(`formatFixedLimit: decimals must be a whole number from 0 to 15, got ${decimals}`);
  if (!Number.isFinite(value)) return formatNumber(value);
  return formatFixed(wholeSteps(value * 10 ** decimals, side) / 10 ** decimals, decimals);
}

/**
 * A limit as a number, to a count of significant digits and never past it.
 *
 * @param value        the limit [-]
 * @param significant  so many significant digits, 1 to 15 [-]
 * @param side         "at most" or "at least", as for `formatLimit`
 * @example roundToLimit(344.7, 2, "at most") // 340
 */
export function roundToLimit(value: number, significant: number, side: "at most" | "at least"): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const power = Math.floor(Math.log10(Math.abs(value))) - significant + 1;
  // Powers of ten above 1 only: they are exact, 0.001 is not.
  const [up, down] = power < 0 ? [10 ** -power, 1] : [1, 10 ** power];
  return (wholeSteps((value * up) / down, side) * down) / up;
}

/** So little past a whole step is the rounding of a conversion, not a figure. */
function wholeSteps(steps: number, side: "at most" | "at least"): number {
  const slack = Math.abs(steps) * 1e-12;
  return side === "at most" ? Math.floor(steps + slack) : Math.ceil(steps - slack);
}
