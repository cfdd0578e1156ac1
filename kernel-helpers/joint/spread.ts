import { type AnyQuantity, quantityFromSi } from "../quantity/index.js";

/**
 * What a figure may be, when what goes into it is known only within ranges: 95 % of the cases that the ranges
 * allow lie from low to high.
 */
export interface Spread<V extends AnyQuantity | number> {
  readonly low: V;
  /** Half of the cases lie below. */
  readonly middle: V;
  readonly high: V;
  /** The values below which lie the shares of `spreadShares`, for reading off a chance. */
  readonly steps: readonly V[];
}

/** The shares that the steps of a spread stand for. */
export const spreadShares: readonly number[] = Object.freeze([
  0,
  0.025,
  ...Array.from({ length: 19 }, (_, i) => (i + 1) / 20),
  0.975,
  1,
]);

/**
 * The spread of simulated values: sorts a copy and reads off its quantiles, between two values in proportion.
 *
 * @param values   SI values of one kind, at least one [SI]
 * @param pattern  a value of the kind wanted, whose unit is kept
 * @returns low (2.5 %), middle (50 %), high (97.5 %) and the steps
 * @throws RangeError  there are no values
 * @example spreadOf([3, 1, 2], 0).middle // 2
 */
export function spreadOf<V extends AnyQuantity | number>(values: readonly number[], pattern: V): Spread<V> {
  if (values.length === 0) throw new RangeError("spreadOf: values must not be empty, got none");
  const sorted = Float64Array.from(values).sort();
  const at = (share: number): V => {
    const place = share * (sorted.length - 1);
    const below = Math.floor(place);
    const above = Math.min(below + 1, sorted.length - 1);
    const si = sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
    return like(pattern, si);
  };
  return Object.freeze({
    low: at(0.025),
    middle: at(0.5),
    high: at(0.975),
    steps: Object.freeze(spreadShares.map(at)),
  });
}

/**
 * The share of cases in which a figure is not more than a limit, read off its steps in proportion.
 *
 * @param spread  of the figure
 * @param limit   of the same kind
 * @returns a probability, 0 to 1 [-]
 * @example chanceNotAbove(spreadOf([0, 1, 2, 3, 4], 0), 2) // 0.5
 */
export function chanceNotAbove<V extends AnyQuantity | number>({ steps }: Spread<V>, limit: V): number {
  const sizes = steps.map(Number);
  const wanted = Number(limit);
  if (wanted < sizes[0]!) return 0;
  const above = sizes.findIndex((size) => size > wanted);
  if (above < 0) return 1;
  const [from, to] = [sizes[above - 1]!, sizes[above]!];
  const [shareFrom, shareTo] = [spreadShares[above - 1]!, spreadShares[above]!];
  return shareFrom + ((wanted - from) / (to - from)) * (shareTo - shareFrom);
}

function like<V extends AnyQuantity | number>(pattern: V, si: number): V {
  if (typeof pattern === "number") return si as V;
  return quantityFromSi(pattern.dimension, si, pattern.writtenIn) as AnyQuantity as V;
}
