import { describe, expect, it } from "vitest";
import { deltaC, inch, lbf, measured, thou } from "../../kernel-helpers/quantity/index.js";
import {
  arcsineAbout,
  asMeasured,
  type Distribution,
  distributionOf,
  normalAbout,
  normalCdf,
  randomGenerator,
  rectangularAbout,
  studentTAbout,
  studentTCdf,
  triangularAbout,
} from "../../kernel-helpers/statistics/index.js";
import { correlateColumns, fillerOf } from "../../kernel-helpers/statistics/monte-carlo-draw.js";
import { expectClose } from "../support/expect-close.js";

/** What each distribution draws, against its own distribution function about 3 with width 2. */
const shapes: Readonly<Record<string, readonly [Distribution<number>, (z: number) => number]>> = {
  normal: [normalAbout(3, 2), normalCdf],
  "student t": [studentTAbout(3, 2, 5), (z) => studentTCdf(z, 5)],
  rectangular: [rectangularAbout(3, 2), (z) => (z + 1) / 2],
  triangular: [triangularAbout(3, 2), (z) => (z < 0 ? (1 + z) ** 2 / 2 : 1 - (1 - z) ** 2 / 2)],
  arcsine: [arcsineAbout(3, 2), (z) => 0.5 + Math.asin(z) / Math.PI],
};
const drawn = (of: Distribution<number>, n = 20_000): Float64Array => {
  const target = new Float64Array(n);
  fillerOf(of, randomGenerator(11))(target);
  return target.sort();
};

describe("draws from a distribution", () => {
  it.each(Object.entries(shapes))("of the shape %s follow it (Kolmogorov–Smirnov)", (_, [of, cdf]) => {
    const values = drawn(of);
    let most = 0;
    values.forEach((x, i) => {
      const p = cdf((x - 3) / 2);
      most = Math.max(most, (i + 1) / values.length - p, p - i / values.length);
    });
    // 1.95/√n is passed by chance once in a thousand; the seed is fixed.
    expect(most * Math.sqrt(values.length)).toBeLessThan(1.95);
  });

  it.each([
    ...Object.entries(shapes).filter(([name]) => name !== "student t"),
    ["inexact rectangular", [rectangularAbout(3, 2, 1.5)]] as const,
  ])("of the shape %s have the standard deviation that asMeasured tells", (_, [of]) => {
    const values = drawn(of, 100_000);
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    const variance = values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length;
    const u = asMeasured(of).standardUncertainty;
    expectClose(mean, 3, {
      abs: (5 * u) / Math.sqrt(values.length),
      because: "five standard deviations of the mean",
    });
    expectClose(Math.sqrt(variance), u, { rel: 0.015, because: "chance: about 0.3 % in 100 000 draws" });
  });

  it("with inexact limits pass the limits, but never by more than they may be off", () => {
    const values = drawn(rectangularAbout(0, 1, 0.4));
    expect(values.at(-1)!).toBeGreaterThan(1);
    expect(values.at(-1)!).toBeLessThanOrEqual(1.4);
  });

  it("correlated by a factor have the correlation asked for", () => {
    const columns = [0, 1].map((seed) => {
      const column = new Float64Array(50_000);
      fillerOf(normalAbout(0, 1), randomGenerator(seed))(column);
      return column;
    });
    correlateColumns(columns, [
      [1, 0],
      [-0.6, 0.8],
    ]);
    const [a, b] = columns as [Float64Array, Float64Array];
    const product = (x: Float64Array, y: Float64Array): number =>
      x.reduce((sum, value, i) => sum + value * y[i]!, 0);
    expectClose(product(a, b) / Math.sqrt(product(a, a) * product(b, b)), -0.6, {
      abs: 0.015,
      because: "chance: about 0.003 in 50 000 draws",
    });
  });
});

describe("distributions and measured values", () => {
  // JCGM 100:2008, 4.3.7 (a/√3), 4.3.9 (a/√6 for a triangle); JCGM 101:2008, 6.4.3.3 and 6.4.6.3.
  it("have the standard uncertainties of the GUM", () => {
    const rounding = { rel: 1e-14, because: "roundings" };
    expectClose(asMeasured(rectangularAbout(5, 3)).standardUncertainty, Math.sqrt(3), rounding);
    expectClose(asMeasured(triangularAbout(5, 3)).standardUncertainty, Math.sqrt(1.5), rounding);
    expectClose(asMeasured(arcsineAbout(5, 3)).standardUncertainty, Math.sqrt(4.5), rounding);
    expectClose(asMeasured(rectangularAbout(5, 3, 3)).standardUncertainty, 2, rounding);
    expect(asMeasured(arcsineAbout(deltaC(0), deltaC(0.5))).standardUncertainty.writtenIn).toBe("deltaC");
  });

  it("turn into each other and back", () => {
    for (const before of [measured(inch(1), thou(1), 9), measured(inch(1), thou(1))])
      expect(asMeasured(distributionOf(before)).degreesOfFreedom).toBe(before.degreesOfFreedom);
    expect(distributionOf(measured(1, 2, 3))).toEqual(studentTAbout(1, 2, 3));
    expect(distributionOf(measured(1, 2))).toEqual(normalAbout(1, 2));
  });

  it.each([
    ["a negative width", () => normalAbout(1, -1), /normalAbout: width must be 0 or more, got -1/],
    ["another kind", () => triangularAbout(inch(1), lbf(1) as never), /triangularAbout: .* of one kind/],
    ["NaN", () => arcsineAbout(Number.NaN, 1), /arcsineAbout: centre must be a finite number, got NaN/],
    ["no degrees of freedom", () => studentTAbout(1, 1, 0), /studentTAbout: degrees of freedom must be/],
    ["infinite degrees of freedom", () => studentTAbout(1, 1, Number.POSITIVE_INFINITY), /and finite/],
    ["limits off by more than the width", () => rectangularAbout(0, 1, 2), /rectangularAbout: limitsWithin/],
  ])("reject %s", (_, act, message) => {
    expect(act).toThrow(message);
  });
});
