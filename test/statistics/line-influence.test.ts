import { describe, expect, it } from "vitest";
import { fitLine, lineInfluence, predictLine } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const quartet = readReference("anscombe-quartet");
const x = quartet.numbers("x123");
const y3 = quartet.numbers("y3");
const sum = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0);

describe("lineInfluence(x, y)", () => {
  // Source: Anscombe (1973), sets 3 and 4; residual sums of squares as R prints them: test/reference/anscombe-quartet.csv.
  it("points at the one reading off the line of Anscombe's third set", () => {
    const { fit, points, mostInfluential } = lineInfluence(x, y3);
    expectClose(fit.residualStandardDeviation! ** 2 * 9, 13.756, {
      abs: 5.01e-4,
      because: "3 printed decimals",
    });
    expect(mostInfluential).toBe(2);
    const worst = points[2]!;
    // R's rstudent, cooks.distance and hatvalues of this reading (from memory).
    expectClose(worst.deletionResidual!, 1203.54, { rel: 5e-6, because: "6 printed digits" });
    expectClose(worst.cookDistance!, 1.3928, { abs: 5.01e-5, because: "4 printed decimals" });
    expectClose(worst.leverage, 1 / 11 + 16 / 110, { rel: 1e-14, because: "1/n + (x−x̄)²/Σ(x−x̄)²" });
    expectClose(worst.slopeWithout!, 0.346, {
      abs: 8e-4,
      because: "Anscombe prints 0.346; 0.3454 by the data",
    });
    for (const [i, { cookDistance }] of points.entries())
      if (i !== 2) expect(cookDistance!).toBeLessThan(0.4);
  });
  it("says of the lone far reading of the fourth set that nothing can be said", () => {
    const { points } = lineInfluence(quartet.numbers("x4"), quartet.numbers("y4"));
    expect(points[7]).toMatchObject({
      leverage: 1,
      deletionResidual: null,
      chance: null,
      cookDistance: null,
      slopeWithout: null,
    });
    for (const [i, { leverage }] of points.entries())
      if (i !== 7) expectClose(leverage, 0.1, { rel: 1e-13, because: "one of ten alike" });
  });
  it("is what refitting without each reading gives, for weights, known u and a given point", () => {
    const u = [0.3, 0.5, 0.2, 0.4, 0.6, 0.3, 0.5, 0.2, 0.4, 0.3, 0.5];
    const cases = [
      {},
      { u },
      { u, scaleByScatter: true },
      { u: 0.4 },
      { through: { x: 1, y: 2 } },
      { u, through: { x: 1, y: 2 } },
    ];
    for (const options of cases) {
      const { fit, points } = lineInfluence(x, y3, options);
      const parameters = options.through === undefined ? 2 : 1;
      expectClose(sum(points.map(({ leverage }) => leverage)), parameters, {
        rel: 1e-12,
        because: "trace of the hat matrix",
      });
      const weights = u.map((v) => (options.u === undefined ? 1 : (options.u === u ? v : 0.4) ** -2));
      const variance = fit.scaled
        ? sum(fit.residuals.map((r, i) => weights[i]! * r * r)) / fit.degreesOfFreedom
        : 1;
      points.forEach((point, i) => {
        const without = <T>(v: readonly T[]): T[] => v.filter((_, j) => j !== i);
        const others = fitLine(without(x), without(y3), {
          ...options,
          ...(options.u === u ? { u: without(u) } : {}),
        });
        const because = "refitted";
        expectClose(point.slopeWithout!, others.slope, { rel: 1e-11, because });
        const at = predictLine(others, x[i]!);
        const left = fit.scaled
          ? sum(others.residuals.map((r, k) => without(weights)[k]! * r * r)) / others.degreesOfFreedom
          : 1;
        const own = Math.sqrt(left / weights[i]!);
        expectClose(point.deletionResidual!, (y3[i]! - at.value) / Math.hypot(own, at.standardUncertainty), {
          rel: 1e-6,
          because: "refitted; chi-square less that of one reading cancels, to 1e-7 for the outlier",
        });
        const shift = x.map(
          (v, j) => weights[j]! * (predictLine(fit, v).value - predictLine(others, v).value) ** 2,
        );
        expectClose(point.cookDistance!, sum(shift) / (parameters * variance), {
          rel: 1e-9,
          abs: 1e-14,
          because,
        });
      });
    }
  });
  it("gives no deletion residual where the others leave no scatter, and is frozen", () => {
    const three = lineInfluence([0, 1, 2], [0, 1, 2.5]);
    expect(three.points.map(({ deletionResidual }) => deletionResidual)).toEqual([null, null, null]);
    for (const { cookDistance } of three.points) expect(cookDistance).toBeGreaterThan(0);
    expect([three, three.points, three.points[0]].every(Object.isFrozen)).toBe(true);
  });
  it("rejects what fitLine rejects", () => {
    expect(() => lineInfluence([0, 1], [0, 1])).toThrow(/needs at least 3 values, got 2/);
  });
});
