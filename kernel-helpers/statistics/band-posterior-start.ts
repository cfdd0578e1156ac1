import type { PosteriorSettings } from "./band-posterior-settings.js";
import { partition } from "./partition.js";
import { requireDecidedRepeats } from "./partition-check.js";

/** Fewer readings than this in a row cannot contradict one of them. */
const fewestInRow = 5;

/**
 * The readings to begin with as gross: those that `partition` puts aside, row by row, each as if it were alone.
 *
 * @returns indices, ascending
 * @throws RangeError repeats of one position in a row that contradict each other, where nothing tells which is wrong
 */
export function firstGross(
  positions: readonly number[],
  values: readonly number[],
  {
    u,
    rows,
    shapes,
    minimumPoints,
    minimumSlopingPoints,
    minimumPositions,
    grossProbability,
  }: PosteriorSettings,
): readonly number[] {
  const where = "bandPosterior";
  const members = new Map<number, number[]>();
  rows.forEach((row, i) => {
    const others = members.get(row);
    if (others === undefined) members.set(row, [i]);
    else others.push(i);
  });
  const fewest = members.size === 1 ? minimumPoints : Math.max(2, minimumPositions);
  const gross: number[] = [];
  for (const list of members.values()) {
    const of = (all: readonly number[]): number[] => list.map((i) => all[i]!);
    const [x, y, uOf] = [of(positions), of(values), of(u)];
    const few =
      list.length < Math.max(fewestInRow, fewest, minimumSlopingPoints) || new Set(x).size < fewestInRow;
    if (grossProbability === 0 || few) {
      const all = { from: 0, to: list.length - 1, aside: 0 };
      requireDecidedRepeats(where, x, y, uOf, [all], false);
      continue;
    }
    const rules = { u: uOf, shapes, minimumPoints: fewest, minimumSlopingPoints };
    const found = partition(x, y, { ...rules, contradictions: "keep" });
    const outvoted = found.segments.map(({ from, to, points }) => ({
      from,
      to,
      aside: to - from + 1 - points,
    }));
    requireDecidedRepeats(where, x, y, uOf, outvoted, true);
    for (const { index } of found.gross) gross.push(list[index]!);
  }
  return gross.sort((a, b) => a - b);
}
