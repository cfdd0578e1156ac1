import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Outline } from "../../../kernel-helpers/notebook/report/outline.js";

describe("new Outline(base).enter(level)", () => {
  it("nests as the worksheet nests, from one below the base", () => {
    const outline = new Outline(2);
    expect([1, 2, 2, 3, 1].map((level) => outline.enter(level))).toEqual([3, 4, 4, 5, 3]);
  });

  it("closes the gaps a worksheet leaves", () => {
    const outline = new Outline(2);
    expect([2, 5, 3, 2].map((level) => outline.enter(level))).toEqual([3, 4, 4, 3]);
    expect(outline.below).toBe(4);
  });

  it("never skips a level, never leaves 1 to 6, whatever the worksheet does", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 6 })), (levels) => {
        const outline = new Outline(2);
        let before = 2;
        for (const level of levels) {
          const given = outline.enter(level);
          expect(given).toBeGreaterThan(2);
          expect(given).toBeLessThanOrEqual(Math.min(before + 1, 6));
          before = given;
        }
      }),
    );
  });
});
