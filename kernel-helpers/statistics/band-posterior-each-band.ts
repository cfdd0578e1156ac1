import type { Walks } from "./band-posterior-counts.js";
import type { Weighed } from "./band-posterior-weighed.js";
import { BandSums, type LinePrior } from "./band-sums.js";

/**
 * Visits every band s … t−1 that is probable enough, over all divisions, with its probability and its readings' sums.
 *
 * P(band) = share(s | t) · Σ reach(s, i) visit(t, j) factor(i + j + 1)
 */
export function eachBand(
  { readings: { x, y, w, row, rowCount }, steps: { lastBands }, table, factor }: Weighed,
  line: LinePrior,
  leastProbable: number,
  visit: (s: number, t: number, probability: number, sums: BandSums) => void,
): void {
  const sums = new BandSums(rowCount, line);
  for (let t = 1; t < lastBands.length; t++) {
    const { from, share } = lastBands[t]!;
    if (share.length === 0) continue;
    const behind = countsBehind(table, t, factor);
    if (behind === null) continue;
    sums.clear();
    for (let s = t - 1; s >= from; s--) {
      sums.add(row[s]!, w[s]!, x[s]!, y[s]!);
      const last = share[s - from] ?? 0;
      if (last === 0) continue;
      const probability = last * countsBefore(table, s, behind);
      if (probability >= leastProbable) visit(s, t, probability, sums);
    }
  }
}

/** For each number of bands i before the band that ends at t: the weight of what may follow t; null for none. */
function countsBehind({ visit, width }: Walks, t: number, factor: Float64Array): Float64Array | null {
  const behind = new Float64Array(width);
  let any = false;
  for (let j = 0; j < width - 1; j++) {
    const v = visit[t * width + j]!;
    if (v === 0) continue;
    any = true;
    for (let i = 0; i + j + 1 < width; i++) behind[i]! += v * factor[i + j + 1]!;
  }
  return any ? behind : null;
}

function countsBefore({ reach, width }: Walks, s: number, behind: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < width - 1; i++) sum += reach[s * width + i]! * behind[i]!;
  return sum;
}
