import { describe, expect, it } from "vitest";
import { grossAboutLine } from "../../kernel-helpers/survey/gross-about-line.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("grossAboutLine(x, y, u)", () => {
  const noisy = (n: number, seed: number): { x: number[]; y: number[]; u: number[] } => {
    const { normal } = seededNoise(seed);
    const x = Array.from({ length: n }, (_, i) => i);
    return { x, y: x.map((v) => 2 + 0.05 * v + 0.001 * normal()), u: x.map(() => 0.001) };
  };

  it("finds one reading off, wherever it stands", () => {
    for (const at of [0, 4, 9]) {
      const { x, y, u } = noisy(10, at + 1);
      y[at]! += 0.02;
      expect(grossAboutLine(x, y, u)).toEqual([at]);
    }
  });
  it("finds one of five, the fewest that can tell", () => {
    expect(grossAboutLine([0, 1, 2, 3, 4], [0, 1, 2, 30, 4], [1, 1, 1, 1, 1])).toEqual([3]);
    expect(grossAboutLine([0, 1, 2, 3], [0, 1, 20, 3], [1, 1, 1, 1])).toEqual([]);
  });
  it("finds several that hide each other from a mean", () => {
    const { x, y, u } = noisy(16, 5);
    for (const at of [12, 14, 15]) y[at]! *= 10;
    expect(grossAboutLine(x, y, u)).toEqual([12, 14, 15]);
  });
  it("finds it among many readings too", () => {
    const { x, y, u } = noisy(1200, 6);
    y[700]! -= 0.02;
    expect(grossAboutLine(x, y, u)).toEqual([700]);
  });
  it("finds none in honest noise, nor where all scatter five times as stated", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { x, y, u } = noisy(12, 17 * seed);
      expect(grossAboutLine(x, y, u)).toEqual([]);
    }
    const { x, y, u } = noisy(40, 9);
    expect(
      grossAboutLine(
        x,
        y,
        u.map((v) => v / 5),
      ),
    ).toEqual([]);
  });
  it("finds none where all readings stand at one place", () => {
    expect(grossAboutLine([1, 1, 1, 1, 1], [1, 2, 3, 4, 50], [1, 1, 1, 1, 1])).toEqual([]);
  });
});
