import chiSquareReference from "@stdlib/stats-base-dists-chisquare-quantile";
import fReference from "@stdlib/stats-base-dists-f-quantile";
import tReference from "@stdlib/stats-base-dists-t-quantile";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareSurvival,
  coverageFactor,
  fCdf,
  fQuantile,
  fSurvival,
  normalCdf,
  normalQuantile,
  studentTCdf,
  studentTQuantile,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const probabilities = [
  1e-10,
  1e-6,
  0.001,
  0.05,
  0.1,
  0.3,
  0.45,
  0.5001,
  0.6,
  0.8,
  0.9,
  0.975,
  0.9999,
  1 - 1e-9,
];

describe("distributions against 40-digit values", () => {
  // Source: test/reference/distributions.csv, written by test/reference/generators/distributions.py (mpmath, 40 digits).
  const tails: Record<string, (x: number, dof1: number, dof2: number) => number> = {
    normalTail: (x) => normalCdf(-x),
    studentTTail: (x, dof) => studentTCdf(-x, dof),
    chiSquareTail: (x, dof) => chiSquareSurvival(x, dof),
    fTail: (x, dof1, dof2) => fSurvival(x, dof1, dof2),
    studentTQuantile: (p, dof) => studentTQuantile(p, dof),
    normalQuantile: (p) => normalQuantile(p),
  };
  for (const [name, helper] of Object.entries(tails)) {
    it(`${name} keeps its digits, however small, until it underflows to 0`, () => {
      const rows = readReference("distributions").rows.filter((row) => row[0] === name);
      expect(rows.length).toBeGreaterThan(3);
      for (const [, x, dof1, dof2, value] of rows) {
        const found = helper(Number(x), Number(dof1), Number(dof2));
        if (Number(value) === 0) expect(found).toBe(0);
        else {
          expectClose(found, Number(value), {
            rel: 6e-14,
            because: `largest error measured 2.8e-14; here ${x}, ${dof1}, ${dof2}`,
          });
        }
      }
    });
  }
});

describe("studentTQuantile(p, dof)", () => {
  it("agrees with the reference library", () => {
    for (const p of probabilities) {
      for (const dof of [1, 1.5, 2, 3, 5, 9, 16.75, 30, 100, 1000, 12345]) {
        expectClose(studentTQuantile(p, dof), tReference(p, dof), {
          rel: 1e-14,
          because: "largest difference measured 2.9e-15",
        });
      }
    }
  });
  it("is the inverse of studentTCdf, and odd about one half", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-12, max: 0.5, noNaN: true }),
        fc.double({ min: 0.5, max: 1e6, noNaN: true }),
        (p, dof) => {
          const t = studentTQuantile(p, dof);
          expectClose(studentTCdf(t, dof), p, {
            rel: 1e-11,
            because: "t holds 16 digits, the tail is steep",
          });
          expectClose(studentTQuantile(1 - p, dof), -studentTQuantile(1 - (1 - p), dof), {
            rel: 1e-13,
            abs: 1e-15,
            because: "the same search on the same tail",
          });
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });
  it("is the tangent for 1 degree of freedom and the normal quantile for Infinity", () => {
    expectClose(studentTQuantile(0.9, 1), Math.tan(Math.PI * 0.4), {
      rel: 1e-14,
      because: "Cauchy's closed form",
    });
    expect(studentTQuantile(0.9, Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.9));
    expect(studentTQuantile(0.5, 7)).toBe(0);
  });
  it("rejects a probability or degrees of freedom outside their bounds", () => {
    expect(() => studentTQuantile(1, 5)).toThrow("studentTQuantile: p must lie between 0 and 1, got 1");
    expect(() => studentTQuantile(Number.NaN, 5)).toThrow(/p must lie between 0 and 1, got NaN/);
    expect(() => studentTQuantile(0.9, 0)).toThrow(/dof must be greater than 0 \(Infinity allowed\), got 0/);
    expect(() => studentTCdf(Number.NaN, 3)).toThrow(/studentTCdf: t must be a finite number, got NaN/);
  });
});

describe("coverageFactor(coverage, dof)", () => {
  // Source: test/reference/student-t.csv, agreeing with JCGM 100:2008, table G.2; printed to 3 decimals.
  it("returns the printed two-sided factors", () => {
    const table = readReference("student-t");
    const coverages = { p6827: 0.6827, p90: 0.9, p95: 0.95, p9545: 0.9545, p99: 0.99, p9973: 0.9973 };
    const dofs = table.numbers("nu");
    for (const [column, coverage] of Object.entries(coverages)) {
      table.numbers(column).forEach((printed, i) => {
        const rounded = column === "p6827" || column === "p9545" || column === "p9973";
        expectClose(coverageFactor(coverage, dofs[i]!), printed, {
          abs: 5.01e-4,
          rel: rounded ? 2e-2 : 0,
          because: rounded ? "3 printed decimals; coverage itself is printed rounded" : "3 printed decimals",
        });
      });
    }
  });
  it("covers what it says: two-sided, also for coverage next to 1", () => {
    for (const coverage of [0.1, 0.6827, 0.95, 0.9999]) {
      const k = coverageFactor(coverage, 6);
      expectClose(1 - 2 * studentTCdf(-k, 6), coverage, { rel: 1e-14, because: "inverse of the cdf" });
    }
    expectClose(coverageFactor(0.95, Number.POSITIVE_INFINITY), 1.959963984540054, {
      rel: 1e-15,
      because: "normal quantile, 16 published digits",
    });
  });
  it("rejects a coverage in per cent", () => {
    expect(() => coverageFactor(95, 5)).toThrow("coverageFactor: coverage must lie between 0 and 1, got 95");
  });
});

