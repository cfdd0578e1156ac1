/** The median: the middle value, or the mean of the middle two. */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError("median: at least 1 value is needed, got 0");
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
