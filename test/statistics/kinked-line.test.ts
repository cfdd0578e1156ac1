import { describe, expect, it } from "vitest";
import {
  fitLine,
  type KinkedLine,
  kinkedLine,
  leastSquares,
  repeatsTest,
} from "../../kernel-helpers/statistics/index.js";
import { searchKinked } from "../../kernel-helpers/statistics/kinked-search.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

/** Least criterion over every choice of knots at positions, each fitted by leastSquares in hat functions. */
function bruteForce(
  x: readonly number[],
  y: readonly number[],
  weights: readonly number[],
  knotCost: number,
  fewestSteps: number,
): number {
  const last = x.length - 1;
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 2 ** (last - 1); mask++) {
    const knots = [0];
    for (let i = 1; i < last; i++) if (mask & (1 << (i - 1))) knots.push(i);
    knots.push(last);
    if (knots.length > 2 && knots.some((k, i) => i > 0 && k - knots[i - 1]! < fewestSteps)) continue;
    const at = knots.map((k) => x[k]!);
    const hat = (v: number, j: number): number => {
      if (j > 0 && v >= at[j - 1]! && v <= at[j]!) return (v - at[j - 1]!) / (at[j]! - at[j - 1]!);
      if (j < at.length - 1 && v >= at[j]! && v <= at[j + 1]!)
        return (at[j + 1]! - v) / (at[j + 1]! - at[j]!);
      return 0;
    };
    const fit = leastSquares(
      x.map((v) => at.map((_, j) => hat(v, j))),
      y,
      { weights, knownUncertainty: true },
    );
    least = Math.min(least, fit.residualSumOfSquares + knotCost * (knots.length - 2));
  }
  return least;
}

/** Two lines that meet at 3.3, slopes 1 and 1 + change. */
function bent(n: number, change: number, noise: number, seed: number): { x: number[]; y: number[] } {
  const { normal } = seededNoise(seed);
  const x = Array.from({ length: n }, (_, i) => (8 * i) / (n - 1));
  return { x, y: x.map((v) => 2 + v + change * Math.max(0, v - 3.3) + noise * normal()) };
}

