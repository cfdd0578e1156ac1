import { describe, expect, it } from "vitest";
import { foundAmong, studentTCdf } from "../../kernel-helpers/statistics/index.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("foundAmong(chances, share)", () => {
  // Source: Benjamini & Hochberg (1995), section 3.2: 15 tests of a trial of thrombolysis; at 0.05 four are found,
  // where Bonferroni's bound of 0.05/15 finds three.
  it("finds the four of fifteen that the paper finds", () => {
    const chances = [
      0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
      0.759, 1,
    ];
    expect(foundAmong(chances, 0.05)).toEqual(chances.map((_, i) => i < 4));
    expect(foundAmong([...chances].reverse(), 0.05)).toEqual(chances.map((_, i) => i > 10));
  });

  it("of one test is the plain test, and of none nothing", () => {
    expect(foundAmong([0.01], 0.01)).toEqual([true]);
    expect(foundAmong([0.0101], 0.01)).toEqual([false]);
    expect(foundAmong([], 0.01)).toEqual([]);
  });

  it("keeps the share of false ones that it promises: share × share of tests with nothing there", () => {
    const { normal } = seededNoise(12);
    const runs = 2000;
    let falseShare = 0;
    let anyFalse = 0;
    for (let run = 0; run < runs; run++) {
      const chanceOf = (shift: number): number =>
        2 * studentTCdf(-Math.abs(shift + normal()), Number.POSITIVE_INFINITY);
      const mixed = Array.from({ length: 20 }, (_, i) => chanceOf(i < 5 ? 4 : 0));
      const found = foundAmong(mixed, 0.1);
      const wrong = found.filter((is, i) => is && i >= 5).length;
      falseShare += wrong / Math.max(1, found.filter(Boolean).length);
      if (
        foundAmong(
          Array.from({ length: 16 }, () => chanceOf(0)),
          0.05,
        ).includes(true)
      )
        anyFalse += 1;
    }
    // Theory: exactly 0.1 × 15/20, and exactly 0.05; three standard deviations of 2000 runs.
    expect(Math.abs(falseShare / runs - 0.075)).toBeLessThan(0.009);
    expect(Math.abs(anyFalse / runs - 0.05)).toBeLessThan(0.015);
  });

  it("rejects what is no chance", () => {
    expect(() => foundAmong([0.5, 1.5], 0.05)).toThrow(
      "foundAmong: chances[1] must lie from 0 to 1, got 1.5",
    );
    expect(() => foundAmong([0.5], 0)).toThrow(/share must lie between 0 and 1, got 0/);
  });
});
