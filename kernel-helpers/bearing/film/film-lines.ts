/**
 * The equations of an oil film on a mesh whose film thickness does not change along the bearing, so that a line round
 * the film has one thickness: on line i, at node j from the middle outwards,
 *
 * s_j·(turn_i + turn_{i+1})·P_ij − s_j·turn_i·P_{i−1,j} − s_j·turn_{i+1}·P_{i+1,j} + out_i·(L·P_i)_j = s_j·right_i,
 *
 * L·P = −P_{j−1} + 2·P_j − P_{j+1}, half of it at the middle (s_0 = 1/2, the line of symmetry; s = 1 elsewhere); P = 0
 * beyond the last line, before the first and at j = along.
 */
export interface FilmLines {
  readonly around: number;
  readonly along: number;
  /** From line i − 1 to line i; one more than there are lines. */
  readonly turn: Float64Array;
  /** Along each line. */
  readonly out: Float64Array;
  readonly right: Float64Array;
}

/** The same film counted from its other end. */
export function turnedRound({ around, along, turn, out, right }: FilmLines): FilmLines {
  return {
    around,
    along,
    turn: turn.slice().reverse(),
    out: out.slice().reverse(),
    right: right.slice().reverse(),
  };
}

/**
 * A·P − right at a node: 0 where the equations hold.
 *
 * @param lines  the equations
 * @param pressure  P, by lines
 * @param i  line
 * @param j  node on it
 */
export function missAt(lines: FilmLines, pressure: Float64Array, i: number, j: number): number {
  const { around, along, turn, out, right } = lines;
  const at = i * along + j;
  const here = pressure[at]!;
  const before = i > 0 ? pressure[at - along]! : 0;
  const after = i + 1 < around ? pressure[at + along]! : 0;
  const outward = j + 1 < along ? pressure[at + 1]! : 0;
  const share = j === 0 ? 0.5 : 1;
  const round = turn[i]! * (here - before) + turn[i + 1]! * (here - after) - right[i]!;
  const bend = j === 0 ? here - outward : 2 * here - outward - pressure[at - 1]!;
  return share * round + out[i]! * bend;
}
