import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitLine, leastSquares } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

/** The certified figures of a NIST header: "B3=-2.02 sd 0.48; ...". */
function certified(header: readonly string[], name: string): { value: number; sd: number } {
  const number = "(-?[0-9.]+(?:E[-+][0-9]+)?)";
  const found = new RegExp(`${name}[= ]${number}(?: sd ${number})?`).exec(header.join(" "));
  if (found === null) throw new Error(`no certified ${name}`);
  return { value: Number(found[1]), sd: Number(found[2]) };
}

describe("leastSquares(design, y)", () => {
  // Source: NIST StRD, Longley (higher difficulty); test/reference/nist-longley.csv.
  it("returns NIST's certified values of Longley to 12 digits", () => {
    const longley = readReference("nist-longley");
    const columns = ["x1", "x2", "x3", "x4", "x5", "x6"].map((name) => longley.numbers(name));
    const y = longley.numbers("y");
    const fit = leastSquares(
      y.map((_, i) => [1, ...columns.map((column) => column[i]!)]),
      y,
    );
    fit.coefficients.forEach((b, j) => {
      const expected = certified(longley.header, `B${j}`);
      expectClose(b, expected.value, { rel: 2e-12, because: "largest error measured 1.1e-12" });
      expectClose(fit.standardUncertainties[j]!, expected.sd, {
        rel: 5e-13,
        because: "largest error measured 2.2e-13",
      });
    });
    expectClose(fit.residualStandardDeviation!, 304.854073561965, {
      rel: 2e-13,
      because: "15 certified digits; error measured 9e-14",
    });
    expectClose(fit.rSquared!, certified(longley.header, "R2").value, {
      rel: 1e-14,
      because: "15 certified digits",
    });
    expect(fit.rSquaredAbout).toBe("mean");
    expect(fit.degreesOfFreedom).toBe(9);
  });
  // Source: NIST StRD, NoInt1 and NoInt2: no constant column, R² about zero.
  it("names its R² about zero where no column is constant", () => {
    const noint = readReference("nist-noint1");
    const fit = leastSquares(
      noint.numbers("x").map((x) => [x]),
      noint.numbers("y"),
    );
    expect(fit.rSquaredAbout).toBe("zero");
    expectClose(fit.rSquared!, 0.999365492298663, { rel: 2e-15, because: "15 certified digits" });
    expectClose(fit.coefficients[0]!, 2.07438016528926, { rel: 2e-15, because: "15 certified digits" });
    expectClose(fit.standardUncertainties[0]!, 0.0165289256198347, {
      rel: 1e-14,
      because: "15 certified digits",
    });
  });
  it("agrees with the closed form of a weighted straight line, covariance included", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            y: fc.double({ min: -10, max: 10, noNaN: true }),
            u: fc.double({ min: 0.1, max: 3, noNaN: true }),
          }),
          { minLength: 3, maxLength: 12 },
        ),
        (rows) => {
          const x = rows.map((_, i) => i * 1.5 - 2);
          const y = rows.map((row) => row.y);
          const u = rows.map((row) => row.u);
          const line = fitLine(x, y, { u });
          const fit = leastSquares(
            x.map((v) => [1, v]),
            y,
            { weights: u.map((v) => 1 / v ** 2), knownUncertainty: true },
          );
          const because = "two ways to the same sums";
          expectClose(fit.coefficients[1]!, line.slope, { rel: 1e-11, abs: 1e-12, because });
          expectClose(fit.coefficients[0]!, line.intercept, { rel: 1e-11, abs: 1e-11, because });
          expectClose(fit.covariance[0]![0]!, line.uIntercept ** 2, { rel: 1e-11, because });
          expectClose(fit.covariance[1]![1]!, line.uSlope ** 2, { rel: 1e-11, because });
          expectClose(fit.covariance[0]![1]!, line.covariance, { rel: 1e-11, abs: 1e-14, because });
          expectClose(fit.residualSumOfSquares, line.chiSquare!, { rel: 1e-11, abs: 1e-12, because });
          expect(fit.scaled).toBe(false);
        },
      ),
      { seed: 21, numRuns: 100 },
    );
  });
  it("scales with the weights only where the uncertainty is unknown", () => {
    const design = [0, 1, 2, 3].map((x) => [1, x]);
    const y = [1, 3.2, 4.9, 7.1];
    const once = leastSquares(design, y, { weights: [1, 2, 2, 1] });
    const tenfold = leastSquares(design, y, { weights: [10, 20, 20, 10] });
    expectClose(tenfold.standardUncertainties[1]!, once.standardUncertainties[1]!, {
      rel: 1e-14,
      because: "only ratios of weights count",
    });
    const known = leastSquares(design, y, { weights: [1, 2, 2, 1], knownUncertainty: true });
    const ten = leastSquares(design, y, { weights: [10, 20, 20, 10], knownUncertainty: true });
    expectClose(ten.standardUncertainties[1]!, known.standardUncertainties[1]! / Math.sqrt(10), {
      rel: 1e-14,
      because: "weights are 1/u²",
    });
  });
  it("leaves its inputs alone and gives a frozen result", () => {
    const design = Object.freeze([Object.freeze([1, 0]), Object.freeze([1, 1]), Object.freeze([1, 2])]);
    const fit = leastSquares(design, Object.freeze([1, 3, 5.3]));
    expect(Object.isFrozen(fit) && Object.isFrozen(fit.covariance[0])).toBe(true);
    expectClose(fit.coefficients[0]!, 0.95, { rel: 1e-14, because: "worked by hand" });
    expectClose(fit.coefficients[1]!, 2.15, { rel: 1e-14, because: "worked by hand" });
  });
  it("rejects a column that is a sum of others, and rows that do not fit", () => {
    expect(() =>
      leastSquares(
        [
          [1, 2, 3],
          [1, 3, 4],
          [1, 5, 6],
          [1, 7, 8],
        ],
        [1, 2, 3, 4],
      ),
    ).toThrow(/leastSquares: no column of design may be a sum of the others, got column 2/);
    expect(() => leastSquares([[1], [1, 2]], [1, 2])).toThrow(/design\[1\] must have 1 columns, got 2/);
    expect(() => leastSquares([[1], [Number.NaN]], [1, 2])).toThrow(
      /design\[1\]\[0\] must be a finite number, got NaN/,
    );
    expect(() =>
      leastSquares(
        [
          [1, 0],
          [1, 1],
        ],
        [1, 2],
      ),
    ).toThrow(/y needs at least 3 values, got 2/);
    expect(() => leastSquares([[1], [1]], [1, 2], { weights: [1, 0] })).toThrow(
      /weights\[1\] must be greater than 0, got 0/,
    );
    expect(() => leastSquares([[1], [1]], [1, 2], { knownUncertainty: true })).toThrow(
      /knownUncertainty needs weights/,
    );
    expect(() => leastSquares([[0], [0]], [1, 2])).toThrow(/column 0 of design must not be all 0/);
  });
});
