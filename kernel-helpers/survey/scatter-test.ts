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

/** Degrees of freedom a stated uncertainty is taken to be worth: it is right to about a half (GUM, G.4.2). */
const worthOfStated = 2;

/**
 * By how much a stated uncertainty is widened for the scatter seen, and what the two together are worth.
 *
 * s² = (ν₀ + χ²)/(ν₀ + ν), ν₀ = 2: stated and seen, each by its degrees of freedom; factor = max(1, s), never narrower
 * than stated; ν₀ + ν degrees of freedom where widened.
 *
 * No test decides: by one at 1 %, noise twice the stated goes unnoticed in one survey of six at 10 degrees of freedom,
 * and the intervals are then half as wide as they should be. By this rule 95 % intervals hold the truth in 97 % of
 * surveys where the statement is right, and in 93 to 94 % where the noise is 1.5 to 3 times as large; by the test, in
 * 95 % and 88 to 95 % (10 degrees of freedom; at 4, 97 % and 90 to 93 % against 95 % and 84 to 90 %).
 *
 * @param chiSquare  Σ (residual/u)² [-]
 * @param degreesOfFreedom  ν; with none, nothing is seen and nothing widened [-]
 * @returns factor on u [-] and degrees of freedom, infinite where not widened [-]
 * @example widening(48, 10).factor.toFixed(3) // "2.041", √(50/12)
 * @source never narrower than stated: R. T. Birge, Physical Review 40 (1932) 207-227 (from memory); worth of a
 * statement: JCGM 100:2008 (GUM), G.4.2
 */
export function widening(
  chiSquare: number,
  degreesOfFreedom: number,
): { readonly factor: number; readonly degreesOfFreedom: number } {
  const together = worthOfStated + degreesOfFreedom;
  const square = (worthOfStated + chiSquare) / together;
  return square > 1 && degreesOfFreedom > 0
    ? { factor: Math.sqrt(square), degreesOfFreedom: together }
    : { factor: 1, degreesOfFreedom: Number.POSITIVE_INFINITY };
}

/** What to say when they do. */
export function scatterWarning(noiseRatio: number): string {
  return `Readings scatter ${formatNumber(noiseRatio, 2)} times more than the instrument states: a rough surface, dirt, or more than one hand measuring. The uncertainties are widened by that.`;
}

/** The same where the flanks' own shape is the reason, or most of it. */
export function shapeWarning(noiseRatio: number): string {
  return `Readings stand off one straight line ${formatNumber(noiseRatio, 2)} times more than the instrument states, because the flanks are not straight. The uncertainties are widened by that.`;
}
