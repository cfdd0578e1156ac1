import type { Walks } from "./band-posterior-counts.js";
import type { EdgeInterval } from "./band-posterior-types.js";

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
export function shortestInterval(
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
