import { describe, expect, it } from "vitest";
import { coverageFactor } from "../../kernel-helpers/statistics/index.js";
import { combined } from "../../kernel-helpers/survey/combined.js";
import { scattersTooMuch, scatterWarning, widening } from "../../kernel-helpers/survey/scatter-test.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("combined(uReadings, dof, uCommon)", () => {
  it("adds the squares and stretches the degrees of freedom (Welch–Satterthwaite)", () => {
    const { u, degreesOfFreedom } = combined(3, 5, 4);
    expect(u).toBe(5);
    expectClose(degreesOfFreedom, 5 * (5 / 3) ** 4, { rel: 1e-14, because: "GUM G.2b with one finite term" });
  });
  it("keeps what it is where nothing is common, and Infinity where all is known", () => {
    expect(combined(3, 5, 0)).toEqual({ u: 3, degreesOfFreedom: 5 });
    expect(combined(3, Number.POSITIVE_INFINITY, 4).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    expect(combined(0, 5, 4)).toEqual({ u: 4, degreesOfFreedom: Number.POSITIVE_INFINITY });
  });
});

describe("scattersTooMuch(chiSquare, degreesOfFreedom)", () => {
  // Source: chi-square table, upper 1 % point: 23.209 with 10 degrees of freedom, 6.635 with 1.
  it("turns at the printed 1 % point", () => {
    expect(scattersTooMuch(23.21, 10)).toBe(true);
    expect(scattersTooMuch(23.208, 10)).toBe(false);
    expect(scattersTooMuch(6.636, 1)).toBe(true);
    expect(scattersTooMuch(6.634, 1)).toBe(false);
  });
  it("says nothing without a degree of freedom", () => {
    expect(scattersTooMuch(100, 0)).toBe(false);
  });
  it("is warned of in words of the trade", () => {
    expect(scatterWarning(2.345)).toMatch(
      /scatter 2\.3 times more .* rough surface, dirt, or more than one hand/,
    );
  });
});

describe("widening(chiSquare, degreesOfFreedom)", () => {
  // Source: chi-square table, upper 25 % points: 12.549 with 10 degrees of freedom, 1.323 with 1 (from memory).
  it("turns at the printed 25 % point", () => {
    expect(widening(12.548, 10).factor).toBe(1);
    const { factor, degreesOfFreedom } = widening(12.55, 10);
    expectClose(factor, Math.sqrt(1.255), { rel: 1e-15, because: "rounding only" });
    expect(degreesOfFreedom).toBe(10);
    expect([widening(1.323, 1).factor, widening(1.324, 1).degreesOfFreedom]).toEqual([1, 1]);
  });
  it("is none where the scatter is as stated or less, and where none was seen", () => {
    const none = { factor: 1, degreesOfFreedom: Number.POSITIVE_INFINITY };
    expect([widening(10, 10), widening(3, 10), widening(0, 0), widening(50, 0)]).toEqual([
      none,
      none,
      none,
      none,
    ]);
  });
  it("is the ratio seen where much was seen, with its degrees of freedom", () => {
    const { factor, degreesOfFreedom } = widening(4 * 1000, 1000);
    expectClose(factor, 2, { rel: 1e-15, because: "rounding only" });
    expect(degreesOfFreedom).toBe(1000);
  });
  it.each([
    { dof: 2, noise: 1, held: 0.962 },
    { dof: 2, noise: 2, held: 0.903 },
    { dof: 4, noise: 1, held: 0.962 },
    { dof: 4, noise: 2, held: 0.936 },
    { dof: 10, noise: 1, held: 0.961 },
    { dof: 10, noise: 2, held: 0.949 },
    { dof: 10, noise: 3, held: 0.95 },
  ])(
    "holds the truth as often as its doc says: $held at $dof degrees of freedom, noise $noise times the stated",
    ({ dof, noise, held }) => {
      const { normal } = seededNoise(100 * dof + noise);
      const runs = 4000;
      let inside = 0;
      for (let run = 0; run < runs; run++) {
        const chiSquare = Array.from({ length: dof }, () => (noise * normal()) ** 2).reduce((a, b) => a + b);
        const { factor, degreesOfFreedom } = widening(chiSquare, dof);
        if (Math.abs(noise * normal()) <= coverageFactor(0.95, degreesOfFreedom) * factor) inside += 1;
      }
      expectClose(inside / runs, held, { abs: 0.014, because: "three standard deviations of 4000 draws" });
    },
  );
});
