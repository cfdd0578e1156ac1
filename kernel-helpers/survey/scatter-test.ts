import { formatNumber } from "../quantity/index.js";
import { chiSquareSurvival } from "../statistics/index.js";

/** Honest noise scatters so much once in this share of surveys. */
const rarerThan = 0.01;

/**
 * Whether readings scatter more than their stated uncertainty explains.
 *
 * χ² = Σ (residual/u)² is larger than honest noise makes it once in a hundred surveys (one-sided test at 1 %)
 *
 * @param chiSquare  χ² [-]
 * @param degreesOfFreedom  readings less parameters [-]; with none, nothing can be said and the answer is no
 * @source chi-square test of a known variance: textbook; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.8 (from memory)
 */
export function scattersTooMuch(chiSquare: number, degreesOfFreedom: number): boolean {
  return degreesOfFreedom > 0 && chiSquareSurvival(chiSquare, degreesOfFreedom) < rarerThan;
}

/** Scatter that honest noise shows more seldom than this is taken for noise larger than stated. */
const suspiciousBelow = 0.25;

/**
 * By how much a stated uncertainty is widened for the scatter seen, and what is known of it then.
 *
 * Where χ² is larger than honest noise makes it once in four surveys: factor = √(χ²/ν), with ν degrees of freedom, for
 * the scatter alone tells the noise then. Else 1 with infinitely many: never narrower than stated.
 *
 * Why once in four. By a test at 1 %, noise twice the stated goes unnoticed in one survey of six at 10 degrees of freedom,
 * and the intervals are then half as wide as they should be; without any test they are too wide in every second survey
 * whose statement is right. By this rule 95 % intervals hold the truth in 96.1 % of surveys where the statement is right,
 * and in 94.5 to 95 % where the noise is 1.5 to 5 times as large (10 degrees of freedom; at 4, 96.2 % and 93.1 to 95 %; at
 * 2, 96.2 % and 90 to 94 %: so few stations tell little of their noise).
 *
 * @param chiSquare  Σ (residual/u)² [-]
 * @param degreesOfFreedom  ν; with none, nothing is seen and nothing widened [-]
 * @returns factor on u [-] and degrees of freedom, infinite where not widened [-]
 * @example widening(40, 10) // { factor: 2, degreesOfFreedom: 10 }
 * @source never narrower than stated: R. T. Birge, Physical Review 40 (1932) 207-227 (from memory); the threshold: own
 */
export function widening(
  chiSquare: number,
  degreesOfFreedom: number,
): { readonly factor: number; readonly degreesOfFreedom: number } {
  const suspicious =
    chiSquare > degreesOfFreedom &&
    degreesOfFreedom > 0 &&
    chiSquareSurvival(chiSquare, degreesOfFreedom) < suspiciousBelow;
  return suspicious
    ? { factor: Math.sqrt(chiSquare / degreesOfFreedom), degreesOfFreedom }
    : { factor: 1, degreesOfFreedom: Number.POSITIVE_INFINITY };
}

/** More than hands and dirt usually make of an instrument's own scatter: judgement, no source. */
const largeScatter = 3;

/** What to say when they do. */
export function scatterWarning(noiseRatio: number): string {
  const short =
    noiseRatio > largeScatter
      ? " So much can also be wear in stretches so short that each holds one station only, for a band needs two: read more stations where neighbours differ."
      : "";
  return `Readings scatter ${formatNumber(noiseRatio, 2)} times more than the instrument states: a rough surface, dirt, or more than one hand measuring. The uncertainties are widened by that.${short}`;
}

/** The same where the flanks' own shape is the reason, or most of it. */
export function shapeWarning(noiseRatio: number): string {
  return `Readings stand off one straight line ${formatNumber(noiseRatio, 2)} times more than the instrument states, because the flanks are not straight. The uncertainties are widened by that.`;
}
