import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitLine, fitLineBothErrors } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const pearson = readReference("pearson-york");
const x = pearson.numbers("x");
const y = pearson.numbers("y");
const ux = pearson.numbers("wx").map((w) => 1 / Math.sqrt(w));
const uy = pearson.numbers("wy").map((w) => 1 / Math.sqrt(w));

describe("fitLineBothErrors(x, y, { ux, uy })", () => {
  // Source: Pearson (1901) data, York (1966) weights; line as published by several authors, standard errors by the
  // formulae of York et al. (2004); test/reference/pearson-york.csv.
  it("returns the published line of Pearson's data with York's weights", () => {
    const fit = fitLineBothErrors(x, y, { ux, uy });
    expectClose(fit.intercept, 5.47991022403, { rel: 1e-11, because: "12 published digits" });
    expectClose(fit.slope, -0.48053340745, { rel: 1.1e-11, because: "11 published digits" });
    expectClose(fit.uIntercept, 0.294970735, { rel: 2e-9, because: "9 published digits" });
    expectClose(fit.uSlope, 0.057985009, { rel: 2e-9, because: "9 published digits" });
    expectClose(fit.chiSquare! / fit.degreesOfFreedom, 1.48329414926, {
      rel: 1e-11,
      because: "12 published digits",
    });
    expectClose(fit.covariance, -0.01651, {
      abs: 5.01e-5,
      because: "4 published digits; another author prints -0.01647",
    });
    expect(fit.method).toBe("errors in both");
  });
  // Source: orthogonal line of the same points, Deming's closed form with equal variances.
  it("is Deming's closed form where all errors are alike", () => {
    const fit = fitLineBothErrors(x, y, { ux: 1, uy: 1 });
    const mean = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0) / v.length;
    const sum = (a: readonly number[], b: readonly number[]): number =>
      a.reduce((s, v, i) => s + (v - mean(a)) * (b[i]! - mean(b)), 0);
    const difference = sum(y, y) - sum(x, x);
    const closed = (difference + Math.hypot(difference, 2 * sum(x, y))) / (2 * sum(x, y));
    expectClose(fit.slope, closed, { rel: 1e-13, because: "closed form" });
    expectClose(fit.slope, -0.545561, { abs: 5.01e-7, because: "6 printed decimals" });
    expectClose(fit.intercept, 5.784044, { abs: 5.01e-7, because: "6 printed decimals" });
  });
  it("becomes the weighted line when x is exact, uncertainties included", () => {
    const both = fitLineBothErrors(x, y, { ux: 0, uy });
    const weighted = fitLine(x, y, { u: uy });
    for (const key of ["slope", "intercept", "uSlope", "uIntercept", "covariance", "chiSquare"] as const) {
      expectClose(both[key]!, weighted[key]!, { rel: 1e-12, because: "the same sums" });
    }
    const nearly = fitLineBothErrors(x, y, { ux: 1e-7, uy });
    expectClose(nearly.slope, weighted.slope, { rel: 1e-9, because: "limit ux → 0" });
  });
  it("becomes the line of x on y when y is exact", () => {
    const both = fitLineBothErrors(x, y, { ux, uy: 0 });
    const inverse = fitLine(y, x, { u: ux });
    expectClose(both.slope, 1 / inverse.slope, { rel: 1e-12, because: "limit uy → 0" });
    expectClose(both.chiSquare!, inverse.chiSquare!, { rel: 1e-11, because: "the same distances" });
  });
  it("gives the reciprocal line when x and y change places, correlation included", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            e: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
            ux: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
            uy: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
            r: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
          }),
          { minLength: 5, maxLength: 15 },
        ),
        (rows) => {
          const xs = rows.map((row, i) => i + row.e);
          const ys = rows.map((row, i) => 3 + 0.7 * i - row.e * row.r);
          const u = {
            ux: rows.map((row) => row.ux),
            uy: rows.map((row) => row.uy),
            correlation: rows.map((row) => row.r),
          };
          const fit = fitLineBothErrors(xs, ys, u);
          const swapped = fitLineBothErrors(ys, xs, { ux: u.uy, uy: u.ux, correlation: u.correlation });
          expectClose(swapped.slope, 1 / fit.slope, { rel: 1e-10, because: "both settle to 1e-14 a step" });
          expectClose(swapped.intercept, -fit.intercept / fit.slope, {
            rel: 1e-9,
            abs: 1e-10,
            because: "same line",
          });
          expectClose(swapped.chiSquare!, fit.chiSquare!, {
            rel: 1e-8,
            abs: 1e-10,
            because: "same distances",
          });
        },
      ),
      { seed: 41, numRuns: 100 },
    );
  });
  it("stands at the least: no neighbouring line has a smaller chi-square", () => {
    const fit = fitLineBothErrors(x, y, { ux, uy, correlation: 0.3 });
    const chi = (a: number, b: number): number =>
      x.reduce((s, v, i) => {
        const variance = uy[i]! ** 2 + (b * ux[i]!) ** 2 - 2 * b * 0.3 * ux[i]! * uy[i]!;
        return s + (y[i]! - a - b * v) ** 2 / variance;
      }, 0);
    expectClose(chi(fit.intercept, fit.slope), fit.chiSquare!, { rel: 1e-12, because: "same sum" });
    // York's weights are held while the slope is sought, which leaves the least to within its own second order.
    for (const db of [-0.01, 0.01])
      expect(chi(fit.intercept - db * fit.centre.x, fit.slope + db)).toBeGreaterThan(fit.chiSquare!);
    for (const da of [-0.01, 0.01])
      expect(chi(fit.intercept + da, fit.slope)).toBeGreaterThan(fit.chiSquare!);
  });
  it("changes nothing but units under shift, scale and order of rows", () => {
    const fit = fitLineBothErrors(x, y, { ux, uy });
    const order = [3, 1, 4, 0, 9, 5, 2, 6, 8, 7];
    const pick = (v: readonly number[]): number[] => order.map((i) => v[i]!);
    const mixed = fitLineBothErrors(pick(x), pick(y), { ux: pick(ux), uy: pick(uy) });
    expectClose(mixed.slope, fit.slope, { rel: 1e-13, because: "order of rows" });
    const moved = fitLineBothErrors(
      x.map((v) => 25.4 * v + 1000),
      y.map((v) => v / 1000),
      { ux: ux.map((v) => 25.4 * v), uy: uy.map((v) => v / 1000) },
    );
    expectClose(moved.slope, fit.slope / 25400, { rel: 1e-11, because: "units" });
    expectClose(moved.uSlope, fit.uSlope / 25400, { rel: 1e-10, because: "units" });
  });
  it("refuses what it cannot fit", () => {
    expect(() => fitLineBothErrors([1, 1], [1, 2], { ux: 1, uy: 1 })).toThrow(
      /x must take at least two different values/,
    );
    expect(() => fitLineBothErrors([1, 2], [1, 2], { ux: [0, 1], uy: [0, 1] })).toThrow(
      "fitLineBothErrors: ux[0] or uy[0] must be greater than 0, got 0 for both",
    );
    expect(() => fitLineBothErrors([1, 2], [1, 2], { ux: -1, uy: 1 })).toThrow(
      /ux must be 0 or greater, got -1/,
    );
    expect(() => fitLineBothErrors([1, 2], [1, 2], { ux: 1, uy: 1, correlation: 1 })).toThrow(
      "fitLineBothErrors: correlation[0] must lie between -1 and 1, got 1",
    );
    expect(() => fitLineBothErrors([1], [1], { ux: 1, uy: 1 })).toThrow(/x needs at least 2 values, got 1/);
    expect(() => fitLineBothErrors([1, 2, 3], [4, 4, 4], { ux: 1, uy: 0 })).toThrow(/did not settle/);
  });
});
