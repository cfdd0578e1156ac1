import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomGenerator, shortestInterval } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";

/** The definition, word for word, on a sorted copy; ranks from 1 as in JCGM 101, 7.7. */
function byDefinition(values: readonly number[], p: number): readonly (readonly [number, number])[] {
  const sorted = [...values].sort((a, b) => a - b);
  const y = (rank: number): number => sorted[rank - 1]!;
  const m = sorted.length;
  const q = Number.isInteger(p * m) ? p * m : Math.floor(p * m + 0.5);
  let best = 1;
  for (let r = 1; r <= m - q; r++) if (y(r + q) - y(r) < y(best + q) - y(best)) best = r;
  const r = Number.isInteger((m - q) / 2) ? (m - q) / 2 : Math.floor((m - q + 1) / 2);
  return [
    [y(best), y(best + q)],
    [y(r), y(r + q)],
  ];
}

describe("shortestInterval(values, coverage)", () => {
  it("is what JCGM 101, 7.7.2 to 7.7.4 defines, for short lists and long ones", () => {
    const random = randomGenerator(5);
    for (const n of [120, 400, 9000, 100_000])
      for (const p of [0.5, 0.9, 0.95, 0.99]) {
        const values = Array.from({ length: n }, () => random.normal() ** 2);
        const { shortest, symmetric } = shortestInterval(values, p);
        expect([
          [shortest.low, shortest.high],
          [symmetric.low, symmetric.high],
        ]).toEqual(byDefinition(values, p));
      }
  });

  it("does not depend on the order, not even on one made to mislead a sample", () => {
    const random = randomGenerator(6);
    const values = Array.from({ length: 100_000 }, () => random.normal());
    const expected = shortestInterval(values, 0.95);
    const sorted = [...values].sort((a, b) => a - b);
    // Every sixth place, where a sample of 16 384 looks, holds one of the outermost values: the sample takes
    // the tails to begin far out, and too few values would be gathered.
    const half = Math.ceil(values.length / 12);
    const outer = [...sorted.slice(0, half), ...sorted.slice(-half)];
    const inner = sorted.slice(half, -half);
    const misleading = values.map((_, i) => (i % 6 === 0 ? outer.pop()! : (inner.pop() ?? outer.pop()!)));
    expect(misleading.every(Number.isFinite)).toBe(true);
    for (const order of [sorted, [...sorted].reverse(), misleading])
      expect(shortestInterval(order, 0.95)).toEqual(expected);
  });

  // The exponential distribution: the shortest interval starts at 0 and ends at −ln(1 − p).
  it("of a lop-sided distribution starts at its peak, and is shorter than the symmetric one", () => {
    const random = randomGenerator(7);
    const values = Array.from({ length: 200_000 }, () => -Math.log(random.uniform()));
    const { shortest, symmetric, symmetricError } = shortestInterval(values, 0.95);
    const because = "200 000 draws: chance moves the end by about 0.01";
    expectClose(shortest.low, 0, { abs: 0.005, because });
    expectClose(shortest.high, -Math.log(0.05), { abs: 0.04, because });
    expectClose(symmetric.low, -Math.log(0.975), { abs: 0.002, because });
    expectClose(symmetric.high, -Math.log(0.025), { abs: 4 * symmetricError.high, because });
    // Error of a quantile: √(p(1 − p)/n)/density.
    expectClose(symmetricError.high, Math.sqrt((0.975 * 0.025) / 200_000) / 0.025, {
      rel: 0.25,
      because: "density estimated from the neighbouring values",
    });
    expect(shortest.high - shortest.low).toBeLessThan(symmetric.high - symmetric.low);
  });

  it("never holds fewer values than the share asked for", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 20, maxLength: 200 }),
        fc.constantFrom(0.5, 0.8, 0.9),
        (values, p) => {
          const { shortest } = shortestInterval(values, p);
          const held = values.filter((v) => v >= shortest.low && v <= shortest.high).length;
          expect(held).toBeGreaterThanOrEqual(Math.floor(p * values.length));
        },
      ),
      { seed: 2 },
    );
  });

  it("rejects too few values, a share outside 0 to 1, and what is not finite", () => {
    expect(() => shortestInterval([1, 2, 3], 0.99)).toThrow(
      /shortestInterval: .* at least 100 values, got 3/,
    );
    expect(() => shortestInterval([1, 2, 3], 1)).toThrow(/coverage must lie between 0 and 1, got 1/);
    expect(() => shortestInterval([1, Number.NaN], 0.5)).toThrow(/values\[1\] must be a finite number/);
  });
});
