import { normalCdf } from "../../statistics/index.js";

/** Even number of steps of Simpson's rule over ± 8 standard deviations of the common error. */
const steps = 400;
const reach = 8;

/**
 * The chance that several values, each with its own normal error and all with one in common, all lie above a limit.
 *
 * P = ∫ φ(x) Π Φ((vᵢ + x·u_common − limit)/uᵢ) dx
 *
 * Valid when: the errors are normal, those of their own independent. An error of 0 makes its factor a step.
 *
 * @param values  each with its standard uncertainty ≥ 0 [any one unit]
 * @param uCommon  standard uncertainty that moves all alike, ≥ 0 [same unit]
 * @param limit  [same unit]
 * @returns the chance, 0 to 1 [-]
 * @throws RangeError  no values, or an uncertainty below 0
 * @example chanceAllAbove([{ value: 1, u: 1 }, { value: 1, u: 1 }], 0, 1) // 0.25
 * @source law of total probability
 */
export function chanceAllAbove(
  values: readonly { readonly value: number; readonly u: number }[],
  uCommon: number,
  limit: number,
): number {
  if (values.length === 0) throw new RangeError("chanceAllAbove: at least one value is needed, got none");
  if (!(uCommon >= 0) || values.some(({ u }) => !(u >= 0)))
    throw new RangeError("chanceAllAbove: uncertainties must be 0 or more");
  const all = (shift: number): number =>
    values.reduce((product, { value, u }) => {
      const over = value + shift - limit;
      if (over === Number.POSITIVE_INFINITY) return product;
      return product * (u === 0 ? (over >= 0 ? 1 : 0) : normalCdf(over / u));
    }, 1);
  if (uCommon === 0) return all(0);
  const step = (2 * reach) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const x = -reach + i * step;
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp((-x * x) / 2) * all(x * uCommon);
  }
  return Math.min(1, (sum * step) / 3 / Math.sqrt(2 * Math.PI));
}
