/**
 * Which points of a long series to draw so that the drawing looks the same: of each narrow column of the plot
 * the lowest and the highest. A series of no more than two points a column is kept whole.
 *
 * @param x places along the axis
 * @param y values, as many as x
 * @param columns columns over the whole of x [-], default 500
 * @returns indices into x and y, rising
 */
export function thinned(x: readonly number[], y: readonly number[], columns: number = 500): number[] {
  const all = x.map((_, i) => i);
  if (x.length <= 2 * columns) return all;
  const first = x.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const last = x.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const lowest = new Map<number, number>();
  const highest = new Map<number, number>();
  for (const i of all) {
    const column = Math.min(columns - 1, Math.floor(((x[i]! - first) / (last - first || 1)) * columns));
    const [low, high] = [lowest.get(column), highest.get(column)];
    if (low === undefined || y[i]! < y[low]!) lowest.set(column, i);
    if (high === undefined || y[i]! > y[high]!) highest.set(column, i);
  }
  return [...new Set([...lowest.values(), ...highest.values()])].sort((a, b) => a - b);
}
