import fc from "fast-check";
import { linearRegression } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { fitLine, inverseLine, predictLine } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const xy = (name: string): { x: number[]; y: number[] } => {
  const table = readReference(name);
  return { x: table.numbers("x"), y: table.numbers("y") };
};

describe("fitLine(x, y)", () => {
  // Source: NIST StRD, Norris; test/reference/nist-norris.csv.
  it("returns NIST's certified values of Norris to 13 digits", () => {
    const { x, y } = xy("nist-norris");
    const fit = fitLine(x, y);
    const because = "15 certified digits; largest error measured 4.7e-14, of the intercept";
    expectClose(fit.intercept, -0.262323073774029, { rel: 1e-13, because });
    expectClose(fit.slope, 1.00211681802045, { rel: 1e-14, because });
    expectClose(fit.uIntercept, 0.232818234301152, { rel: 3e-14, because });
    expectClose(fit.uSlope, 0.429796848199937e-3, { rel: 3e-14, because });
    expectClose(fit.residualStandardDeviation!, 0.884796396144373, { rel: 3e-14, because });
    expect(fit.degreesOfFreedom).toBe(34);
    expect(fit.scaled).toBe(true);
    expect(fit.chiSquare).toBe(null);
  });
  // Source: NIST StRD, NoInt1 and NoInt2, model y = B1 x.
  it("returns NIST's certified values of NoInt1 and NoInt2 through the origin", () => {
    const certified = {
      "nist-noint1": [2.07438016528926, 0.0165289256198347, 3.56753034006338, 10],
      "nist-noint2": [0.727272727272727, 0.0420827318078432, 0.369274472937998, 2],
    } as const;
    for (const [name, [slope, uSlope, sd, dof]] of Object.entries(certified)) {
      const { x, y } = xy(name);
      const fit = fitLine(x, y, { through: { x: 0, y: 0 } });
      const because = "15 certified digits";
      expectClose(fit.slope, slope, { rel: 2e-15, because });
      expectClose(fit.uSlope, uSlope, { rel: 2e-14, because });
      expectClose(fit.residualStandardDeviation!, sd, { rel: 2e-14, because });
      expect(fit.degreesOfFreedom).toBe(dof);
      expect(fit.intercept).toBe(0);
      expect(fit.uIntercept).toBe(0);
    }
  });
  // Source: ISO/TS 28037:2010, annex E, pp 58-59: unknown common uncertainty; printed to 3 decimals.
  it("returns the printed line and uncertainties of ISO/TS 28037 annex E", () => {
    const { x, y } = xy("iso28037-ex4-unknown-scale");
    const fit = fitLine(x, y);
    const tolerance = { abs: 5.01e-4, because: "3 printed decimals" };
    expectClose(fit.intercept, 1.172, tolerance);
    expectClose(fit.uIntercept, 0.159, tolerance);
    expectClose(fit.slope, 1.964, tolerance);
    expectClose(fit.uSlope, 0.041, tolerance);
    expectClose(fit.covariance, -0.006, tolerance);
  });
  it("agrees with the reference library on Norris", () => {
    const { x, y } = xy("nist-norris");
    const reference = linearRegression(x.map((v, i) => [v, y[i]!]));
    expectClose(fitLine(x, y).slope, reference.m, { rel: 1e-13, because: "both centred or nearly so" });
  });
  it("keeps its digits when x and y stand far off", () => {
    const { x, y } = xy("nist-norris");
    const whole = x.map((v) => Math.round(v * 10)); // whole numbers, so that the offset itself rounds nothing
    const heights = y.map((v) => Math.round(v * 10));
    const near = fitLine(whole, heights);
    const far = fitLine(
      whole.map((v) => v + 1e10),
      heights.map((v) => v - 1e10),
    );
    expectClose(far.slope, near.slope, { rel: 1e-14, because: "offsets of 1e10 are exact in whole numbers" });
    expectClose(far.uSlope, near.uSlope, {
      rel: 1e-7,
      because: "residuals of size 10 about heights of 1e10 hold 9 digits",
    });
  });
  it("refuses what leaves the slope or the scatter undefined", () => {
    expect(() => fitLine([2], [1])).toThrow("fitLine: x needs at least 3 values, got 1");
    expect(() => fitLine([1, 2], [1, 2])).toThrow("fitLine: x needs at least 3 values, got 2");
    expect(() => fitLine([2, 2, 2], [1, 2, 3])).toThrow(
      "fitLine: x must take at least two different values, got 2 for all of them",
    );
    expect(() => fitLine([1, 1, 1], [1, 2, 3], { through: { x: 1, y: 0 } })).toThrow(
      /some x must differ from through.x/,
    );
    expect(() => fitLine([1, 2, 3], [1, Number.NaN, 3])).toThrow(
      "fitLine: y[1] must be a finite number, got NaN",
    );
    expect(() => fitLine([1, 2, 3], [1, 2, 3, 4])).toThrow(
      "fitLine: x and y must be equally long, got 3 and 4",
    );
    expect(() => fitLine([1, 2, 3], [1, 2, 3], { u: [1, 0, 1] })).toThrow(
      "fitLine: u[1] must be greater than 0, got 0",
    );
    expect(() => fitLine([1, 2, 3], [1, 2, 3], { u: [1, 1] })).toThrow(
      /u must have one value a reading \(3\), got 2/,
    );
    expect(() => fitLine([1, 2, 3], [1, 2, 3], { through: { x: Number.NaN, y: 0 } })).toThrow(/through.x/);
  });
});

