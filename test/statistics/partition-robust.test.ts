import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { partition, repeatsTest, robustPartition } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";

/** Least Σ min((y − μ)²/u², limit²) over μ: every choice of readings passed over, the mean of the others. */
function boundedCost(y: readonly number[], u: readonly number[], limit: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let passed = 0; passed < 2 ** y.length; passed++) {
    const kept = y.map((_, i) => i).filter((i) => ((passed >> i) & 1) === 0);
    const weight = kept.reduce((sum, i) => sum + 1 / u[i]! ** 2, 0);
    const mean = kept.reduce((sum, i) => sum + y[i]! / u[i]! ** 2, 0) / weight;
    const chiSquare = kept.reduce((sum, i) => sum + ((y[i]! - mean) / u[i]!) ** 2, 0);
    least = Math.min(least, (y.length - kept.length) * limit ** 2 + (kept.length === 0 ? 0 : chiSquare));
  }
  return least;
}

/** Every division, one after the other. */
function everyDivision(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  { limit, penalty, minimumPoints }: { limit: number; penalty: number; minimumPoints: number },
): number {
  const n = y.length;
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 2 ** (n - 1); mask++) {
    const cuts = [0];
    for (let t = 1; t < n; t++) if ((mask >> (t - 1)) & 1) cuts.push(t);
    cuts.push(n);
    if (cuts.some((t, k) => k > 0 && t - cuts[k - 1]! < minimumPoints)) continue;
    if (cuts.slice(1, -1).some((t) => x[t] === x[t - 1])) continue;
    let total = 0;
    for (let k = 1; k < cuts.length; k++)
      total += 2 * penalty + boundedCost(y.slice(cuts[k - 1], cuts[k]), u.slice(cuts[k - 1], cuts[k]), limit);
    least = Math.min(least, total);
  }
  return least;
}

const rounding = { rel: 1e-9, because: "the same sums in another order" };

