import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareTexts } from "../../../../kernel-helpers/live/grid/model/index.js";

describe("compareTexts(mine, theirs)", () => {
  it("shows what stands in place of what", () => {
    expect(compareTexts("a\nb\nc\nd\n", "a\nx\nc\nd\ne\n")).toEqual([
      { same: true, mine: ["a"], theirs: ["a"] },
      { same: false, mine: ["b"], theirs: ["x"] },
      { same: true, mine: ["c", "d"], theirs: ["c", "d"] },
      { same: false, mine: [], theirs: ["e"] },
    ]);
  });

  it("sees no difference in line ends, nor between a text and itself", () => {
    expect(compareTexts("a\r\nb", "a\nb\n").every(({ same }) => same)).toBe(true);
    expect(compareTexts("", "")).toEqual([]);
  });

  const lines = fc.array(fc.constantFrom("a", "b", "c"), { maxLength: 12 });

  it("put together gives both texts, with as many lines in common as there can be", () => {
    fc.assert(
      fc.property(lines, lines, (mine, theirs) => {
        const stretches = compareTexts(mine.join("\n"), theirs.join("\n"));
        expect(stretches.flatMap((one) => one.mine)).toEqual(mine);
        expect(stretches.flatMap((one) => one.theirs)).toEqual(theirs);
        const common = stretches.reduce((sum, { same, mine: { length } }) => sum + (same ? length : 0), 0);
        expect(common).toBe(longestCommon(mine, theirs));
      }),
    );
  });
});

/** By trying everything, the plain way. */
function longestCommon(
  a: readonly string[],
  b: readonly string[],
  known = new Map<string, number>(),
): number {
  if (a.length === 0 || b.length === 0) return 0;
  const key = `${a.length}/${b.length}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const [restA, restB] = [a.slice(1), b.slice(1)];
  const length =
    a[0] === b[0]
      ? 1 + longestCommon(restA, restB, known)
      : Math.max(longestCommon(restA, b, known), longestCommon(a, restB, known));
  known.set(key, length);
  return length;
}
