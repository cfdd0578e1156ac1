import { requireDegreesOfFreedom, requireFinite, requireProbability } from "./check.js";
import { incompleteBeta, type Tails } from "./incomplete-beta.js";
import { solveIncreasing } from "./solve-increasing.js";

/**
 * Probability that the ratio of two variances (Fisher's F) stays below a value.
 *
 * I(ν₁/2, ν₂/2; ν₁x/(ν₁x+ν₂))
 *
 * Valid when: x ≥ 0, both degrees of freedom > 0.
 *
 * @param x ratio of variances [-], ≥ 0
 * @param dof1 degrees of freedom of the numerator [-], > 0
 * @param dof2 degrees of freedom of the denominator [-], > 0
 * @returns probability below x [-]
 * @throws RangeError x is negative or not finite, or a dof is not greater than 0
 * @example fCdf(3.3258345304130112, 5, 10) // 0.95
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eq. 26.6.2
 */
export function fCdf(x: number, dof1: number, dof2: number): number {
  return checkedTails("fCdf", x, dof1, dof2).lower;
}

/**
 * Probability that the ratio of two variances (Fisher's F) exceeds a value, computed as such, not as 1 − F.
 *
 * Valid when: x ≥ 0, both degrees of freedom > 0.
 *
 * @param x ratio of variances [-], ≥ 0
 * @param dof1 degrees of freedom of the numerator [-], > 0
 * @param dof2 degrees of freedom of the denominator [-], > 0
 * @returns probability above x [-]
 * @throws RangeError x is negative or not finite, or a dof is not greater than 0
 * @example fSurvival(3.3258345304130112, 5, 10) // 0.05
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eq. 26.6.2
 */
export function fSurvival(x: number, dof1: number, dof2: number): number {
  return checkedTails("fSurvival", x, dof1, dof2).upper;
}

/**
 * Value below which Fisher's F stays with probability p.
 *
 * Valid when: 0 < p < 1, both degrees of freedom > 0.
 *
 * @param p probability below the value [-]
 * @param dof1 degrees of freedom of the numerator [-], > 0
 * @param dof2 degrees of freedom of the denominator [-], > 0
 * @returns ratio of variances [-]
 * @throws RangeError p is not between 0 and 1 or a dof is not greater than 0
 * @example fQuantile(0.95, 5, 10) // 3.3258345304130112
 * @source inverse of {@link fCdf}
 */
export function fQuantile(p: number, dof1: number, dof2: number): number {
  requireProbability("fQuantile", "p", p);
  requireDegreesOfFreedom("fQuantile", "dof1", dof1, false);
  requireDegreesOfFreedom("fQuantile", "dof2", dof2, false);
  return solveIncreasing((x) => {
    const { lower, upper } = tailsAt(x, dof1, dof2);
    return p <= 0.5 ? lower - p : 1 - p - upper;
  });
}

function checkedTails(where: string, x: number, dof1: number, dof2: number): Tails {
  requireFinite(where, "x", x);
  if (x < 0) throw new RangeError(`${where}: x must be 0 or greater, got ${x}`);
  requireDegreesOfFreedom(where, "dof1", dof1, false);
  requireDegreesOfFreedom(where, "dof2", dof2, false);
  return tailsAt(x, dof1, dof2);
}

function tailsAt(x: number, dof1: number, dof2: number): Tails {
  const ratio = (dof1 / dof2) * x;
  return incompleteBeta(dof1 / 2, dof2 / 2, 1 / (1 + 1 / ratio), 1 / (1 + ratio));
}
