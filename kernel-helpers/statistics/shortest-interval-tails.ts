import { sortDoubles } from "./sort-doubles.js";

/** Both ends of a sorted list, at least as long as asked for. */
export interface SortedTails {
  /** The lowest values, sorted. */
  readonly lowest: Float64Array;
  /** The highest values, sorted. */
  readonly highest: Float64Array;
}

const sampleSize = 16_384;

/**
 * The lowest and the highest values of a list, each sorted; much quicker than sorting all.
 *
 * A sorted sample tells about where the tails begin; one pass gathers what lies beyond, and only that is sorted.
 * Should the sample have misled, so that too few are gathered, all are sorted: the result is always exact.
 *
 * @param values  finite numbers
 * @param count   how many are needed at each end, from 1 to the length [-]
 */
export function sortedTails(values: Float64Array, count: number): SortedTails {
  const sorted = (): SortedTails => {
    const all = sortDoubles(values);
    return { lowest: all, highest: all };
  };
  if (values.length < 4 * sampleSize || 3 * count > values.length) return sorted();
  const stride = Math.floor(values.length / sampleSize);
  const picked = new Float64Array(sampleSize);
  for (let i = 0; i < sampleSize; i++) picked[i] = values[i * stride]!;
  const sample = sortDoubles(picked);
  const expected = (count / values.length) * sampleSize;
  // Five standard deviations of the count of sampled values in the tail.
  const rank = Math.ceil(expected + 5 * Math.sqrt(expected) + 5);
  if (2 * rank >= sampleSize) return sorted();
  const lowBound = sample[rank]!;
  const highBound = sample[sampleSize - 1 - rank]!;
  // Room for half as many again as the sample makes likely, ten standard deviations and more.
  const room = Math.ceil(1.5 * (rank / sampleSize) * values.length);
  const lowest = new Float64Array(room);
  const highest = new Float64Array(room);
  let [low, high] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value <= lowBound) lowest[low++] = value;
    if (value >= highBound) highest[high++] = value;
  }
  if (low < count || high < count || low > room || high > room) return sorted();
  return { lowest: sortDoubles(lowest.subarray(0, low)), highest: sortDoubles(highest.subarray(0, high)) };
}
