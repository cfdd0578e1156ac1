import { requireFiniteList, requireProbability } from "./check.js";
import { sortedTails } from "./shortest-interval-tails.js";

/** From where to where. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The two ways to cover a share of simulated values. */
export interface CoverageIntervals {
  /** The narrowest interval that holds the share. */
  readonly shortest: Interval;
  /** The interval that leaves as much below as above. */
  readonly symmetric: Interval;
  /** How far chance moves the ends of the symmetric interval (one standard deviation each). */
  readonly symmetricError: Interval;
}

/**
 * The shortest interval that holds a share of simulated values, and the one that leaves equal tails.
 *
 * Of the sorted values y₁ … y_M: [y_r, y_(r+q)], q = pM rounded; shortest: the r that makes it narrowest (the
 * lowest such r); symmetric: r = (M − q)/2, rounded up when it ends in ½
 *
 * Valid when: the values are independent draws, enough of them that (1 − p)·M is at least 1. For a lop-sided
 * distribution the two differ; for one with several peaks neither tells all.
 *
 * @param values    simulated values [any one unit]
 * @param coverage  share p to be covered, between 0 and 1 [-]
 * @returns both intervals and the error of the symmetric one's ends [unit of values]
 * @throws RangeError  too few values for the share, one that is not finite, a share outside 0 to 1
 * @example shortestInterval([1, 2, 3, 4, 5, 6, 7, 8, 9, 20], 0.8).shortest // { low: 1, high: 9 }
 * @source JCGM 101:2008, 7.7.2 to 7.7.4
 */
export function shortestInterval(values: readonly number[], coverage: number): CoverageIntervals {
  requireFiniteList("shortestInterval", "values", values, 2);
  return shortestIntervalOf("shortestInterval", Float64Array.from(values), coverage);
}

/** The same for a list of values that are known to be finite. */
export function shortestIntervalOf(where: string, values: Float64Array, coverage: number): CoverageIntervals {
  requireProbability(where, "coverage", coverage);
  const count = values.length;
  const q = Math.floor(coverage * count + 0.5);
  if (q < 1 || q > count - 1)
    throw new RangeError(
      `${where}: a coverage of ${coverage} needs at least ${Math.ceil(1 / Math.min(coverage, 1 - coverage))} values, got ${count}`,
    );
  // One step of chance in a tail: the ranks that far off are looked at too.
  const middle = Math.floor((count - q + 1) / 2);
  const step = Math.max(1, Math.round(Math.sqrt((middle * (count - middle)) / count)));
  const { lowest, highest } = sortedTails(values, Math.min(count, Math.max(count - q, middle + step + 1)));
  const at = (rank: number): number => {
    const kept = Math.min(count - 1, Math.max(0, rank));
    return kept < lowest.length ? lowest[kept]! : highest[kept - count + highest.length]!;
  };
  let best = 0;
  for (let r = 1; r < count - q; r++) if (at(r + q) - at(r) < at(best + q) - at(best)) best = r;
  const spread = (rank: number): number => (at(rank + step) - at(rank - step)) / 2;
  const interval = (low: number, high: number): Interval => Object.freeze({ low, high });
  return Object.freeze({
    shortest: interval(at(best), at(best + q)),
    symmetric: interval(at(middle - 1), at(middle - 1 + q)),
    symmetricError: interval(spread(middle - 1), spread(middle - 1 + q)),
  });
}