describe("fitLine(x, y, { u })", () => {
  // Source: ISO/TS 28037:2010, clause 6.3, p 13 (equal) and pp 14-15 (unequal weights); printed to 3 decimals.
  const printed = {
    "iso28037-ex1-equal-weights": { a: [1.867, 0.465], b: [1.757, 0.12], cov: -0.05, chi: 1.665 },
    "iso28037-ex2-unequal-weights": { a: [0.885, 0.53], b: [2.057, 0.178], cov: -0.082, chi: 4.131 },
  } as const;
  for (const [name, { a, b, cov, chi }] of Object.entries(printed)) {
    it(`returns the printed line, uncertainties and chi-square of ${name}`, () => {
      const { x, y } = xy(name);
      const fit = fitLine(x, y, { u: readReference(name).numbers("uy") });
      const tolerance = { abs: 5.01e-4, because: "3 printed decimals" };
      expectClose(fit.intercept, a[0], tolerance);
      expectClose(fit.uIntercept, a[1], tolerance);
      expectClose(fit.slope, b[0], tolerance);
      expectClose(fit.uSlope, b[1], tolerance);
      expectClose(fit.covariance, cov, tolerance);
      expectClose(fit.chiSquare!, chi, tolerance);
      expect(fit.degreesOfFreedom).toBe(4);
      expect(fit.scaled).toBe(false);
      expect(fit.method).toBe("weighted");
    });
  }
  it("is exact where the numbers are: 28/15 and 123/70 for equal weights", () => {
    const { x, y } = xy("iso28037-ex1-equal-weights");
    const fit = fitLine(x, y, { u: 0.5 });
    expectClose(fit.intercept, 28 / 15, { rel: 2e-15, because: "worked in fractions" });
    expectClose(fit.slope, 123 / 70, { rel: 1e-15, because: "worked in fractions" });
    expectClose(fit.uSlope, 0.5 / Math.sqrt(17.5), { rel: 1e-15, because: "closed form" });
    expect(fit.method).toBe("ordinary");
  });
  it("counts a reading of half the uncertainty as four", () => {
    const once = fitLine([0, 1, 2, 3], [0, 1.2, 1.9, 3.3], { u: [1, 0.5, 1, 1] });
    const four = fitLine([0, 1, 1, 1, 1, 2, 3], [0, 1.2, 1.2, 1.2, 1.2, 1.9, 3.3], { u: 1 });
    expectClose(once.slope, four.slope, { rel: 1e-14, because: "weight 1/u²" });
    expectClose(once.uIntercept, four.uIntercept, { rel: 1e-14, because: "weight 1/u²" });
  });
  it("scales by the scatter on request, and then only ratios of u count", () => {
    const { x, y } = xy("iso28037-ex2-unequal-weights");
    const u = readReference("iso28037-ex2-unequal-weights").numbers("uy");
    const fit = fitLine(x, y, { u, scaleByScatter: true });
    const ten = fitLine(x, y, { u: u.map((v) => 10 * v), scaleByScatter: true });
    expectClose(fit.uSlope, ten.uSlope, { rel: 1e-14, because: "common factor cancels" });
    const plain = fitLine(x, y, { u });
    expectClose(fit.uSlope, plain.uSlope * plain.noiseRatio!, {
      rel: 1e-14,
      because: "scale is the noise ratio",
    });
  });
  it("takes two points where u is known, and one through a given point", () => {
    const two = fitLine([0, 2], [1, 5], { u: 0.1 });
    expect([two.slope, two.intercept, two.degreesOfFreedom, two.chiSquareProbability]).toEqual([
      2,
      1,
      0,
      null,
    ]);
    expectClose(two.uSlope, 0.1 / Math.SQRT2, { rel: 1e-15, because: "closed form" });
    const one = fitLine([4], [8], { u: 0.2, through: { x: 0, y: 0 } });
    expect([one.slope, one.degreesOfFreedom]).toEqual([2, 0]);
    expectClose(one.uSlope, 0.05, { rel: 1e-15, because: "u/x" });
  });
  it("passes exactly through the point it is given, with no uncertainty there", () => {
    const fit = fitLine([1, 2, 3], [5, 7.1, 8.8], { through: { x: 10, y: 20 } });
    expect(predictLine(fit, 10)).toEqual({ value: 20, standardUncertainty: 0 });
  });
  it("changes nothing but units under shift, scale and order of rows", () => {
    const row = fc.record({
      x: fc.integer({ min: -1000, max: 1000 }),
      y: fc.integer({ min: -1000, max: 1000 }),
      u: fc.integer({ min: 1, max: 20 }),
    });
    const rows = fc
      .uniqueArray(row, { minLength: 4, maxLength: 20, selector: (r) => r.x })
      .chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })));
    fc.assert(
      fc.property(rows, fc.integer({ min: -50, max: 50 }), ([list, shuffled], shift) => {
        const pick = (from: typeof list, key: "x" | "y" | "u"): number[] => from.map((r) => r[key]);
        const fit = fitLine(pick(list, "x"), pick(list, "y"), { u: pick(list, "u") });
        const because = "the same sums in other units";
        const mixed = fitLine(pick(shuffled, "x"), pick(shuffled, "y"), { u: pick(shuffled, "u") });
        expectClose(mixed.slope, fit.slope, { rel: 1e-12, abs: 1e-14, because });
        expectClose(mixed.uIntercept, fit.uIntercept, { rel: 1e-12, because });
        const moved = fitLine(
          pick(list, "x").map((v) => 25.4 * (v + shift)),
          pick(list, "y").map((v) => 0.001 * (v - shift)),
          { u: pick(list, "u").map((v) => 0.001 * v) },
        );
        expectClose(moved.slope, (fit.slope * 0.001) / 25.4, { rel: 1e-10, abs: 1e-16, because });
        expectClose(moved.uSlope, (fit.uSlope * 0.001) / 25.4, { rel: 1e-11, because });
        expectClose(moved.chiSquare!, fit.chiSquare!, { rel: 1e-9, abs: 1e-9, because });
      }),
      { seed: 31, numRuns: 100 },
    );
  });
});

