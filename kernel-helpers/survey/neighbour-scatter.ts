import { median } from "./median.js";

/**
 * How much readings along a shaft scatter about their neighbours, over what their uncertainty says.
 *
 * zᵢ = (yᵢ − line through its two neighbours at xᵢ) / √(uᵢ² + a²uᵢ₋₁² + b²uᵢ₊₁²), a and b the neighbours' shares;
 * scatter = median|z| / 0.6745
 *
 * Steps and slopes of the shaft do not count: a slope runs through the neighbours, and a step touches only two
 * readings, which the median passes over. So this says what the noise is before any band is known.
 *
 * Valid when: more than half of the readings have both neighbours in their own band; in a short row of many bands it
 * takes their steps for noise, so `divideLearning` asks for the other account too. About 1 for honest noise,
 * give or take 1.4/√n.
 *
 * @param x  positions, ascending [m]
 * @param y  readings [m]
 * @param u  standard uncertainty of each [m], > 0
 * @returns scatter over the uncertainty stated [-]; 1 for fewer than 5 readings, which cannot tell
 * @source median absolute deviation, 0.6745 the upper quartile of the normal distribution: F. R. Hampel, Journal
 * of the American Statistical Association 69 (1974) 383-393 (from memory)
 */
export function neighbourScatter(x: readonly number[], y: readonly number[], u: readonly number[]): number {
  if (x.length < 5) return 1;
  const off: number[] = [];
  for (let i = 1; i < x.length - 1; i++) {
    const gap = x[i + 1]! - x[i - 1]!;
    const share = gap > 0 ? (x[i]! - x[i - 1]!) / gap : 0.5;
    const line = (1 - share) * y[i - 1]! + share * y[i + 1]!;
    off.push(Math.abs(y[i]! - line) / Math.hypot(u[i]!, (1 - share) * u[i - 1]!, share * u[i + 1]!));
  }
  return median(off) / upperQuartileOfNormal;
}

/** Half of normal noise lies within this many standard deviations. */
export const upperQuartileOfNormal = 0.6744897501960817;

/**
 * The factor on the readings' uncertainty that their scatter demands before bands are looked for: 1 unless they
 * scatter more than honest noise does about once in a thousand surveys (1 + 5.5/√n, found by trial for n from 12
 * to 1000).
 */
export function demandedByScatter(x: readonly number[], y: readonly number[], u: readonly number[]): number {
  const scatter = neighbourScatter(x, y, u);
  return scatter > 1 + 5.5 / Math.sqrt(x.length) ? scatter : 1;
}
