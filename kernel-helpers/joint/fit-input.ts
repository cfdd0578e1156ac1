import type { AnyQuantity, Measured } from "../quantity/index.js";
import { normalQuantile, randomGenerator, studentTQuantile } from "../statistics/index.js";

/** What is known of an input: exactly; as measured; or only that it lies between two limits. */
export type FitInput<V extends AnyQuantity | number> =
  | V
  | Measured<V>
  | { readonly low: V; readonly high: V };

/** An input as SI numbers: its two ends (95 % of a measured one) and the value at any share of the way. */
export interface InputShape {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /** The value below which lies this share, 0 to 1 exclusive. */
  readonly at: (share: number) => number;
  readonly exact: boolean;
}

/**
 * The shape of an input: an exact one is itself, a measured one normal (or Student's t), a range rectangular.
 *
 * @throws TypeError   it is none of the three, or holds no number
 * @throws RangeError  the low end of a range is above its high end
 */
export function shapeOf(where: string, field: string, input: FitInput<AnyQuantity | number>): InputShape {
  if (typeof input === "object" && "low" in input) {
    const [low, high] = [number(where, field, input.low), number(where, field, input.high)];
    if (low > high)
      throw new RangeError(
        `${where}: ${field}.low must not be above ${field}.high (${input.high}), got ${input.low}`,
      );
    const at = (share: number): number => low + share * (high - low);
    return { low, middle: at(0.5), high, at, exact: low === high };
  }
  if (typeof input === "object" && "standardUncertainty" in input) {
    const middle = number(where, field, input.value);
    const u = number(where, field, input.standardUncertainty);
    const dof = input.degreesOfFreedom;
    const at = (share: number): number =>
      middle + u * (dof === Number.POSITIVE_INFINITY ? normalQuantile(share) : studentTQuantile(share, dof));
    if (u === 0) return { low: middle, middle, high: middle, at: () => middle, exact: true };
    return { low: at(0.025), middle, high: at(0.975), at, exact: false };
  }
  const value = number(where, field, input);
  return { low: value, middle: value, high: value, at: () => value, exact: true };
}

function number(where: string, field: string, value: unknown): number {
  const si =
    typeof value === "number" || (typeof value === "object" && value !== null) ? Number(value) : Number.NaN;
  if (!Number.isFinite(si))
    throw new TypeError(
      `${where}: ${field} must be a value, a measured value or { low, high }, got ${String(value)}`,
    );
  return si;
}

/**
 * Cases drawn from the shapes of some inputs, each input from random numbers of its own: an input held at its
 * middle leaves the draws of the others as they were, so that two runs can be compared.
 *
 * @param shapes  by name
 * @param count   how many cases [-]
 * @param seed    where the random numbers start [-]
 * @returns one column of SI values an input
 * @source JCGM 101:2008, clause 6.4
 */
export function drawCases<N extends string>(
  shapes: Readonly<Record<N, InputShape>>,
  count: number,
  seed: number,
): Readonly<Record<N, readonly number[]>> {
  const columns: Partial<Record<N, readonly number[]>> = {};
  for (const [i, name] of (Object.keys(shapes) as N[]).entries()) {
    const random = randomGenerator(seed + i);
    const shape = shapes[name];
    columns[name] = shape.exact
      ? new Array<number>(count).fill(shape.middle)
      : Array.from({ length: count }, () => shape.at(random.uniform()));
  }
  return columns as Readonly<Record<N, readonly number[]>>;
}
