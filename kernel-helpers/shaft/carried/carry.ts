import type { CarriedNumber } from "./carried-input.js";

/** What comes of a function of plain numbers: values, standard uncertainties and degrees of freedom, in its order. */
export interface Carried {
  readonly values: readonly number[];
  readonly u: readonly number[];
  readonly degreesOfFreedom: readonly number[];
  /** u² each input alone makes of each value, by input. */
  readonly shares: readonly { readonly name: string; readonly squares: readonly number[] }[];
}

/**
 * Carries uncertainty through a function with many results, from its values one standard uncertainty above and below
 * each input: all results from the same few runs.
 *
 * cᵢ uᵢ = (f(xᵢ + uᵢ) − f(xᵢ − uᵢ))/2; u² = Σ (cᵢ uᵢ)²; effective degrees of freedom by Welch and Satterthwaite
 *
 * Valid when: the inputs are independent and f is nearly straight within one uncertainty.
 *
 * @param f       of SI numbers in the order of the inputs; always as many results
 * @param inputs  those without uncertainty are held
 * @returns values, uncertainties and degrees of freedom in the order of f's results
 * @example carry(([a]) => [2 * a!], [{ name: "a", si: 3, u: 0.1, degreesOfFreedom: 9, unit: undefined }]).u[0] // 0.2
 * @source JCGM 100:2008 (GUM), 5.1.3 note 2, 5.1.4 note 2, and G.4.1
 */
export function carry(
  f: (numbers: readonly number[]) => readonly number[],
  inputs: readonly CarriedNumber[],
): Carried {
  const estimates = inputs.map(({ si }) => si);
  const values = f(estimates);
  const square = values.map(() => 0);
  const fourth = values.map(() => 0);
  const shares = inputs.flatMap(({ name, u, degreesOfFreedom }, i) => {
    if (!(u > 0)) return [];
    const at = (step: number): readonly number[] => f(estimates.map((x, k) => (k === i ? x + step : x)));
    const [above, below] = [at(u), at(-u)];
    const squares = values.map((_, k) => ((above[k]! - below[k]!) / 2) ** 2);
    squares.forEach((c2, k) => {
      square[k]! += c2;
      fourth[k]! += (c2 * c2) / degreesOfFreedom;
    });
    return [{ name, squares }];
  });
  return {
    values,
    u: square.map(Math.sqrt),
    degreesOfFreedom: square.map((s, k) =>
      fourth[k] === 0 ? Number.POSITIVE_INFINITY : (s * s) / fourth[k]!,
    ),
    shares,
  };
}
