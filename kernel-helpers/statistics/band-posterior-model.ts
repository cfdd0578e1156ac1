import type { SegmentShape } from "./partition-search.js";
import type { RunningSums } from "./running-sums.js";

/** Prior of the line of a band: height at its weighted middle N(centre, level²), slope N(0, slope²). */
export interface LinePrior {
  readonly levelCentre: number;
  readonly levelVariance: number;
  readonly slopeVariance: number;
}

/**
 * Probability density of the readings of a flat band, its height averaged out, less the factor
 * Π 1/(u √2π) all divisions share: exp(exponent) / √spread.
 *
 * exponent = −½ [Σ w(y−ȳ)² + (ȳ−m)² W/(1+Wτ²)], spread = 1 + Wτ²
 */
export function flatExponent(sums: RunningSums, prior: LinePrior): number {
  const away = sums.y - prior.levelCentre;
  return -0.5 * (sums.yy + (away * away * sums.w) / flatSpread(sums, prior));
}

export function flatSpread(sums: RunningSums, prior: LinePrior): number {
  return 1 + sums.w * prior.levelVariance;
}

/** What a slope adds to the exponent of a flat band: ½ Sxy² σ² / slopeSpread, and the factor of its spread. */
export function slopeGain(sums: RunningSums, prior: LinePrior): number {
  return (0.5 * sums.xy * sums.xy * prior.slopeVariance) / slopeSpread(sums, prior);
}

export function slopeSpread(sums: RunningSums, prior: LinePrior): number {
  return 1 + sums.xx * prior.slopeVariance;
}

/** Probability that a band is flat, given its ends and that either shape is allowed, each as likely. */
export function flatShare(sums: RunningSums, prior: LinePrior): number {
  return 1 / (1 + Math.exp(slopeGain(sums, prior)) / Math.sqrt(slopeSpread(sums, prior)));
}

/** Height of a band's line at x given its readings and shape: normal, mean and variance. */
export function heightGiven(
  sums: RunningSums,
  prior: LinePrior,
  shape: SegmentShape,
  x: number,
): { readonly mean: number; readonly variance: number } {
  const { levelCentre, levelVariance, slopeVariance } = prior;
  const spread = flatSpread(sums, prior);
  const mean = sums.y + (levelCentre - sums.y) / spread;
  const variance = levelVariance / spread;
  if (shape === "flat") return { mean, variance };
  const away = x - sums.x;
  const share = slopeVariance / slopeSpread(sums, prior);
  return { mean: mean + sums.xy * share * away, variance: variance + share * away * away };
}
