import { type AnyQuantity, quantityFromSi, roundToLimit, unitNamed } from "../quantity/index.js";

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

/**
 * A limit to so many digits in the unit it was written in, cut down: what must not be passed is never rounded up.
 *
 * @param limit   written in a unit; one in none is cut in SI
 * @param digits  1 to 15 [-]
 * @returns the same kind and unit, at most the limit
 * @throws RangeError  digits is no whole number from 1 to 15
 * @example roundedDown(lbfFoot(348.916), 3).toString() // "348 lbf·ft"
 */
export function roundedDown<Q extends AnyQuantity>(limit: Q, digits: number): Q {
  if (!Number.isInteger(digits) || digits < 1 || digits > 15)
    throw new RangeError(`roundedDown: digits must be a whole number from 1 to 15, got ${digits}`);
  const { si } = limit.writtenIn === undefined ? { si: 1 } : unitNamed(limit.writtenIn);
  const shown = roundToLimit(limit.si / si, digits, "at most");
  return quantityFromSi(limit.dimension, shown * si, limit.writtenIn as never) as AnyQuantity as Q;
}
