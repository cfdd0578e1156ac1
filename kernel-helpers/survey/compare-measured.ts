import {
  type AnyQuantity,
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
  withArticle,
} from "../quantity/index.js";
import { coverageFactor, studentTCdf } from "../statistics/index.js";

/** Whether two ways to one number agree within their uncertainties. */
export interface Comparison {
  readonly kind: "comparison";
  readonly first: { readonly label: string; readonly result: Measured<AnyQuantity | number> };
  readonly second: { readonly label: string; readonly result: Measured<AnyQuantity | number> };
  /** First minus second. */
  readonly difference: Measured<AnyQuantity | number>;
  /** The expanded uncertainty of the difference, 95 %. */
  readonly expanded: AnyQuantity | number;
  readonly agrees: boolean;
  /** The chance of a difference at least so large if both measure the same thing (two-sided) [-]. */
  readonly chance: number;
}

/**
 * Compares two measured values of one thing, got in two ways.
 *
 * d = a − b, u(d)² = u(a)² + u(b)², they agree when |d| ≤ k·u(d)
 *
 * Valid when: the two do not share readings. Where they do, u(d) is too large and agreement too easily
 * granted; disagreement then still means disagreement.
 *
 * @param first   a value with its standard uncertainty, and what to call it
 * @param second  the other one, of the same kind
 * @returns difference with its uncertainty and effective degrees of freedom (Welch–Satterthwaite) and the verdict at 95 %
 * @throws TypeError   the two are of different kinds
 * @throws RangeError  both uncertainties are 0
 * @example compareMeasured(["fit", measured(inch(2.4332), inch(0.0001))], ["mean", measured(inch(2.4331), inch(0.0001))]).agrees // true
 * @source JCGM 100:2008 (GUM), 5.1.2 and G.4.1, equation G.2b
 */
export function compareMeasured<K extends string>(
  first: readonly [string, Measured<Quantity<K>>],
  second: readonly [string, Measured<Quantity<K>>],
): Comparison;
export function compareMeasured(
  first: readonly [string, Measured<number>],
  second: readonly [string, Measured<number>],
): Comparison;
export function compareMeasured(
  first: readonly [string, Measured<AnyQuantity | number>],
  second: readonly [string, Measured<AnyQuantity | number>],
): Comparison {
  const [a, b] = [first[1], second[1]];
  const [kindOfA, kindOfB] = [kindOf(a.value), kindOf(b.value)];
  if (kindOfA !== kindOfB)
    throw new TypeError(
      `compareMeasured: both must measure one thing, got ${withArticle(kindOfA)} and ${withArticle(kindOfB)}`,
    );
  const [uA, uB] = [a, b].map((m) => Number(m.standardUncertainty)) as [number, number];
  const u = Math.hypot(uA, uB);
  if (u === 0)
    throw new RangeError("compareMeasured: at least one value must have an uncertainty, got 0 and 0");
  const dof = u ** 4 / (uA ** 4 / a.degreesOfFreedom + uB ** 4 / b.degreesOfFreedom);
  const difference = Number(a.value) - Number(b.value);
  const expanded = coverageFactor(0.95, dof) * u;
  const like = (si: number): AnyQuantity | number => inKindOf(a.value, si);
  return Object.freeze({
    kind: "comparison",
    first: Object.freeze({ label: first[0], result: a }),
    second: Object.freeze({ label: second[0], result: b }),
    difference: measured(like(difference), like(u), dof),
    expanded: like(expanded),
    agrees: Math.abs(difference) <= expanded,
    chance: 2 * studentTCdf(-Math.abs(difference) / u, dof),
  });
}

function kindOf(value: AnyQuantity | number): string {
  return typeof value === "number" ? "number" : value.dimension;
}

/** A value of the same kind, shown in the same unit. */
function inKindOf(pattern: AnyQuantity | number, si: number): AnyQuantity | number {
  if (typeof pattern === "number") return si;
  return quantityFromSi(pattern.dimension, si, pattern.writtenIn);
}