describe("robustPartition(positions, values, { u, limit })", () => {
  it("has the least criterion of all divisions and all choices of readings passed over", () => {
    let several = 0;
    let bounded = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 4, max: 9 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom(1.5, 3, 6),
        (seed, n, minimumPoints, limit) => {
          const noise = seededNoise(seed);
          let at = 0;
          const x = Array.from({ length: n }, () => {
            at += noise.uniform() < 0.2 ? 0 : 1;
            return at;
          });
          const u = x.map(() => 0.5 + noise.uniform());
          const y = x.map(
            (_, i) =>
              (i < n / 2 ? 0 : 6) + noise.normal() + (noise.uniform() < 0.2 ? 40 * noise.normal() : 0),
          );
          const rules = { limit, minimumPoints, penalty: 1 + 2 * noise.uniform() };
          fc.pre(!repeatsTest(x, y, u).contradictory); // refused where nothing decides
          const found = robustPartition(x, y, { u, ...rules });
          expectClose(found.criterion, everyDivision(x, y, u, rules), rounding);
          // The criterion is that of the segments named, and none is smaller or cut at a position than allowed.
          let total = 0;
          for (const { from, to, level, bounded: passed } of found.segments) {
            total += 2 * rules.penalty;
            for (let i = from; i <= to; i++) total += Math.min(((y[i]! - level) / u[i]!) ** 2, limit ** 2);
            expect(to - from + 1).toBeGreaterThanOrEqual(minimumPoints);
            if (from > 0) expect(x[from]).toBeGreaterThan(x[from - 1]!);
            bounded += passed.length;
          }
          expectClose(total, found.criterion, rounding);
          if (found.segments.length > 1) several += 1;
        },
      ),
      { seed: 17, numRuns: 400 },
    );
    expect(several).toBeGreaterThan(100);
    expect(bounded).toBeGreaterThan(100);
  });

  it("is the least-squares partition where the limit is Infinity, another search for the same", () => {
    for (const seed of [1, 2, 3]) {
      const noise = seededNoise(seed);
      const x = Array.from({ length: 300 }, (_, i) => i);
      const y = x.map((i) => 61.9e-3 - (Math.floor(i / 60) % 2) * 12e-6 + 2e-6 * noise.normal());
      const options = { u: 2e-6, penalty: 8 };
      const squares = partition(x, y, {
        ...options,
        shapes: ["flat"],
        grossErrorLimit: Number.POSITIVE_INFINITY,
      });
      const robust = robustPartition(x, y, { ...options, limit: Number.POSITIVE_INFINITY });
      expect(robust.segments.map(({ from, to }) => [from, to])).toEqual(
        squares.segments.map(({ from, to }) => [from, to]),
      );
      expect(robust.segments).toHaveLength(5);
      expectClose(robust.criterion, squares.criterion, rounding);
      for (const [k, { level }] of robust.segments.entries())
        expectClose(level, squares.segments[k]!.level, { rel: 1e-12, because: "the same mean" });
    }
  });

  it("is never above what partition settles on with the same price for a gross reading, and seldom below", () => {
    let below = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const noise = seededNoise(seed);
      const x = Array.from({ length: 60 }, (_, i) => i);
      const y = x.map(
        (i) =>
          (Math.floor(i / 15) % 2) * 8 + noise.normal() + (noise.uniform() < 0.05 ? 30 * noise.normal() : 0),
      );
      const settled = partition(x, y, { u: 1, shapes: ["flat"] });
      const exact = robustPartition(x, y, { u: 1, limit: 6 });
      expect(exact.criterion).toBeLessThanOrEqual(settled.criterion * (1 + 1e-9));
      if (exact.criterion < settled.criterion * (1 - 1e-9)) below += 1;
    }
    expect(below).toBeLessThan(12);
  });

  it("is not moved by how far off a wild reading is, and does not depend on the unit", () => {
    const noise = seededNoise(4);
    const x = Array.from({ length: 40 }, (_, i) => i);
    const y = x.map((i) => (i < 20 ? 0 : 5) + noise.normal());
    const wild = (off: number) => y.map((v, i) => (i === 12 ? off : v));
    const near = robustPartition(x, wild(15), { u: 1 });
    expect(near.segments.map(({ from }) => from)).toContain(20);
    for (const off of [-1e3, 1e6]) {
      const far = robustPartition(x, wild(off), { u: 1 });
      expectClose(far.criterion, near.criterion, rounding);
      expect(far.segments.map(({ from }) => from)).toEqual(near.segments.map(({ from }) => from));
      expect(far.segments[0]!.bounded).toContain(12);
    }
    const small = robustPartition(
      x,
      y.map((v) => 0.05 + 1e-6 * v),
      { u: 1e-6 },
    );
    expectClose(small.criterion, robustPartition(x, y, { u: 1 }).criterion, {
      rel: 1e-8,
      because: "an offset of 50 000 u costs digits",
    });
  });

  it("divides 2000 readings, and equal ones", () => {
    const noise = seededNoise(5);
    const x = Array.from({ length: 2000 }, (_, i) => i);
    const y = x.map(
      (i) =>
        (Math.floor(i / 400) % 2) * 5 + noise.normal() + (noise.uniform() < 0.1 ? 100 * noise.normal() : 0),
    );
    expect(robustPartition(x, y, { u: 1, penalty: 15, limit: 5 }).segments).toHaveLength(5);
    const same = robustPartition([0, 1, 2], [7, 7, 7], { u: 1 });
    expect(same.segments).toEqual([{ from: 0, to: 2, level: 7, bounded: [] }]);
  });

  it("says what it cannot take", () => {
    expect(() => robustPartition([0, 2, 1], [1, 1, 1], { u: 1 })).toThrow("got 1 at index 2 after 2");
    expect(() => robustPartition([0], [1], { u: 1 })).toThrow("positions needs at least 2 values, got 1");
    expect(() => robustPartition([0, 1], [1, 2], { u: 0 })).toThrow("u must be greater than 0, got 0");
    expect(() => robustPartition([0, 1], [1, 2], { u: 1, limit: 0 })).toThrow(
      "limit must be greater than 0, got 0",
    );
    expect(() => robustPartition([0, 1], [1, 2], { u: 1, penalty: 0 })).toThrow(
      "penalty must be greater than 0, got 0",
    );
    expect(() => robustPartition([0, 1], [1, 2], { u: 1, minimumPoints: 0 })).toThrow(
      "whole number of at least 1, got 0",
    );
  });
});
