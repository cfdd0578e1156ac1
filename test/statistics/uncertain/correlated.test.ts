import { describe, expect, it } from "vitest";
import { measured, mm } from "../../../kernel-helpers/quantity/index.js";
import { correlated } from "../../../kernel-helpers/statistics/index.js";
import { choleskyFactor } from "../../../kernel-helpers/statistics/uncertain/correlation.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-14, abs: 1e-15, because: "a few roundings" };
const inputs = { a: measured(10, 3, 5), b: measured(20, 4, 9), c: measured(30, 12) };

describe("correlated(inputs, coefficients)", () => {
  it.each([-1, -0.5, 0, 0.3, 1])("adds covariances with r = %d", (r) => {
    const { a, b } = correlated(inputs, [["a", "b", r]]);
    expectClose(a.plus(b).standardUncertainty, Math.sqrt(9 + 16 + 2 * r * 12), rounding);
    expectClose(a.minus(b).standardUncertainty, Math.sqrt(9 + 16 - 2 * r * 12), rounding);
  });

  // JCGM 100:2008, 5.2.2, note 1: ten resistors calibrated with one standard, all tied: u of the sum is linear.
  it("gives u = 1 Ω for ten resistors of u = 0.1 Ω calibrated with one standard", () => {
    const names = Array.from({ length: 10 }, (_, i) => `r${i}`);
    const resistors = Object.fromEntries(names.map((name) => [name, measured(1000, 0.1)]));
    const pairs = names.flatMap((a, i) => names.slice(i + 1).map((b) => [a, b, 1] as const));
    const sum = Object.values(correlated(resistors, pairs)).reduce((total, next) => total.plus(next));
    expectClose(sum.standardUncertainty, 1, rounding);
    expect(sum.value).toBe(10_000);
  });

  it("leaves those that are not named together independent, with their own degrees of freedom", () => {
    const { a, b, c } = correlated(inputs, [["b", "c", 0.5]]);
    expectClose(a.plus(b).standardUncertainty, 5, rounding);
    expectClose(a.plus(b).degreesOfFreedom, 625 / (81 / 5 + 256 / 9), rounding);
    expectClose(b.plus(c).degreesOfFreedom, 9, rounding);
  });

  it("keeps kinds and values", () => {
    const { x, n } = correlated({ x: measured(mm(5), mm(1)), n: measured(2, 1) }, [["x", "n", 0.5]]);
    expect(x.times(n).dimension).toBe("length");
    expect(x.value.in("mm")).toBe(5);
    // u² = 2²·1² + 5²·1² + 2·0.5·2·5
    expectClose(x.times(n).standardUncertainty.in("mm"), Math.sqrt(4 + 25 + 10), rounding);
  });

  it.each([
    [[["a", "d", 0.5]], /correlated: correlation must name two of a, b, c, got a and d/],
    [[["a", "a", 1]], /correlated: an input is not correlated with itself/],
    [[["a", "b", 1.01]], /correlated: .* must lie from −1 to 1, got 1.01/],
    [[["a", "b", Number.NaN]], /must lie from −1 to 1, got NaN/],
    [
      [
        ["a", "b", 0.1],
        ["b", "a", 0.2],
      ],
      /must stand once, got two/,
    ],
    [
      [
        ["a", "b", 0.9],
        ["b", "c", 0.9],
        ["a", "c", -0.9],
      ],
      /correlated: the correlations of a, b, c contradict each other/,
    ],
    [
      [
        ["a", "b", 1],
        ["b", "c", 1],
      ],
      /contradict each other/,
    ],
  ] as const)("rejects %j", (pairs, message) => {
    expect(() => correlated(inputs, pairs)).toThrow(message);
  });

  it("rejects what is not measured", () => {
    expect(() => correlated({ a: 3 as never }, [])).toThrow(/correlated: a must be a measured value, got 3/);
  });
});

describe("choleskyFactor(matrix)", () => {
  it.each([
    [[[1]]],
    [
      [
        [1, -0.3],
        [-0.3, 1],
      ],
    ],
    [
      [
        [1, 1, 0.2],
        [1, 1, 0.2],
        [0.2, 0.2, 1],
      ],
    ],
  ])("gives back %j as L times its transpose", (matrix) => {
    const names = matrix.map((_, i) => `x${i}`);
    const l = choleskyFactor("test", names, matrix);
    for (const [i, row] of matrix.entries())
      for (const [j, value] of row.entries()) {
        const sum = l[i]!.reduce((total, entry, k) => total + entry * l[j]![k]!, 0);
        expectClose(sum, value, rounding);
      }
  });
});
