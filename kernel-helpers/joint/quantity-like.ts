import { type AnyQuantity, quantityFromSi } from "../quantity/index.js";

/** An SI value as a quantity of the kind and unit of another. */
export function quantityLike<Q extends AnyQuantity>(pattern: Q, si: number): Q {
  return quantityFromSi(pattern.dimension, si, pattern.writtenIn as never) as AnyQuantity as Q;
}
