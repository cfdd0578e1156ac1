import { type AnyQuantity, quantityFromSi, unitNamed } from "../quantity/index.js";

/**
 * A quantity to so many digits in the unit it was written in, for a figure that a decision is made on: nobody pulls to
 * a thousandth of a pound.
 *
 * @param value   written in a unit; one in none is rounded in SI
 * @param digits  1 to 15 [-]
 * @returns the same kind and unit
 * @throws RangeError  digits is no whole number from 1 to 15
 * @example rounded(lbfFoot(348.916), 3).toString() // "349 lbf·ft"
 */
export function rounded<Q extends AnyQuantity>(value: Q, digits: number): Q {
  if (!Number.isInteger(digits) || digits < 1 || digits > 15)
    throw new RangeError(`rounded: digits must be a whole number from 1 to 15, got ${digits}`);
  const { si } = value.writtenIn === undefined ? { si: 1 } : unitNamed(value.writtenIn);
  const shown = Number((value.si / si).toPrecision(digits));
  return quantityFromSi(value.dimension, shown * si, value.writtenIn as never) as AnyQuantity as Q;
}
