import type { Walks } from "./band-posterior-counts.js";
import type { EdgeInterval, EdgePosition } from "./band-posterior-types.js";

/** Two lengths alike but for rounding. */
const sameLength = 1e-9;

/**
 * Probability of each place of the edge with the given number (1 = first along the line), given that there are
 * k bands.
 *
 * P(edge before s | k) = reach(s, number) · visit(s, k − number) / reach(n, k)
 *
 * @returns by start s = 0 … n
 */
export function placesOfEdge({ reach, visit, width }: Walks, k: number, number: number): Float64Array {
  const n = reach.length / width - 1;
  const total = reach[n * width + k]!;
  return Float64Array.from(
    { length: n + 1 },
    (_, s) => (reach[s * width + number]! * visit[s * width + k - number]!) / total,
  );
}

/**
 * Shortest run of gaps that holds an edge with at least the probability wanted; of runs equally long the more
 * probable.
 *
 * @param places probability that the edge lies before s, by s; adds to 1
 * @param x positions of the readings that count
 * @param index their indices among all readings
 * @param coverage probability wanted [-]
 */
export function shortestRunOfGaps(
  places: Float64Array,
  x: Float64Array,
  index: readonly number[],
  coverage: number,
): EdgeInterval {
  const n = x.length;
  // Rounding may leave the whole a little short of 1.
  const wanted = Math.min(coverage, places.reduce((a, b) => a + b, 0) * (1 - 1e-12));
  let best = { first: 1, last: n - 1, mass: 0, length: Number.POSITIVE_INFINITY };
  for (let first = 1; first < n; first++) {
    if (places[first] === 0) continue;
    let mass = 0;
    for (let last = first; last < n; last++) {
      const length = x[last]! - x[first - 1]!;
      if (length > best.length * (1 + sameLength)) break;
      mass += places[last]!;
      if (mass < wanted) continue;
      const shorter = length < best.length * (1 - sameLength);
      if (shorter || mass > best.mass) best = { first, last, mass, length };
      break;
    }
  }
  return Object.freeze({
    after: index[best.first - 1]!,
    before: index[best.last]!,
    low: x[best.first - 1]!,
    high: x[best.last]!,
    probability: best.mass,
  });
}

/**
 * Where an edge lies: each gap holds it with its probability p, and every place in a gap is as likely as another.
 *
 * mean = Σ p·middle, variance = Σ p·[width²/12 + (middle − mean)²]; the ends leave (1 − coverage)/2 on either side
 *
 * @param places probability that the edge lies before s, by s; adds to 1
 * @param x positions of the readings that count
 * @param coverage probability between the ends [-]
 */
export function positionOfEdge(places: Float64Array, x: Float64Array, coverage: number): EdgePosition {
  const n = x.length;
  const total = places.reduce((a, b) => a + b, 0);
  let mean = 0;
  for (let s = 1; s < n; s++) mean += (places[s]! / total) * ((x[s - 1]! + x[s]!) / 2);
  let variance = 0;
  for (let s = 1; s < n; s++) {
    const off = (x[s - 1]! + x[s]!) / 2 - mean;
    variance += (places[s]! / total) * ((x[s]! - x[s - 1]!) ** 2 / 12 + off * off);
  }
  const below = (share: number): number => {
    let passed = 0;
    for (let s = 1; s < n; s++) {
      const p = places[s]! / total;
      if (p > 0 && passed + p >= share) return x[s - 1]! + ((share - passed) / p) * (x[s]! - x[s - 1]!);
      passed += p;
    }
    return x[n - 1]!;
  };
  const tail = (1 - coverage) / 2;
  return Object.freeze({
    value: mean,
    standardUncertainty: Math.sqrt(variance),
    low: below(tail),
    high: below(1 - tail),
  });
}
