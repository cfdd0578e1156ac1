import { requireDegreesOfFreedom, requireProbability } from "./check.js";
import { studentTQuantile } from "./student-t-distribution.js";

/**
 * Factor that turns a standard uncertainty into an expanded one (two-sided).
 *
 * k = t₍₁₊ₚ₎⸝₂(ν): the interval ±k·u holds the share `coverage` of a t-distribution with ν degrees of freedom
 *
 * Valid when: the quantity over its standard uncertainty follows Student's t, or the normal distribution for
 * dof = Infinity. dof need not be whole (Welch-Satterthwaite).
 *
 * @param coverage share covered, both sides together [-], between 0 and 1, e.g. 0.95
 * @param dof degrees of freedom ν [-], > 0, Infinity allowed
 * @returns k [-]
 * @throws RangeError coverage is not between 0 and 1 or dof is not greater than 0
 * @example coverageFactor(0.95, 10) // 2.228138851986275
 * @source JCGM 100:2008 (GUM), annex G, G.3.2 to G.3.4 and table G.2
 */
export function coverageFactor(coverage: number, dof: number): number {
  requireProbability("coverageFactor", "coverage", coverage);
  requireDegreesOfFreedom("coverageFactor", "dof", dof, true);
  // From the lower tail, (1 − coverage)/2: exact to the last digit for coverage near 1.
  return coverage < 0.5
    ? studentTQuantile(0.5 + coverage / 2, dof)
    : -studentTQuantile((1 - coverage) / 2, dof);
}
