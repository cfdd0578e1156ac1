import { type AnyQuantity, isQuantity, type Measured, quantityFromSi } from "../../quantity/index.js";
import { randomGenerator } from "../../statistics/index.js";
import type { PlainNumbers, WeighedLimit, WeighingStep, WeighOptionsInput } from "./weigh-types.js";

/** Shafts drawn between two steps. */
const block = 500;

/** An input in SI, with its standard uncertainty. */
export interface PlainInput {
  readonly name: string;
  readonly si: number;
  readonly u: number;
  /** Of the same kind and unit as the input. */
  readonly like: (si: number) => AnyQuantity | number;
}

/**
 * Reads an input.
 *
 * @throws RangeError  it is no finite value
 */
export function plainInput(
  name: string,
  value: Measured<AnyQuantity | number> | AnyQuantity | number,
): PlainInput {
  const [of, u] =
    typeof value === "object" && "kind" in value && value.kind === "measured"
      ? [value.value, Number(value.standardUncertainty.valueOf())]
      : [value as AnyQuantity | number, 0];
  const si = Number(of.valueOf());
  if (!Number.isFinite(si))
    throw new RangeError(`weighOptions: the input "${name}" must be a finite value, got ${String(of)}`);
  const like = (number: number): AnyQuantity | number =>
    isQuantity(of) ? (quantityFromSi(of.dimension, number, of.writtenIn as never) as AnyQuantity) : number;
  return { name, si, u, like };
}

/** What the draws gave. */
export interface Drawn {
  /** Margins by option and limit; undefined where the limit has no meaning. */
  readonly margins: readonly (readonly (Float64Array | undefined)[])[];
  /** The uncertain inputs as drawn, in the order given. */
  readonly inputs: readonly (Float64Array | undefined)[];
  readonly draws: number;
}

/**
 * Draws shafts, and rests after each block of them.
 *
 * @throws RangeError  a margin is no number
 */
export function* simulate(
  { options, limits, seed }: Pick<WeighOptionsInput, "options" | "limits" | "seed">,
  given: readonly PlainInput[],
  estimates: PlainNumbers,
  draws: number,
  begun: WeighingStep,
): Generator<WeighingStep, Drawn> {
  const random = randomGenerator(seed);
  const margins = options.map((option) =>
    limits.map((limit) =>
      marginOf(limit, estimates, option) === undefined ? undefined : new Float64Array(draws),
    ),
  );
  const inputs = given.map(({ u }) => (u > 0 ? new Float64Array(draws) : undefined));
  for (let row = 0; row < draws; row++) {
    // A new object for each shaft, so that limits may keep what they have worked out for it.
    const numbers: Record<string, number> = { ...estimates };
    given.forEach(({ name, u }, i) => {
      if (u > 0) inputs[i]![row] = numbers[name] = estimates[name]! + u * random.normal();
    });
    for (const [o, option] of options.entries())
      for (const [l, limit] of limits.entries()) {
        const target = margins[o]![l];
        if (target !== undefined) target[row] = marginOf(limit, numbers, option)!;
      }
    if ((row + 1) % block === 0) yield { ...begun, done: begun.done + row + 1 };
  }
  return { margins, inputs, draws };
}

/** By how much a limit is kept; undefined where it has no meaning for the option. */
export function marginOf(limit: WeighedLimit, numbers: PlainNumbers, option: string): number | undefined {
  const margin = limit.margin(numbers, option);
  if (margin !== undefined && Number.isNaN(margin))
    throw new RangeError(
      `weighOptions: the margin of "${limit.name}" for "${option}" is not a number at ${Object.entries(
        numbers,
      )
        .map(([name, value]) => `${name} = ${value.toPrecision(6)}`)
        .join(", ")}`,
    );
  return margin;
}
