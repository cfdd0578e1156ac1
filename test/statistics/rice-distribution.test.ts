import { describe, expect, it } from "vitest";
import { normalCdf, randomGenerator, riceCdf } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";

describe("riceCdf(length, distance, sigma)", () => {
  it("is the Rayleigh distribution about the origin", () => {
    // 1 − exp(−R²/2σ²), closed form.
    for (const length of [0.1, 0.5, 1, 2, 4])
      expectClose(riceCdf(length, 0, 1.3), 1 - Math.exp(-((length / 1.3) ** 2) / 2), {
        rel: 1e-9,
        because: "Simpson's rule with 2000 steps",
      });
  });
  it("is nearly normal where the point lies far out", () => {
    // The sideways noise adds σ²/2a to the length.
    expectClose(riceCdf(101, 100, 1), normalCdf(1 - 1 / 200), {
      rel: 1e-4,
      because: "terms of order 1/a² are left out",
    });
  });
  it("agrees with the Marcum Q function's tabled values", () => {
    // 1 − Q₁(1, 1) = 0.26712, 1 − Q₁(1, 2) = 0.73099 (J. I. Marcum, 1950; from memory, recomputed from the Bessel series below).
    const series = (a: number, b: number): number => {
      // Q₁(a, b) = exp(−(a² + b²)/2) Σ (a/b)^k I_k(ab)
      const bessel = (order: number, x: number): number => {
        let term = 1;
        for (let i = 1; i <= order; i++) term *= x / 2 / i;
        let sum = term;
        for (let j = 1; j < 60; j++) {
          term *= (x * x) / 4 / (j * (j + order));
          sum += term;
        }
        return sum;
      };
      let sum = 0;
      for (let k = 0; k < 60; k++) sum += (a / b) ** k * bessel(k, a * b);
      return Math.exp(-(a * a + b * b) / 2) * sum;
    };
    for (const [a, b] of [
      [1, 1],
      [1, 2],
      [2, 3],
      [3, 2.5],
    ] as const)
      expectClose(riceCdf(b, a, 1), 1 - series(a, b), {
        rel: 1e-9,
        because: "the series is exact to rounding",
      });
    expectClose(riceCdf(2, 1, 1), 0.73099, { rel: 2e-4, because: "from memory to five digits" });
  });
  it("counts what is drawn", () => {
    const random = randomGenerator(7);
    let inside = 0;
    for (let i = 0; i < 20_000; i++) if (Math.hypot(2 + random.normal(), random.normal()) < 2.5) inside++;
    expectClose(inside / 20_000, riceCdf(2.5, 2, 1), { rel: 0.02, because: "20 000 draws scatter by 0.7 %" });
  });
  it("is 0 for no length and 1 for a great one, and refuses what is none", () => {
    expect(riceCdf(0, 1, 1)).toBe(0);
    expectClose(riceCdf(30, 1, 1), 1, { rel: 1e-9, because: "as above" });
    expect(() => riceCdf(-1, 1, 1)).toThrow(/riceCdf: length and distance must be 0 or more/);
    expect(() => riceCdf(1, 1, 0)).toThrow(/sigma above 0/);
  });
});
