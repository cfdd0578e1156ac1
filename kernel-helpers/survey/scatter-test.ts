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

/** What to say when they do. */
export function scatterWarning(noiseRatio: number): string {
  return `Readings scatter ${formatNumber(noiseRatio, 2)} times more than the instrument states: a rough surface, dirt, or more than one hand measuring. The uncertainties are widened by that.`;
}

/** The same where the flanks' own shape is the reason, or most of it. */
export function shapeWarning(noiseRatio: number): string {
  return `Readings stand off one straight line ${formatNumber(noiseRatio, 2)} times more than the instrument states, because the flanks are not straight. The uncertainties are widened by that.`;
}
