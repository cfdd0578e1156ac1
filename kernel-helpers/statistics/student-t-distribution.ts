import { requireDegreesOfFreedom, requireFinite, requireProbability } from "./check.js";
import { incompleteBeta, type Tails } from "./incomplete-beta.js";
import { normalCdf, normalQuantile } from "./normal-distribution.js";
import { solveIncreasing } from "./solve-increasing.js";

/**
 * Probability that Student's t stays below a value.
 *
 * F(t) = ½ I(ν/2, ½; ν/(ν+t²)) for t < 0, ½ + ½ I(½, ν/2; t²/(ν+t²)) for t ≥ 0; the upper tail is
 * studentTCdf(−t, dof), without cancellation.
 *
 * Valid when: t finite, dof > 0, whole or not; dof = Infinity is the normal distribution.
 *
 * @param t value [-]
 * @param dof degrees of freedom ν [-], > 0, Infinity allowed
 * @returns probability below t [-]
 * @throws RangeError t is not finite or dof is not greater than 0
 * @example studentTCdf(2.228138851986275, 10) // 0.975
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eq. 26.7.1
 */
export function studentTCdf(t: number, dof: number): number {
  requireFinite("studentTCdf", "t", t);
  requireDegreesOfFreedom("studentTCdf", "dof", dof, true);
  if (dof === Number.POSITIVE_INFINITY) return normalCdf(t);
  const { lower: outside, upper: inside } = outsideAndInside(t, dof);
  return t < 0 ? outside / 2 : 0.5 + inside / 2;
}

/**
 * Value below which Student's t stays with probability p (one-sided; for the two-sided factor see
 * coverageFactor).
 *
 * Bisection on the smaller of tail and central part, so that neither p near 0, ½ nor 1 loses digits.
 *
 * Valid when: 0 < p < 1, dof > 0, whole or not; dof = Infinity is the normal distribution.
 *
 * @param p probability below the value [-]
 * @param dof degrees of freedom ν [-], > 0, Infinity allowed
 * @returns t [-]
 * @throws RangeError p is not between 0 and 1 or dof is not greater than 0
 * @example studentTQuantile(0.975, 10) // 2.228138851986275
 * @source inverse of {@link studentTCdf}
 */
export function studentTQuantile(p: number, dof: number): number {
  requireProbability("studentTQuantile", "p", p);
  requireDegreesOfFreedom("studentTQuantile", "dof", dof, true);
  if (dof === Number.POSITIVE_INFINITY) return normalQuantile(p);
  if (p === 0.5) return 0;
  const sign = p < 0.5 ? -1 : 1;
  const central = Math.abs(2 * p - 1);
  const both = 2 * Math.min(p, 1 - p);
  return (
    sign *
    solveIncreasing((t) => {
      const { lower: outside, upper: inside } = outsideAndInside(t, dof);
      return central < 0.5 ? inside - central : both - outside;
    })
  );
}

/** Probability outside ±|t| (lower) and inside it (upper). */
function outsideAndInside(t: number, dof: number): Tails {
  const ratio = (t / dof) * t; // t²/ν
  return incompleteBeta(
    dof / 2,
    0.5,
    1 / (1 + ratio),
    ratio === Number.POSITIVE_INFINITY ? 1 : ratio / (1 + ratio),
  );
}
