import { fitLine, predictLine } from "../statistics/index.js";
import { median } from "./median.js";
import { upperQuartileOfNormal } from "./neighbour-scatter.js";

/** Up to so many readings every pair of them votes for the slope; beyond, pairs half a row apart. */
const mostForAllPairs = 500;
const mostRounds = 20;

/**
 * The readings that stand off a straight line which the others draw.
 *
 * Starts from a line that a few gross readings cannot bend: slope = median of the slopes of all pairs, height =
 * median of what is left. Then, in turn: least squares through the readings kept, each reading judged against the
 * line made without it, until nothing changes. A reading is gross when it stands off by more than
 * limit · s · u, s = max(1, median|residual/u| / 0.6745): where all readings scatter or the flank bows, no
 * reading is gross for taking part in that.
 *
 * Valid when: fewer than about a quarter of the readings are gross. Fewer than 5 readings: none is.
 *
 * @param x  positions [m]
 * @param y  readings [m]
 * @param u  standard uncertainty of each [m], > 0
 * @param limit  how far a reading may stand off [standard uncertainties]
 * @returns places of the gross readings in the lists
 * @example grossAboutLine([0, 1, 2, 3, 4, 5], [0, 1, 2, 30, 4, 5], [1, 1, 1, 1, 1, 1]) // [3]
 * @source P. K. Sen, Journal of the American Statistical Association 63 (1968) 1379-1389 (median of slopes, after
 * H. Theil, 1950); deleted residuals: N. R. Draper, H. Smith, Applied Regression Analysis, 3rd edition, 1998,
 * chapter 8 (from memory)
 */
export function grossAboutLine(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  limit: number = 6,
): readonly number[] {
  const n = x.length;
  const slopes = pairSlopes(x, y);
  if (n < 5 || slopes.length === 0) return [];
  const slope = median(slopes);
  const left = y.map((v, i) => v - slope * x[i]!);
  const height = median(left);
  let off = left.map((v, i) => Math.abs(v - height) / u[i]!);
  let kept = keep(off, limit);
  for (let round = 0; round < mostRounds; round++) {
    if (new Set(x.filter((_, i) => kept[i])).size < 2) break; // no line to judge by
    off = standOffs(x, y, u, kept);
    const next = keep(off, limit);
    if (next.every((is, i) => is === kept[i])) break;
    kept = next;
  }
  return kept.flatMap((is, i) => (is ? [] : [i]));
}

function pairSlopes(x: readonly number[], y: readonly number[]): number[] {
  const n = x.length;
  const slopes: number[] = [];
  const add = (i: number, j: number): void => {
    if (x[j] !== x[i]) slopes.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
  };
  if (n > mostForAllPairs) for (let i = 0; i + (n >> 1) < n; i++) add(i, i + (n >> 1));
  else for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) add(i, j);
  return slopes;
}

function keep(off: readonly number[], limit: number): boolean[] {
  const scale = Math.max(1, median(off) / upperQuartileOfNormal);
  return off.map((z) => z <= limit * scale);
}

/** How far each reading stands off from what the other kept readings say of it, in its standard uncertainties. */
function standOffs(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  kept: readonly boolean[],
): number[] {
  const of = (list: readonly number[]): number[] => list.filter((_, i) => kept[i]);
  const line = fitLine(of(x), of(y), { u: of(u), contradictions: "keep" });
  return x.map((xi, i) => {
    const { value, standardUncertainty } = predictLine(line, xi);
    const leverage = (standardUncertainty / u[i]!) ** 2;
    // A reading the line was made with lies closer to it than a new one, by 1 − leverage against 1 + leverage.
    const spread = kept[i] ? Math.max(1e-9, 1 - leverage) : 1 + leverage;
    return Math.abs(y[i]! - value) / (u[i]! * Math.sqrt(spread));
  });
}
