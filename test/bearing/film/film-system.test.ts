import { describe, expect, it } from "vitest";
import { type FilmLines, missAt, turnedRound } from "../../../kernel-helpers/bearing/film/film-lines.js";
import { filmSystem } from "../../../kernel-helpers/bearing/film/film-system.js";
import { expectClose } from "../../support/expect-close.js";

const [around, along] = [9, 5];
const size = around * along;
const lines: FilmLines = {
  around,
  along,
  turn: Float64Array.from({ length: around + 1 }, (_, i) => 1 + 0.3 * ((i * 7) % 5)),
  out: Float64Array.from({ length: around }, (_, i) => 0.2 + 0.15 * ((i * 3) % 4)),
  right: Float64Array.from({ length: around }, (_, i) => 1 - 0.35 * i),
};
const held = (places: readonly (readonly [number, number])[]): Uint8Array => {
  const empty = new Uint8Array(size);
  for (const [i, j] of places) empty[i * along + j] = 1;
  return empty;
};
const line = (i: number): [number, number][] => Array.from({ length: along }, (_, j) => [i, j]);

const cases = {
  "no node is held": [],
  "the end is ragged": [[6, 3], [6, 4], [7, 1], [7, 2], [7, 3], [7, 4], ...line(8)],
  "the beginning is ragged": [...line(0), [1, 0], [1, 2], [2, 4]],
  "both are": [
    [0, 4],
    [8, 0],
    [8, 1],
  ],
  "an island is left behind a whole empty line": [...line(4), [5, 0], [6, 0], [6, 1]],
  "one line is left": [0, 1, 2, 4, 5, 6, 7, 8].flatMap(line),
} as const satisfies Record<string, readonly (readonly [number, number])[]>;

/** The same equations by Gauss on the full matrix, made column by column from `missAt`: knows no waves, no profile. */
function byGauss(empty: Uint8Array): number[] {
  const nothing = new Float64Array(size);
  const miss = (x: Float64Array, at: number) => missAt(lines, x, Math.floor(at / along), at % along);
  const rows = Array.from({ length: size }, (_, at) => {
    if (empty[at] === 1) return [...Array.from({ length: size }, (_, c) => (c === at ? 1 : 0)), 0];
    const right = -miss(nothing, at);
    const row = Array.from({ length: size }, (_, c) => {
      const one = new Float64Array(size);
      one[c] = 1;
      return empty[c] === 1 ? 0 : miss(one, at) + right;
    });
    return [...row, right];
  });
  for (let k = 0; k < size; k++) {
    const pivot = rows[k]!;
    for (const row of rows.slice(k + 1)) {
      const factor = row[k]! / pivot[k]!;
      for (let c = k; c <= size; c++) row[c]! -= factor * pivot[c]!;
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k--) {
    const row = rows[k]!;
    x[k] = (row[size]! - row.slice(k + 1, size).reduce((sum, a, c) => sum + a * x[k + 1 + c]!, 0)) / row[k]!;
  }
  return x;
}

describe("filmSystem(lines).solve(empty)", () => {
  it.each(Object.entries(cases))("gives what Gauss gives on the full matrix where %s", (_, places) => {
    const empty = held(places);
    const [found, wanted] = [filmSystem(lines).solve(empty), byGauss(empty)];
    for (let at = 0; at < size; at++)
      if (empty[at] === 1) expect(found[at]).toBe(0);
      else expectClose(found[at]!, wanted[at]!, { rel: 1e-12, because: "roundings; 2e-14 measured" });
  });
  it("is the same film counted from its other end", () => {
    const empty = held(cases["the end is ragged"]);
    const turnedEmpty = new Uint8Array(size);
    for (let i = 0; i < around; i++)
      turnedEmpty.set(empty.subarray(i * along, (i + 1) * along), (around - 1 - i) * along);
    const [found, turned] = [
      filmSystem(lines).solve(empty),
      filmSystem(turnedRound(lines)).solve(turnedEmpty),
    ];
    for (let i = 0; i < around; i++)
      for (let j = 0; j < along; j++)
        expectClose(turned[(around - 1 - i) * along + j]!, found[i * along + j]!, {
          rel: 1e-12,
          abs: 1e-300,
          because: "roundings",
        });
  });
  it("asked again with other nodes held gives what a new one gives, to the last bit", () => {
    const going = filmSystem(lines);
    for (const places of [...Object.values(cases), ...Object.values(cases).reverse()])
      expect([...going.solve(held(places))]).toEqual([...filmSystem(lines).solve(held(places))]);
  });
});
