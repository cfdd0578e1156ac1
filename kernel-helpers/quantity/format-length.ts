import { formatFixed, formatWithUncertainty } from "./format-number.js";
import type { Quantity } from "./quantity-type.js";
import { unitNamed } from "./units.js";

/**
 * A length in thousandths of an inch, as the trade says small lengths.
 *
 * @param length    any length
 * @param decimals  decimals of a thousandth, 0 to 100 (default 1: a tenth of a thousandth) [-]
 * @throws RangeError  the count of decimals is no such whole number
 * @example inThou(inch(0.0043)) // "4.3 thou"
 */
export function inThou(length: Quantity<"length">, decimals = 1): string {
  return `${formatFixed(length.in("thou"), decimals)} thou`;
}

/**
 * A length in micrometres.
 *
 * @param length    any length
 * @param decimals  decimals of a micrometre, 0 to 100 (default 0) [-]
 * @throws RangeError  the count of decimals is no such whole number
 * @example inMicrometres(mm(0.0584)) // "58 µm"
 */
export function inMicrometres(length: Quantity<"length">, decimals = 0): string {
  return `${formatFixed(length.in("micrometre"), decimals)} µm`;
}

/**
 * A length as whole inches and a fraction in lowest terms. Where the length is not such a fraction, the
 * nearest one is given with the rest in thousandths, so that nothing is rounded in silence. A rest below
 * half a millionth of an inch counts as none.
 *
 * @param length       any length
 * @param denominator  the finest division: 2, 4, 8, 16, 32 or 64 (default 64) [-]
 * @throws RangeError  the denominator is no such division
 * @example inFraction(inch(2.4375)) // "2 7/16 in"
 * @example inFraction(inch(2.4332)) // "2 7/16 in − 4.3 thou"
 */
export function inFraction(length: Quantity<"length">, denominator = 64): string {
  if (![2, 4, 8, 16, 32, 64].includes(denominator))
    throw new RangeError(`inFraction: denominator must be 2, 4, 8, 16, 32 or 64, got ${denominator}`);
  const inches = length.in("inch");
  const parts = Math.round(Math.abs(inches) * denominator);
  let [over, under] = [parts % denominator, denominator];
  const whole = (parts - over) / denominator;
  while (over !== 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const fraction = over === 0 ? `${whole}` : whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
  const sign = inches < 0 && parts !== 0 ? "−" : "";
  const rest = (inches - (Math.sign(inches) * parts) / denominator) * 1000;
  // Half a millionth of an inch is far below anything read in a shop, and above rounding in the last digits.
  if (Math.abs(rest) < 0.0005) return `${sign}${fraction} in`;
  const decimals = Math.abs(rest) < 0.05 ? 3 : 1;
  return `${sign}${fraction} in ${rest < 0 ? "−" : "+"} ${formatFixed(Math.abs(rest), decimals)} thou`;
}

/**
 * A length with its expanded uncertainty, both rounded to two significant digits of the uncertainty.
 *
 * @param length    the estimate
 * @param expanded  its expanded uncertainty U = k·u, ≥ 0
 * @param unit      the unit both are written in
 * @throws RangeError  the uncertainty is negative
 * @example lengthWithUncertainty(inch(2.433172), inch(0.00024), "inch") // "2.43317 ± 0.00024 in"
 * @source JCGM 100:2008 (GUM), 7.2.4 and 7.2.6
 */
export function lengthWithUncertainty(
  length: Quantity<"length">,
  expanded: Quantity<"length">,
  unit: "inch" | "thou" | "mm" | "micrometre",
): string {
  const [value, uncertainty] = formatWithUncertainty(length.in(unit), expanded.in(unit));
  return `${value} ± ${uncertainty} ${unitNamed(unit).symbol}`;
}
