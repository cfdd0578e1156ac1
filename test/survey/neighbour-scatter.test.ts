import { describe, expect, it } from "vitest";
import { median } from "../../kernel-helpers/survey/median.js";
import { demandedByScatter, neighbourScatter } from "../../kernel-helpers/survey/neighbour-scatter.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";

const places = (n: number): number[] => Array.from({ length: n }, (_, i) => i);
const all = (n: number, u: number): number[] => places(n).map(() => u);

describe("neighbourScatter(x, y, u)", () => {
  it("is about 1 for honest noise and about k for noise k times as large", () => {
    const { normal } = seededNoise(3);
    const y = places(2000).map(() => normal());
    expectClose(neighbourScatter(places(2000), y, all(2000, 1)), 1, { abs: 0.1, because: "1.4/√n is 0.03" });
    expectClose(neighbourScatter(places(2000), y, all(2000, 0.5)), 2, {
      abs: 0.2,
      because: "1.4/√n is 0.03",
    });
  });
  it("is 0 on a slope and not moved by a few steps, whatever the spacing", () => {
    const x = [0, 1, 3, 4, 8, 9, 10, 14, 15];
    const y = x.map((v) => 0.3 * v);
    expect(neighbourScatter(x, y, all(9, 1))).toBeLessThan(1e-12);
    const stepped = places(20).map((i) => (i < 10 ? 0 : 100));
    expect(neighbourScatter(places(20), stepped, all(20, 1))).toBe(0);
  });
  it("says 1 where too few readings tell", () => {
    expect(neighbourScatter([0, 1, 2, 3], [0, 9, 0, 9], all(4, 1))).toBe(1);
  });
});

describe("demandedByScatter(x, y, u)", () => {
  it("is 1 for honest noise but in about 1 survey of 1000, and the scatter where that is large", () => {
    let demanded = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const { normal } = seededNoise(seed * 131);
      const y = places(30).map(() => normal());
      if (demandedByScatter(places(30), y, all(30, 1)) !== 1) demanded += 1;
      expect(demandedByScatter(places(30), y, all(30, 0.1))).toBeGreaterThan(4);
    }
    expect(demanded).toBeLessThanOrEqual(3);
  });
});

describe("median(values)", () => {
  it("is the middle value or the mean of the middle two, and leaves the list alone", () => {
    const values = Object.freeze([3, 1, 2]);
    expect(median(values)).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
    expect(() => median([])).toThrow(/median: at least 1 value is needed, got 0/);
  });
});
