import { describe, expect, it } from "vitest";
import { curvature, fitLine, leastSquares, runsTest } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("curvature(x, y, u)", () => {
  const x = Array.from({ length: 21 }, (_, i) => 0.1 + i * 5e-3);
  const bow = (sag: number): number[] => x.map((v) => 0.06 - v / 24 + sag * (1 - ((v - 0.15) / 0.05) ** 2));
  it("gives back the height of a bow, barrel positive and hollow negative, whatever taper it sits on", () => {
    for (const sag of [8e-6, -8e-6]) {
      const found = curvature(x, bow(sag), 2e-6);
      expectClose(found.sag, sag, { rel: 1e-9, because: "readings of 0.06 m hold 1e-17 m" });
      expectClose(found.quadratic, -sag / 0.05 ** 2, { rel: 1e-9, because: "the parabola put in" });
    }
  });
  it("is the same for residuals about the line", () => {
    const noise = seededNoise(1);
    const y = bow(5e-6).map((v) => v + 2e-6 * noise.normal());
    const direct = curvature(x, y, 2e-6);
    const about = curvature(x, fitLine(x, y, { u: 2e-6 }).residuals, 2e-6);
    expectClose(about.sag, direct.sag, { rel: 1e-8, because: "a line has no curvature" });
    expectClose(about.uSag, direct.uSag, { rel: 1e-12, because: "same design" });
  });
  it("tests it as t² = the fall of the sum of squares from line to parabola", () => {
    const noise = seededNoise(2);
    const y = x.map(() => noise.normal());
    const line = fitLine(x, y);
    const parabola = leastSquares(
      x.map((v) => [1, v, v * v]),
      y,
    );
    const rss = line.residualStandardDeviation! ** 2 * 19;
    const fall = (rss - parabola.residualSumOfSquares) / (parabola.residualSumOfSquares / 18);
    const found = curvature(x, y);
    expectClose(found.tValue ** 2, fall, { rel: 1e-9, because: "F test of one parameter" });
    expect(found.degreesOfFreedom).toBe(18);
  });
  it("calls straight readings bowed no more often than its probability says", () => {
    const noise = seededNoise(3);
    let called = 0;
    for (let k = 0; k < 2000; k++)
      if (
        curvature(
          x,
          x.map(() => noise.normal()),
          1,
        ).probability < 0.05
      )
        called += 1;
    expectClose(called / 2000, 0.05, { abs: 0.0195, because: "4 times √(0.05·0.95/2000)" });
  });
  it("rejects too few positions, and a parabola without scatter when u is unknown", () => {
    expect(() => curvature([0, 0, 1, 1], [1, 2, 3, 4], 1)).toThrow(
      "curvature: x must take at least 3 different values, got 2",
    );
    expect(() => curvature([0, 1, 2], [1, 2, 3])).toThrow(/x needs at least 4 values, got 3/);
    expect(() => curvature([0, 1, 2, 3], [0, 0, 0, 0])).toThrow(
      /curvature: the readings must scatter about a parabola .* give u/,
    );
  });
});

describe("runsTest(residuals)", () => {
  it("agrees with counting every order of the signs", () => {
    for (const [above, below] of [
      [3, 3],
      [2, 6],
      [5, 4],
    ] as const) {
      const n = above + below;
      const counts: number[] = [];
      for (let mask = 0; mask < 2 ** n; mask++) {
        const signs = Array.from({ length: n }, (_, i) => (mask & (1 << i) ? 1 : -1));
        if (signs.filter((s) => s > 0).length !== above) continue;
        counts.push(signs.filter((s, i) => i === 0 || s !== signs[i - 1]).length);
      }
      for (const signs of [
        [...new Array<number>(above).fill(1), ...new Array<number>(below).fill(-1)],
        [1, -1, ...new Array<number>(above - 1).fill(1), ...new Array<number>(below - 1).fill(-1)],
      ]) {
        const test = runsTest(signs);
        const few = counts.filter((r) => r <= test.runs).length / counts.length;
        const many = counts.filter((r) => r >= test.runs).length / counts.length;
        expectClose(test.probabilityOfFew, few, { rel: 1e-12, because: "exact counts" });
        expectClose(test.probabilityOfMany, many, { rel: 1e-12, because: "exact counts" });
        expectClose(test.expected, counts.reduce((a, b) => a + b, 0) / counts.length, {
          rel: 1e-12,
          because: "exact mean",
        });
      }
    }
  });
  it("leaves out zeros and says how many", () => {
    const test = runsTest([1, 0, 2, -1, 0, -3]);
    expect([test.runs, test.above, test.below, test.zeros]).toEqual([2, 2, 2, 2]);
  });
  it("rejects residuals on one side alone", () => {
    expect(() => runsTest([1, 2, 0])).toThrow(
      "runsTest: residuals must lie on both sides of 0, got 2 above and 0 below",
    );
    expect(() => runsTest([1, Number.NaN])).toThrow(/residuals\[1\] must be a finite number/);
  });
});
