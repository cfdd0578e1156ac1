import { requireFinite, requireProbability } from "./check.js";
import { incompleteGamma } from "./incomplete-gamma.js";
import { solveIncreasing } from "./solve-increasing.js";

/**
 * Probability that a standard normal variable stays below z.
 *
 * Φ(z) = ½ Q(½, z²/2) for z < 0, ½ + ½ P(½, z²/2) for z ≥ 0; the upper tail is normalCdf(−z), without
 * cancellation.
 *
 * Valid when: z is finite. Relative error below 5e-15 for |z| ≤ 8, below 1e-13 down to z = −37.
 *
 * @param z standardised value [-]
 * @returns probability Φ(z) [-]
 * @throws RangeError z is not finite
 * @example normalCdf(1.96) // 0.9750021048517795
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eqs. 26.2.2 and 6.5.16-17
 */
export function normalCdf(z: number): number {
  requireFinite("normalCdf", "z", z);
  const tails = incompleteGamma(0.5, (z * z) / 2);
  return z < 0 ? tails.upper / 2 : 0.5 + tails.lower / 2;
}

/**
 * Value below which a standard normal variable stays with probability p.
 *
 * Φ⁻¹(p), by bisection on the smaller of tail and central part, so that neither p near 0, ½ nor 1 loses
 * digits.
 *
 * Valid when: 0 < p < 1.
 *
 * @param p probability below the value [-]
 * @returns z [-]
 * @throws RangeError p is not between 0 and 1
 * @example normalQuantile(0.975) // 1.959963984540054
 * @source inverse of {@link normalCdf}
 */
export function normalQuantile(p: number): number {
  requireProbability("normalQuantile", "p", p);
  if (p === 0.5) return 0;
  const sign = p < 0.5 ? -1 : 1;
  const central = Math.abs(2 * p - 1);
  const outside = 2 * Math.min(p, 1 - p);
  return (
    sign *
    solveIncreasing((z) => {
      const tails = incompleteGamma(0.5, (z * z) / 2);
      return central < 0.5 ? tails.lower - central : outside - tails.upper;
    })
  );
}
