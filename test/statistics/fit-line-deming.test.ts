import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fitLine,
  fitLineBothErrors,
  fitLineDeming,
  fitLineOrthogonal,
  type LineFit,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const pearson = readReference("pearson-york");
const x = pearson.numbers("x");
const y = pearson.numbers("y");
const numbers = ["slope", "intercept", "uSlope", "uIntercept", "covariance", "uCentre"] as const;

function expectSame(a: LineFit, b: LineFit, rel: number, because: string): void {
  for (const key of numbers) expectClose(a[key], b[key], { rel, because });
}

describe("fitLineOrthogonal(x, y)", () => {
  // Source: Pearson (1901), the same points; orthogonal line recomputed independently to 7 digits (Pearson prints 4).
  it("returns the orthogonal line of Pearson's points", () => {
    const fit = fitLineOrthogonal(x, y);
    expectClose(fit.intercept, 5.784044, { abs: 5.01e-7, because: "6 decimals" });
    expectClose(fit.slope, -0.545561, { abs: 5.01e-7, because: "6 decimals" });
    expect([fit.method, fit.scaled, fit.chiSquare, fit.degreesOfFreedom]).toEqual([
      "orthogonal",
      true,
      null,
      8,
    ]);
  });
  it("does not depend on which is called x, and turns with the points", () => {
    const swapped = fitLineOrthogonal(y, x);
    expectClose(swapped.slope * fitLineOrthogonal(x, y).slope, 1, { rel: 1e-14, because: "the same line" });
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    const turned = fitLineOrthogonal(
      x.map((v, i) => c * v - s * y[i]!),
      y.map((v, i) => s * x[i]! + c * v),
    );
    const angle = Math.atan(fitLineOrthogonal(x, y).slope) + 0.7;
    expectClose(turned.slope, Math.tan(angle), { rel: 1e-13, because: "the same line turned by 0.7 rad" });
  });
  it("has the distances square to the line as its chi-square", () => {
    const fit = fitLineOrthogonal(x, y, { u: 0.3 });
    const squares = x.map((v, i) => (y[i]! - fit.intercept - fit.slope * v) ** 2 / (1 + fit.slope ** 2));
    expectClose(fit.chiSquare!, squares.reduce((a, b) => a + b, 0) / 0.09, {
      rel: 1e-13,
      because: "geometry",
    });
  });
});

describe("fitLineDeming(x, y, { ratio })", () => {
  // Source: lines of y on x and of x on y of the same points, recomputed independently to 7 digits.
  it("goes to the line of y on x for large, and of x on y for small ratios", () => {
    const six = { abs: 5.01e-7, because: "6 decimals" };
    const upright = fitLineDeming(x, y, { ratio: 1e12 });
    expectClose(upright.slope, -0.539577, six);
    expectClose(upright.intercept, 5.761185, six);
    const level = fitLineDeming(x, y, { ratio: 1e-12 });
    expectClose(level.slope, -0.565889, six);
    expectClose(level.intercept, 5.861696, six);
    const ordinary = fitLine(x, y);
    expectSame(upright, ordinary, 1e-10, "limit of a large ratio: uncertainties too");
  });
  it("is fitLineBothErrors of equal points in closed form, uncertainties included", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.boolean(), (ratio, known) => {
        const ux = 0.2;
        const uy = ux * Math.sqrt(ratio);
        const york = fitLineBothErrors(x, y, { ux, uy, scaleByScatter: !known });
        const deming = fitLineDeming(x, y, known ? { ratio, ux } : { ratio });
        expectSame(deming, york, 1e-11, "the same minimum by iteration");
        if (known)
          expectClose(deming.chiSquare!, york.chiSquare!, { rel: 1e-11, because: "the same minimum" });
      }),
      { seed: 61, numRuns: 60 },
    );
  });
  it("is unmoved by units: the ratio scales with them", () => {
    const fit = fitLineDeming(x, y, { ratio: 2 });
    const other = fitLineDeming(
      x.map((v) => 25.4 * v + 1e4),
      y.map((v) => 1e-3 * v),
      { ratio: 2 * (1e-3 / 25.4) ** 2 },
    );
    expectClose(other.slope, (fit.slope * 1e-3) / 25.4, { rel: 1e-11, because: "offset 1e4 costs digits" });
    expectClose(other.uSlope, (fit.uSlope * 1e-3) / 25.4, { rel: 1e-10, because: "offset 1e4 costs digits" });
  });
  it("keeps its digits on a nearly level and a nearly upright line", () => {
    const xs = [0, 1, 2, 3];
    // u is stated, for points exactly on a line tell none.
    const flat = fitLineDeming(xs, [0, 1e-9, 2e-9, 3e-9], { ratio: 1, ux: 1e-9 });
    expectClose(flat.slope, 1e-9, { rel: 1e-14, because: "exact points" });
    const steep = fitLineDeming(
      xs,
      xs.map((v) => 1e9 * v),
      { ratio: 1, ux: 1e-9 },
    );
    expectClose(steep.slope, 1e9, { rel: 1e-14, because: "exact points" });
    expect(fitLineDeming([-1, 0, 1], [1, -2, 1], { ratio: 9 }).slope).toBe(0);
  });
  it("rejects what has no one line", () => {
    const square = [
      [1, 1, -1, -1],
      [1, -1, 1, -1],
    ] as const;
    expect(() => fitLineOrthogonal(...square)).toThrow(
      "fitLineOrthogonal: the points must have one direction, got points that lie along y or scatter alike in all directions",
    );
    expect(() => fitLineDeming([0, 1], [0, 1], { ratio: 1 })).toThrow(/x needs at least 3 values, got 2/);
    expect(() => fitLineDeming([1, 1, 1], [0, 1, 2], { ratio: 1 })).toThrow(/at least two different values/);
    expect(() => fitLineDeming(x, y, { ratio: 0 })).toThrow(/ratio must be greater than 0, got 0/);
    expect(() => fitLineDeming(x, y, { ratio: 1, ux: -1 })).toThrow(/ux must be greater than 0, got -1/);
    expect(() => fitLineOrthogonal(x, y, { u: 0 })).toThrow(
      /fitLineOrthogonal: u must be greater than 0, got 0/,
    );
  });
});