describe("chiSquareQuantile(p, dof), chiSquareCdf(x, dof)", () => {
  it("agrees with the reference library", () => {
    for (const p of probabilities) {
      for (const dof of [1, 2, 3, 5, 9, 16.75, 30, 100, 1000]) {
        expectClose(chiSquareQuantile(p, dof), chiSquareReference(p, dof), {
          rel: 2e-14,
          because: "largest difference measured 5.4e-15",
        });
      }
    }
  });
  it("is exponential for 2 degrees of freedom, and both sides add up to 1", () => {
    for (const x of [0.01, 1, 30, 600]) {
      expectClose(chiSquareSurvival(x, 2), Math.exp(-x / 2), { rel: 1e-13, because: "closed form" });
      expectClose(chiSquareCdf(x, 7) + chiSquareSurvival(x, 7), 1, { rel: 1e-15, because: "complement" });
    }
    expectClose(chiSquareCdf(chiSquareQuantile(0.3, 5), 5), 0.3, { rel: 1e-14, because: "inverse" });
  });
  it("rejects a negative value and degrees of freedom that are not finite", () => {
    expect(() => chiSquareCdf(-1, 3)).toThrow("chiSquareCdf: x must be 0 or greater, got -1");
    expect(() => chiSquareSurvival(1, Number.POSITIVE_INFINITY)).toThrow(
      /greater than 0 and finite, got Infinity/,
    );
  });
});

describe("fQuantile(p, dof1, dof2), fCdf(x, dof1, dof2)", () => {
  it("agrees with the reference library", () => {
    for (const p of probabilities) {
      for (const dof1 of [1, 2, 5, 30, 100]) {
        // The reference library answers Infinity for dof2 = 1 and the last probability: see the closed form below.
        for (const dof2 of p > 0.9999 ? [2, 4, 10, 50, 500] : [1, 2, 4, 10, 50, 500]) {
          expectClose(fQuantile(p, dof1, dof2), fReference(p, dof1, dof2), {
            rel: 2e-14,
            because: "largest difference measured 3.4e-15",
          });
        }
      }
    }
  });
  it("is the square of Student's t for 1 degree of freedom above, and its own reciprocal when they are swapped", () => {
    for (const dof of [1, 4, 23.5]) {
      expectClose(fQuantile(0.95, 1, dof), studentTQuantile(0.975, dof) ** 2, {
        rel: 2e-14,
        because: "F = t²",
      });
      expectClose(fQuantile(0.9, 3, dof), 1 / fQuantile(0.1, dof, 3), {
        rel: 2e-13,
        because: "0.1 is not 1 − 0.9 to the last digit",
      });
      expectClose(fCdf(2, 3, dof), fSurvival(0.5, dof, 3), { rel: 1e-14, because: "ratio turned over" });
    }
  });
  it("is ((1−p)⁻² − 1)/2 for 2 and 1 degrees of freedom, in the far tail too", () => {
    for (const p of [0.5, 0.99, 1 - 1e-9]) {
      expectClose(fQuantile(p, 2, 1), ((1 - p) ** -2 - 1) / 2, { rel: 1e-14, because: "closed form" });
    }
  });
  it("rejects what is no ratio of variances", () => {
    expect(() => fCdf(-0.1, 3, 4)).toThrow("fCdf: x must be 0 or greater, got -0.1");
    expect(() => fQuantile(0.5, 3, -4)).toThrow(/fQuantile: dof2 must be greater than 0 and finite, got -4/);
  });
});

describe("normalQuantile(p), normalCdf(z)", () => {
  it("is the inverse of normalCdf in the far tail too", () => {
    for (const p of [1e-250, 1e-20, 0.02, 0.3, 0.5 + 1e-9, 0.7]) {
      expectClose(normalCdf(normalQuantile(p)), p, {
        rel: 1e-12,
        because: "z holds 16 digits, the tail is steep: z² times their rounding",
      });
    }
  });
  it("is the inverse everywhere between: each of its three quotients, and where they meet", () => {
    for (let step = 1; step < 4000; step += 1)
      for (const p of [step / 8000, Math.exp(-step / 6)]) {
        if (p > 0.5) continue;
        const z = normalQuantile(p);
        expectClose(normalCdf(z), p, {
          rel: 1e-14 * (1 + z * z),
          because: "largest difference measured 3.2e-15 × (1 + z²): z holds 16 digits",
        });
      }
  });
  it("rejects NaN", () => {
    expect(() => normalCdf(Number.NaN)).toThrow("normalCdf: z must be a finite number, got NaN");
    expect(() => normalQuantile(0)).toThrow("normalQuantile: p must lie between 0 and 1, got 0");
  });
});
