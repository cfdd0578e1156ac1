import { requireFinite, requireFiniteList, requireSameLength, uncertaintyList } from "./check.js";
import { contradiction } from "./refusals.js";
import { repeatsTestOf } from "./repeats-test.js";

/** What every division of readings along a line asks for. */
interface AskedOfDivision {
  readonly u: number | readonly number[];
  readonly minimumPoints: number;
  readonly penalty: number | undefined;
}

/**
 * The checks every division of readings along a line makes first.
 *
 * @returns a standard uncertainty for each reading, and the cost of a parameter, by default ln n
 * @throws RangeError  positions that descend, unequal lengths, too few readings, minimumPoints that is no whole number
 * of at least 1, penalty or u not > 0, or a value that is not finite
 */
export function checkedDivision(
  where: string,
  positions: readonly number[],
  values: readonly number[],
  { u, minimumPoints, penalty: asked }: AskedOfDivision,
): { readonly u: readonly number[]; readonly penalty: number } {
  if (!Number.isInteger(minimumPoints) || minimumPoints < 1)
    throw new RangeError(
      `${where}: minimumPoints must be a whole number of at least 1, got ${minimumPoints}`,
    );
  requireFiniteList(where, "positions", positions, minimumPoints);
  requireFiniteList(where, "values", values, minimumPoints);
  requireSameLength(where, "positions", positions, "values", values);
  const n = positions.length;
  for (let i = 1; i < n; i++) {
    if (positions[i]! < positions[i - 1]!)
      throw new RangeError(
        `${where}: positions must ascend, got ${positions[i]} at index ${i} after ${positions[i - 1]}`,
      );
  }
  const list = uncertaintyList(where, "u", u, n);
  const penalty = asked ?? Math.max(Math.log(n), Math.LN2);
  requireFinite(where, "penalty", penalty);
  if (penalty <= 0) throw new RangeError(`${where}: penalty must be greater than 0, got ${penalty}`);
  return { u: list, penalty };
}

/** A segment, and how many of its readings were given no weight. */
interface Outvoted {
  readonly from: number;
  readonly to: number;
  readonly aside: number;
}

/**
 * Rejects repeats of one position that contradict each other (`repeatsTest`) where nothing tells which is wrong: no
 * reading was to be put aside, or in the segment of the worst two none is, or as many as count.
 */
export function requireDecidedRepeats(
  where: string,
  positions: readonly number[],
  values: readonly number[],
  u: readonly number[],
  segments: readonly Outvoted[],
  searched: boolean,
): void {
  const test = repeatsTestOf(
    positions,
    values,
    u.map((ui) => 1 / ui ** 2),
  );
  if (!test.contradictory) return;
  const isDecided = ({ from, to, aside }: Outvoted): boolean => aside > 0 && 2 * aside < to - from + 1;
  const [place] = test.worst!.indices;
  const segment = segments.find(({ from, to }) => place >= from && place <= to)!;
  if (!searched || !isDecided(segment))
    throw contradiction(where, positions, values, test, { x: "position", y: "values" });
}
