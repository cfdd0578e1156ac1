import type { BackwardSteps } from "./band-posterior-steps.js";

/**
 * Walks from the last reading back to the first, band by band, each step taken with its share: what they pass,
 * and after how many bands. Tables of (n + 1) rows of width K + 1.
 */
export interface Walks {
  readonly width: number;
  /** reach[t][k]: probability that a walk from t comes to the first reading in exactly k bands. */
  readonly reach: Float64Array;
  /** visit[t][k]: probability that a walk from the end passes t after exactly k bands. */
  readonly visit: Float64Array;
}

/** Counts the bands of all walks: sums of products of shares, none of which is above 1. */
export function walks({ lastBands }: BackwardSteps, maximumBands: number): Walks {
  const n = lastBands.length - 1;
  const width = maximumBands + 1;
  const reach = new Float64Array((n + 1) * width);
  const visit = new Float64Array((n + 1) * width);
  reach[0] = 1;
  for (let t = 1; t <= n; t++) {
    const { from, share } = lastBands[t]!;
    const at = t * width;
    for (let i = 0; i < share.length; i++) {
      const p = share[i]!;
      if (p === 0) continue;
      const before = (from + i) * width;
      for (let k = 1; k < width; k++) reach[at + k]! += p * reach[before + k - 1]!;
    }
  }
  visit[n * width] = 1;
  for (let t = n; t > 0; t--) {
    const { from, share } = lastBands[t]!;
    const at = t * width;
    let passed = maximumBands;
    while (passed > 0 && visit[at + passed - 1] === 0) passed -= 1;
    if (passed === 0) continue;
    for (let i = 0; i < share.length; i++) {
      const p = share[i]!;
      if (p === 0) continue;
      const before = (from + i) * width;
      for (let k = 1; k <= passed; k++) visit[before + k]! += p * visit[at + k - 1]!;
    }
  }
  return { width, reach, visit };
}

/** Starts of the bands of the most probable division of all readings into k bands, along the line. */
export function bestStarts({ lastBands }: BackwardSteps, k: number): number[] {
  const n = lastBands.length - 1;
  const origin: Int32Array[] = []; // for each number of bands so far: start of the last of them, by end
  let best = new Float64Array(n + 1);
  best[0] = 1;
  for (let bands = 1; bands <= k; bands++) {
    const next = new Float64Array(n + 1);
    const starts = new Int32Array(n + 1).fill(-1);
    for (let t = bands === k ? n : 1; t <= n; t++) {
      const { from, share } = lastBands[t]!;
      for (let i = 0; i < share.length; i++) {
        const p = share[i]! * best[from + i]!;
        if (p <= next[t]!) continue;
        next[t] = p;
        starts[t] = from + i;
      }
    }
    best = next;
    origin.push(starts);
  }
  const starts: number[] = [];
  let t = n;
  for (const starting of origin.reverse()) {
    t = starting[t]!;
    starts.push(t);
  }
  return starts.reverse();
}

/** Probability that the readings have an edge before s, each number of bands k weighted by factor[k]. */
export function edgeAt({ reach, visit, width }: Walks, s: number, factor: Float64Array): number {
  let sum = 0;
  for (let i = 1; i < width - 1; i++) {
    const r = reach[s * width + i]!;
    if (r === 0) continue;
    for (let j = 1; i + j < width; j++) sum += r * visit[s * width + j]! * factor[i + j]!;
  }
  return sum;
}