describe("kinkedLine(positions, values, { u })", () => {
  // Source: posterior means printed for these data and flat priors in the guide of SAS/STAT, example "Change Point
  // Models" of the procedure MCMC (from memory): kink 0.0283 ± 0.0314, height there 0.5349 ± 0.0249, slopes −0.4200 ±
  // 0.0146 and −1.0136 ± 0.0167, variance 0.000451.
  it("finds the published change of slope of the stagnant band, place and slopes with their uncertainties", () => {
    const table = readReference("stagnant");
    const fit = kinkedLine(table.numbers("flow"), table.numbers("height"), {
      u: Math.sqrt(0.000451),
      penalty: 20,
    });
    expect(fit.kinks.length).toBe(1);
    const because = "a posterior mean is not quite the best fit: a quarter of the standard deviation";
    expectClose(fit.kinks[0]!.position, 0.0283, { abs: 0.0314 / 4, because });
    expectClose(fit.pieces[0]!.end, 0.5349, { abs: 0.0249 / 4, because });
    expectClose(fit.pieces[0]!.slope, -0.42, { abs: 0.0146 / 4, because });
    expectClose(fit.pieces[1]!.slope, -1.0136, { abs: 0.0167 / 4, because });
    const rough = "the posterior also doubts which side a reading lies on: up to a fifth more";
    expectClose(fit.kinks[0]!.uPosition, 0.0314, {
      rel: 0.2,
      because: "the farther side of a lop-sided profile; measured 14 % more",
    });
    expectClose(fit.pieces[0]!.uSlope, 0.0146, { rel: 0.2, because: rough });
    expectClose(fit.pieces[1]!.uSlope, 0.0167, { rel: 0.2, because: rough });
    // For a flat prior of the variance its mean is S/(n − 4 − 4), S the least sum of squares.
    expectClose(fit.chiSquare, 21, {
      rel: 0.03,
      because: "the kink's place is not quite a linear parameter",
    });
  });

  it("searches exactly: least over every choice of kinks at positions, for weights, gaps and fewest steps of all kinds", () => {
    const { normal, uniform } = seededNoise(31);
    let kinked = 0;
    for (let run = 0; run < 400; run++) {
      const n = 3 + Math.floor(7 * uniform());
      let place = 0;
      const x = Array.from({ length: n }, () => (place += 0.3 + 3 * uniform()));
      const y = x.map(() => 3 * normal());
      const w = x.map(() => 0.5 + 3 * uniform());
      const cost = 0.05 + 4 * uniform() ** 2;
      const fewestSteps = 1 + Math.floor(2 * uniform());
      const [xs, ys, ws] = [x, y, w].map((list) => Float64Array.from(list)) as [
        Float64Array,
        Float64Array,
        Float64Array,
      ];
      const found = searchKinked(xs, ys, ws, cost, fewestSteps);
      expectClose(found.criterion, bruteForce(x, y, w, cost, fewestSteps), {
        rel: 1e-9,
        because: "rounding of parabolas",
      });
      if (found.knots.length > 2) kinked += 1;
    }
    expect(kinked).toBeGreaterThan(100);
  });

  it("without a kink is the straight line, with its uncertainty", () => {
    const { x, y } = bent(12, 0, 0.1, 4);
    const fit = kinkedLine(x, y, { u: 0.1 });
    const line = fitLine(x, y, { u: 0.1 });
    expect(fit.kinks).toEqual([]);
    expectClose(fit.pieces[0]!.slope, line.slope, { rel: 1e-12, because: "rounding" });
    expectClose(fit.pieces[0]!.uSlope, line.uSlope, { rel: 1e-12, because: "rounding" });
    expectClose(fit.pieces[0]!.start, line.intercept, { rel: 1e-12, because: "x starts at 0" });
    expectClose(fit.chiSquare, line.chiSquare!, { rel: 1e-12, because: "rounding" });
    expect(fit.degreesOfFreedom).toBe(10);
  });

  it("gives a kink between two positions back exactly, as one and not as two beside it", () => {
    const { x, y } = bent(9, -1, 0, 1);
    const fit = kinkedLine(x, y, { u: 1e-3 });
    expect(fit.kinks.length).toBe(1);
    expectClose(fit.kinks[0]!.position, 3.3, { rel: 1e-9, because: "no noise; Gauss–Newton to the end" });
    expectClose(fit.kinks[0]!.change, -1, { rel: 1e-9, because: "no noise" });
    expectClose(fit.pieces[1]!.end, 5.3, { rel: 1e-9, because: "level behind the kink" });
    // Where the two lines of the two sides meet, which is what a kink is.
    const noisy = bent(17, -1, 0.05, 6);
    const split = noisy.x.filter((v) => v < 3.3).length;
    const [one, two] = [
      fitLine(noisy.x.slice(0, split), noisy.y.slice(0, split), { u: 0.05 }),
      fitLine(noisy.x.slice(split), noisy.y.slice(split), { u: 0.05 }),
    ];
    const meet = (two.intercept - one.intercept) / (one.slope - two.slope);
    const found = kinkedLine(noisy.x, noisy.y, { u: 0.05 });
    expectClose(found.kinks[0]!.position, meet, {
      rel: 1e-7,
      because: "the sum of squares of the two sides is free",
    });
    expectClose(found.chiSquare, one.chiSquare! + two.chiSquare!, {
      rel: 1e-9,
      because: "the same two lines",
    });
    expectClose(found.pieces[1]!.uSlope, two.uSlope, { rel: 1e-6, because: "each side stands by itself" });
  });

  it("states a place that holds the true one in 95 of 100, and straight readings kinked in few", () => {
    const runs = 200;
    let held = 0;
    let slopeHeld = 0;
    let found = 0;
    let falseAlarms = 0;
    for (let run = 0; run < runs; run++) {
      const { x, y } = bent(24, 0.3, 0.1, 100 + run);
      const fit = kinkedLine(x, y, { u: 0.1, penalty: 2 * Math.log(24) });
      if (fit.kinks.length === 1) {
        found += 1;
        const { position, uPosition } = fit.kinks[0]!;
        if (Math.abs(position - 3.3) <= 1.96 * uPosition) held += 1;
        const { slope, uSlope } = fit.pieces[0]!;
        if (Math.abs(slope - 1) <= 1.96 * uSlope) slopeHeld += 1;
      }
      const straight = bent(24, 0, 0.1, 9000 + run);
      if (kinkedLine(straight.x, straight.y, { u: 0.1, penalty: 2 * Math.log(24) }).kinks.length > 0)
        falseAlarms += 1;
    }
    expect(found).toBeGreaterThan(0.98 * runs);
    expectClose(held / found, 0.95, {
      abs: 0.035,
      because: "three standard deviations of 400 trials",
    });
    expectClose(slopeHeld / found, 0.95, { abs: 0.046, because: "three standard deviations of 200 trials" });
    expect(falseAlarms).toBeLessThanOrEqual(0.015 * runs);
  });

  it("pools readings of one position, and does not turn with units or offsets", () => {
    const { x, y } = bent(12, 0.8, 0.1, 12);
    const doubled = kinkedLine(
      x.flatMap((v) => [v, v]),
      y.flatMap((v) => [v + 0.03, v - 0.03]),
      { u: 0.1 * Math.SQRT2, penalty: 3 },
    );
    const single = kinkedLine(x, y, { u: 0.1, penalty: 3 });
    expectClose(doubled.kinks[0]!.position, single.kinks[0]!.position, {
      rel: 1e-7,
      because: "the same means",
    });
    expectClose(doubled.chiSquare, single.chiSquare + 24 * (0.03 / (0.1 * Math.SQRT2)) ** 2, {
      rel: 1e-9,
      because: "and the scatter within",
    });
    const shifted: KinkedLine = kinkedLine(
      x.map((v) => 1000 + 25.4 * v),
      y.map((v) => 1e5 + 25.4 * v),
      { u: 2.54, penalty: 3 },
    );
    expectClose(shifted.kinks[0]!.position, 1000 + 25.4 * single.kinks[0]!.position, {
      rel: 1e-9,
      because: "an offset of 1e5 costs digits",
    });
  });

  it("drops kinks that the readings do not determine: every number it gives is finite, whatever the readings", () => {
    const { normal, uniform } = seededNoise(77);
    let several = 0;
    for (let run = 0; run < 400; run++) {
      let place = 0;
      const x = Array.from(
        { length: 2 + Math.floor(12 * uniform()) },
        () => (place += uniform() < 0.2 ? 0 : uniform()),
      );
      if (new Set(x).size < 2) continue;
      const rough = [1, 20, 1000][run % 3]!;
      const y = x.map(() => rough * normal());
      const options = { u: 1, fewestSteps: 1 + (run % 2), penalty: 0.3 + 3 * uniform() };
      if (repeatsTest(x, y, 1).contradictory) {
        expect(() => kinkedLine(x, y, options)).toThrow(/^kinkedLine: repeated readings must agree/);
        continue;
      }
      const fit = kinkedLine(x, y, options);
      const numbers = [...fit.kinks, ...fit.pieces].flatMap((part) => Object.values(part) as number[]);
      expect(numbers.every(Number.isFinite)).toBe(true);
      expect(fit.degreesOfFreedom).toBeGreaterThanOrEqual(fit.kinks.length > 0 ? 1 : 0);
      if (fit.kinks.length > 1) several += 1;
    }
    expect(several).toBeGreaterThan(40);
  });

  it("freezes what it returns and rejects what it cannot judge", () => {
    const fit = kinkedLine([0, 1, 2, 3, 4], [0, 1, 2, 1, 0], { u: 0.1 });
    expect(
      [fit, fit.kinks, fit.kinks[0], fit.pieces, fit.pieces[0], fit.residuals].every(Object.isFrozen),
    ).toBe(true);
    expect(kinkedLine([0, 1], [3, 5], { u: 1 }).pieces[0]!.end).toBe(5);
    expect(() => kinkedLine([0, 2, 1], [1, 1, 1], { u: 1 })).toThrow(
      "kinkedLine: positions must ascend, got 1 at index 2 after 2",
    );
    expect(() => kinkedLine([1, 1, 1], [1, 1, 1], { u: 1 })).toThrow(/2 to 500 different positions, got 1/);
    expect(() => kinkedLine([0, 1], [1, Number.NaN], { u: 1 })).toThrow(
      /values\[1\] must be a finite number/,
    );
    expect(() => kinkedLine([0, 1], [1, 2], { u: 0 })).toThrow(/u must be greater than 0, got 0/);
    expect(() => kinkedLine([0, 1], [1, 2], { u: 1, penalty: 0 })).toThrow(/penalty must be greater than 0/);
    expect(() => kinkedLine([0, 1], [1, 2], { u: 1, fewestSteps: 0.5 })).toThrow(
      /fewestSteps must be a whole number/,
    );
  });
});
