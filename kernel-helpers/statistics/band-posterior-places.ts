import { fewestPositions } from "./partition-search.js";

/** Where bands may begin and end. */
export interface EdgePlaces {
  /** For a start s (0 too): how likely an edge before s is beforehand [-]; 0 where none may lie. */
  readonly weight: Float64Array;
  /** For an end t: last start of a flat, and of a sloping, band s … t−1; below 0 where there is none. */
  readonly lastFlat: Int32Array;
  readonly lastSloping: Int32Array;
}

/**
 * Where bands may begin and end, and how likely an edge is at each place beforehand.
 *
 * Every edge has the weight 1 ("gaps") or the width of its gap over the mean width ("length"), times a common
 * factor that only keeps the numbers within the range of the computer: all together weigh `edgesExpected`.
 *
 * @param x positions, ascending
 * @param fewest fewest readings of a flat and a sloping band; Infinity where not allowed; and fewest positions
 * @param edgePrior see BandPosteriorOptions
 * @param edgesExpected total weight of all gaps
 */
export function edgePlaces(
  x: Float64Array,
  fewest: { readonly flat: number; readonly sloping: number; readonly positions: number },
  edgePrior: "gaps" | "length",
  edgesExpected: number,
): EdgePlaces {
  const n = x.length;
  const weight = new Float64Array(n + 1);
  const lastFlat = new Int32Array(n + 1).fill(-1);
  const lastSloping = new Int32Array(n + 1).fill(-1);
  let gaps = 0;
  for (let s = 1; s < n; s++) if (x[s]! > x[s - 1]!) gaps += 1;
  const tilt = edgesExpected / Math.max(1, gaps);
  const meanWidth = (x[n - 1]! - x[0]!) / Math.max(1, gaps);
  weight[0] = 1;
  for (let s = 1; s < n; s++) {
    const width = x[s]! - x[s - 1]!;
    if (width > 0) weight[s] = edgePrior === "gaps" ? tilt : (tilt * width) / meanWidth;
  }
  const firsts: number[] = []; // first reading at each position
  for (let t = 1; t <= n; t++) {
    if (t === 1 || x[t - 1]! > x[t - 2]!) firsts.push(t - 1);
    const enough = firsts[firsts.length - fewest.positions] ?? -1;
    lastFlat[t] = Math.max(-1, Math.min(enough, t - fewest.flat));
    const onThree = firsts[firsts.length - fewestPositions] ?? -1;
    lastSloping[t] = Math.max(-1, Math.min(enough, onThree, t - fewest.sloping));
  }
  return { weight, lastFlat, lastSloping };
}

/**
 * Total weight beforehand of all divisions into k bands, k = 0 … maximumBands.
 *
 * N₀(0) = 1, N_k(t) = weight · Σ N_{k−1}(s) over the starts s of a band that may end at t
 */
export function divisionWeights(places: EdgePlaces, maximumBands: number): Float64Array {
  const { weight, lastFlat, lastSloping } = places;
  const n = weight.length - 1;
  const totals = new Float64Array(maximumBands + 1);
  let before = new Float64Array(n + 1);
  before[0] = 1;
  for (let k = 1; k <= maximumBands; k++) {
    const upTo = new Float64Array(n + 2); // upTo[i]: sum of `before` over s < i
    for (let s = 0; s <= n; s++) upTo[s + 1] = upTo[s]! + before[s]!;
    const now = new Float64Array(n + 1);
    for (let t = 1; t <= n; t++) {
      const ways = upTo[Math.max(lastFlat[t]!, lastSloping[t]!) + 1]!;
      if (t === n) totals[k] = ways;
      else now[t] = ways * weight[t]!;
    }
    before = now;
  }
  return totals;
}
