import { requireDegreesOfFreedom, requireFiniteList, requireSameLength } from "./check.js";

/**
 * The effective degrees of freedom of a sum of independent contributions.
 *
 * ν = u⁴ / Σ (uᵢ⁴ / νᵢ), u² = Σ uᵢ²
 *
 * Valid when: the contributions are independent. The result is not rounded down to a whole number; the GUM
 * leaves open whether to (G.4.1). Where no contribution with finite degrees of freedom counts it is Infinity.
 *
 * @param contributions  standard uncertainties |cᵢ|·uᵢ in the unit of the result, ≥ 0 [any one unit]
 * @param degreesOfFreedom  νᵢ of each, > 0, Infinity allowed [-]
 * @returns ν, between the smallest νᵢ and their sum [-]
 * @throws RangeError  no contribution, lists of different length, a negative contribution, a νᵢ not above 0
 * @example welchSatterthwaite([5.8, 3.9, 6.7], [24, 5, 8]) // 25.45, printed 25.6 from a rounded u
 * @source JCGM 100:2008 (GUM), G.4.1, equation G.2b; H.1.6 (the example)
 */
export function welchSatterthwaite(
  contributions: readonly number[],
  degreesOfFreedom: readonly number[],
): number {
  const where = "welchSatterthwaite";
  requireFiniteList(where, "contributions", contributions, 1);
  requireSameLength(where, "contributions", contributions, "degreesOfFreedom", degreesOfFreedom);
  const largest = Math.max(...contributions);
  contributions.forEach((u, i) => {
    if (u < 0) throw new RangeError(`${where}: contributions[${i}] must be 0 or more, got ${u}`);
    requireDegreesOfFreedom(where, `degreesOfFreedom[${i}]`, degreesOfFreedom[i]!, true);
  });
  if (largest === 0) return Number.POSITIVE_INFINITY;
  // Scaled by the largest: fourth powers of micrometres in metres would vanish.
  const squares = contributions.map((u) => (u / largest) ** 2);
  const variance = squares.reduce((sum, square) => sum + square, 0);
  const uncertain = squares.reduce((sum, square, i) => sum + square ** 2 / degreesOfFreedom[i]!, 0);
  return variance ** 2 / uncertain;
}
