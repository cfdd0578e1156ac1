import { requireDegreesOfFreedom, requireFinite, requireProbability } from "./check.js";
import type { Tails } from "./incomplete-beta.js";
import { incompleteGamma } from "./incomplete-gamma.js";
import { solveIncreasing } from "./solve-increasing.js";

/**
 * Probability that a chi-square variable stays below a value.
 *
 * P(ν/2, x/2)
 *
 * Valid when: x ≥ 0, dof > 0.
 *
 * @param x value [-], ≥ 0
 * @param dof degrees of freedom ν [-], > 0
 * @returns probability below x [-]
 * @throws RangeError x is negative or not finite, or dof is not greater than 0
 * @example chiSquareCdf(18.307038053275146, 10) // 0.95
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eq. 26.4.19
 */
export function chiSquareCdf(x: number, dof: number): number {
  return chiSquareTails("chiSquareCdf", x, dof).lower;
}

/**
 * Probability that a chi-square variable exceeds a value: the chance that honest noise scatters at least so
 * much.
 *
 * Q(ν/2, x/2), computed as such and not as 1 − P, so that small probabilities keep their digits
 *
 * Valid when: x ≥ 0, dof > 0.
 *
 * @param x value [-], ≥ 0
 * @param dof degrees of freedom ν [-], > 0
 * @returns probability above x [-]
 * @throws RangeError x is negative or not finite, or dof is not greater than 0
 * @example chiSquareSurvival(18.307038053275146, 10) // 0.05
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eq. 26.4.19
 */
export function chiSquareSurvival(x: number, dof: number): number {
  return chiSquareTails("chiSquareSurvival", x, dof).upper;
}

/**
 * Value below which a chi-square variable stays with probability p.
 *
 * Valid when: 0 < p < 1, dof > 0.
 *
 * @param p probability below the value [-]
 * @param dof degrees of freedom ν [-], > 0
 * @returns chi-square value [-]
 * @throws RangeError p is not between 0 and 1 or dof is not greater than 0
 * @example chiSquareQuantile(0.95, 10) // 18.307038053275146
 * @source inverse of {@link chiSquareCdf}
 */
export function chiSquareQuantile(p: number, dof: number): number {
  requireProbability("chiSquareQuantile", "p", p);
  requireDegreesOfFreedom("chiSquareQuantile", "dof", dof, false);
  return solveIncreasing((x) => {
    const tails = incompleteGamma(dof / 2, x / 2);
    return p <= 0.5 ? tails.lower - p : 1 - p - tails.upper;
  });
}

function chiSquareTails(where: string, x: number, dof: number): Tails {
  requireFinite(where, "x", x);
  if (x < 0) throw new RangeError(`${where}: x must be 0 or greater, got ${x}`);
  requireDegreesOfFreedom(where, "dof", dof, false);
  return incompleteGamma(dof / 2, x / 2);
}
