import type { AnyQuantity, Measured } from "../../quantity/index.js";
import { propagate, type Uncertain, type UncertainInput } from "../../statistics/index.js";

/** An input of a function of plain numbers: what it is, and the same as SI estimate and standard uncertainty. */
export interface CarriedInput {
  readonly input: UncertainInput;
  readonly si: number;
  readonly u: number;
}

/**
 * Carries uncertainty through a function of plain SI numbers with half differences: its values one standard uncertainty
 * above and below each input. Unlike a derivative these pass over the joints between published curves.
 *
 * c = (f(x + u) − f(x − u))/(2u), from one side where the other lies outside a published range; y = f(x̄) + Σ c (x − x̄), so that inputs that share a source stay correlated
 *
 * @param f       takes SI numbers by name, gives a plain number
 * @param inputs  by name; those without uncertainty are held
 * @returns the value as an uncertain one, its sources named as the inputs
 * @source JCGM 100:2008 (GUM), 5.1.3, note 2 and 5.1.4, note 2
 */
export function carriedThrough<N extends string>(
  f: (numbers: Readonly<Record<N, number>>) => number,
  inputs: Readonly<Record<N, CarriedInput>>,
): Uncertain<"number"> {
  const names = Object.keys(inputs) as N[];
  const estimates = Object.fromEntries(names.map((name) => [name, inputs[name].si])) as Record<N, number>;
  const uncertainNames = names.filter((name) => inputs[name].u > 0);
  const middle = f(estimates);
  const slopes = uncertainNames.map((name) => {
    const { si, u } = inputs[name];
    const at = (step: number): number => f({ ...estimates, [name]: si + step });
    const [above, below] = [withinRange(() => at(u)), withinRange(() => at(-u))];
    if (above !== undefined && below !== undefined) return (above - below) / (2 * u);
    if (above !== undefined) return (above - middle) / u;
    // Neither side: the error of the lower one is told.
    return (middle - (below ?? at(-u))) / u;
  });
  const given = Object.fromEntries(uncertainNames.map((name) => [name, inputs[name].input]));
  return propagate(
    (values) =>
      uncertainNames.reduce(
        (sum, name, i) => sum + slopes[i]! * (Number(values[name] as AnyQuantity | number) - inputs[name].si),
        middle,
      ),
    given as Readonly<Record<string, Measured<number>>>,
  ) as Uncertain<"number">;
}

/** Undefined where the function is not defined there, e.g. a step that would vanish. */
function withinRange(value: () => number): number | undefined {
  try {
    return value();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