describe("predictLine(fit, x) and inverseLine(fit, y)", () => {
  // Source: ISO/TS 28037:2010, clause 11 on the two examples of clause 6.3; printed to 3 decimals.
  const tolerance = { abs: 5.01e-4, because: "3 printed decimals" };
  it("return the printed forward and inverse evaluations", () => {
    const equal = xy("iso28037-ex1-equal-weights");
    const first = fitLine(equal.x, equal.y, { u: 0.5 });
    const inverse = inverseLine(first, 10.5, { uy: 0.5 });
    expectClose(inverse.value, 4.913, tolerance);
    expectClose(inverse.standardUncertainty, 0.322, tolerance);
    const forward = predictLine(first, 3.5, { ux: 0.2 });
    expectClose(forward.value, 8.017, tolerance);
    expectClose(forward.standardUncertainty, 0.406, tolerance);
    const unequal = xy("iso28037-ex2-unequal-weights");
    const second = fitLine(unequal.x, unequal.y, {
      u: readReference("iso28037-ex2-unequal-weights").numbers("uy"),
    });
    const inverse2 = inverseLine(second, 10.5, { uy: 1 });
    expectClose(inverse2.value, 4.674, tolerance);
    expectClose(inverse2.standardUncertainty, 0.533, tolerance);
  });
  it("agree with the covariance form, and undo each other", () => {
    const fit = fitLine([1, 2, 4, 7], [2, 2.9, 5.2, 8.1], { u: [0.1, 0.2, 0.1, 0.3] });
    const at = predictLine(fit, 5);
    const variance = fit.uIntercept ** 2 + 25 * fit.uSlope ** 2 + 10 * fit.covariance;
    expectClose(at.standardUncertainty, Math.sqrt(variance), {
      rel: 1e-12,
      because: "same variance, other form",
    });
    expectClose(inverseLine(fit, at.value).value, 5, { rel: 1e-14, because: "inverse" });
  });
  it("reject a level line, and an uncertainty below 0", () => {
    const level = fitLine([0, 1, 2], [3, 3, 3], { u: 1 });
    expect(() => inverseLine(level, 3)).toThrow(/inverseLine: the line must not be level/);
    expect(() => predictLine(level, 1, { ux: -1 })).toThrow(
      "predictLine: ux must be 0 or greater and finite, got -1",
    );
    expect(() => predictLine(level, Number.NaN)).toThrow(/predictLine: x must be a finite number/);
  });
});
