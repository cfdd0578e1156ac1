import { blockSize, StartBlocks } from "./partition-blocks.js";
import { RunningSums } from "./running-sums.js";

/** How a segment may run. */
export type SegmentShape = "flat" | "sloping";

/** What a partition may consist of, and what a segment costs. */
export interface SearchRules {
  /** Fewest readings of a flat segment; Infinity where flat ones are not allowed. */
  readonly fewestFlat: number;
  /** Fewest readings of a sloping segment; Infinity where sloping ones are not allowed. */
  readonly fewestSloping: number;
  /** Cost added for each flat segment [-]. */
  readonly flatCost: number;
  /** Cost added for each sloping segment [-]. */
  readonly slopingCost: number;
}

/** A stretch of readings, first and last index inclusive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly shape: SegmentShape;
}

/** The best partition found. */
export interface SearchResult {
  readonly stretches: readonly Stretch[];
  /** Chi-square plus costs of all segments [-]. */
  readonly criterion: number;
}

/** A sloping segment must stand on so many different positions: through two, a slope fits any two levels. */
export const fewestPositions = 3;

/**
 * The partition of readings along a line that has the least chi-square plus cost of segments: exact.
 *
 * F(t) = minₛ F(s) + cost(s, t): the best up to t ends with a segment s…t−1 after the best up to s (optimal
 * partitioning).
 *
 * For each end t the start s walks backward, while the sums of s…t−1 about their own middle are carried
 * along. The start that was best for the last end is tried first, which sets a low mark to beat. A whole
 * block of starts is passed over when none in it can beat the mark: chi-square of a line through readings is
 * never less than that of two lines, one through those in the block and one through those behind it, so minₛ
 * [F(s) + chi-square(s to the block's end)] + chi-square(behind the block) is a bound for all its starts; the
 * first part is worked out once a block. Blocks stand in levels, each of several blocks of the level below, and the
 * largest is tried first: a walk over n starts takes about ln n steps where nothing can win. The walk ends where the
 * chi-square behind is alone too large.
 *
 * Valid when: positions ascend and weights are > 0 (the caller checks). Positions alike stay together. Exact
 * up to rounding: a partition within 1e-9 of the best criterion may be returned for it.
 *
 * @param x positions, ascending [unit of x]
 * @param y readings [unit of y]
 * @param w weights 1/u² [1/unit of y²]
 * @param rules allowed shapes, fewest readings and costs
 * @returns the best partition, or null where no partition is allowed
 * @source B. Jackson et al., IEEE Signal Processing Letters 12 (2005) 105-108 (optimal partitioning); passing
 * over starts that cannot win is in the spirit of R. Killick, P. Fearnhead, I. A. Eckley, JASA 107 (2012)
 * 1590-1598, the bound is own
 */
export function searchPartition(
  x: Float64Array,
  y: Float64Array,
  w: Float64Array,
  rules: SearchRules,
): SearchResult | null {
  const n = x.length;
  const { fewestFlat, fewestSloping } = rules;
  const slopes = fewestSloping < Number.POSITIVE_INFINITY;
  const flatCost = fewestFlat < Number.POSITIVE_INFINITY ? rules.flatCost : Number.POSITIVE_INFINITY;
  const slopingCost = slopes ? rules.slopingCost : Number.POSITIVE_INFINITY;
  const cheapest = Math.min(flatCost, slopingCost);

  const best = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY); // F; Infinity where no edge is allowed
  const start = new Int32Array(n + 1).fill(-1);
  const sloping = new Uint8Array(n + 1);
  const blocks = new StartBlocks(best, x, y, w, slopes);
  const sums = new RunningSums(); // of s…t−1
  const held = new RunningSums(); // of the segment that was best for the last end
  let heldStart = -1;
  let heldSloping = 0;
  let positions = 0;
  let lastSloping = -1; // last start from which a sloping segment to t stands on enough positions
  best[0] = 0;

  for (let t = 1; t <= n; t++) {
    const newest = t - 1;
    blocks.closeAt(t);
    if (heldStart >= 0) held.add(w[newest]!, x[newest]!, y[newest]!);
    if (newest === 0 || x[newest]! > x[newest - 1]!) {
      positions += 1;
      if (positions === fewestPositions) lastSloping = 0;
      else if (positions > fewestPositions) lastSloping = nextPosition(x, lastSloping);
    }
    if (t < n && x[t] === x[newest]) continue; // no edge between equal positions
    const startFlat = t - fewestFlat;
    const startSloping = Math.min(lastSloping, t - fewestSloping);

    let mark = Number.POSITIVE_INFINITY;
    if (heldStart >= 0) {
      mark = best[heldStart]! + (heldSloping === 1 ? held.sloping() + slopingCost : held.flat() + flatCost);
    }
    sums.clear();
    let s = t;
    while (s > 0) {
      if (s % blockSize === 0) {
        const beatable = mark + 1e-9 * (1 + mark);
        const flat = sums.flat();
        const slope = slopes ? sums.sloping() : flat;
        if (slope + cheapest > beatable) break;
        const passed = blocks.passOver(s, flat + flatCost, slope + slopingCost, beatable, sums);
        if (passed > 0) {
          s -= passed;
          continue;
        }
      }
      s -= 1;
      sums.add(w[s]!, x[s]!, y[s]!);
      const flat = s <= startFlat ? best[s]! + sums.flat() + flatCost : Number.POSITIVE_INFINITY;
      const slope = s <= startSloping ? best[s]! + sums.sloping() + slopingCost : Number.POSITIVE_INFINITY;
      if (Math.min(flat, slope) < mark) {
        mark = Math.min(flat, slope);
        heldStart = s;
        heldSloping = slope < flat ? 1 : 0;
        held.set(sums);
      }
    }
    best[t] = mark;
    start[t] = heldStart;
    sloping[t] = heldSloping;
  }

  if (best[n] === Number.POSITIVE_INFINITY) return null;
  const stretches: Stretch[] = [];
  for (let t = n; t > 0; t = start[t]!) {
    stretches.push({ from: start[t]!, to: t - 1, shape: sloping[t] === 1 ? "sloping" : "flat" });
  }
  return { stretches: stretches.reverse(), criterion: best[n]! };
}

/** Index of the first reading whose position lies beyond that of reading i. */
function nextPosition(x: Float64Array, i: number): number {
  let next = i + 1;
  while (next < x.length && x[next] === x[i]) next += 1;
  return next;
}
