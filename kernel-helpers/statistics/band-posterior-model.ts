import type { LinePrior } from "./band-sums.js";
import type { SegmentShape } from "./partition-search.js";
import type { RunningSums } from "./running-sums.js";

/** Height at x of the line of a band of one row, given its readings and shape: normal, mean and variance. */
export function heightGiven(
  sums: RunningSums,
  prior: LinePrior,
  shape: SegmentShape,
  x: number,
): { readonly mean: number; readonly variance: number } {
  const { levelCentre, levelVariance, slopeVariance } = prior;
  const spread = 1 + sums.w * levelVariance;
  const mean = sums.y + (levelCentre - sums.y) / spread;
  const variance = levelVariance / spread;
  if (shape === "flat") return { mean, variance };
  const away = x - sums.x;
  const share = slopeVariance / (1 + sums.xx * slopeVariance);
  return { mean: mean + sums.xy * share * away, variance: variance + share * away * away };
}
