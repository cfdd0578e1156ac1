import { formatNumber } from "./format-number.js";

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
  const steps = (value * up) / down;
  // So little is the rounding of a conversion, not a figure.
  const slack = Math.abs(steps) * 1e-12;
  const whole = side === "at most" ? Math.floor(steps + slack) : Math.ceil(steps - slack);
  return (whole * down) / up;
}
