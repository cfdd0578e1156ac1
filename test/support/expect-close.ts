import { expect } from "vitest";

/** How close is close enough, and why. `rel` is relative to |expected|; `abs` is added, and must be given when expected is 0. */
export interface Tolerance {
  readonly rel?: number;
  readonly abs?: number;
  readonly because: string;
}

/**
 * Fails unless |actual - expected| <= rel·|expected| + abs.
 * Never passes for NaN, for a missing bound, or for an expected 0 without an absolute bound.
 */
export function expectClose(actual: number, expected: number, tolerance: Tolerance): void {
  const { rel = 0, abs = 0, because } = tolerance;
  if (!Number.isFinite(expected)) throw new Error(`expectClose: expected must be finite, got ${expected}`);
  if (rel === 0 && abs === 0)
    throw new Error("expectClose: give rel or abs; for exact equality use expect().toBe()");
  if (expected === 0 && abs === 0) throw new Error("expectClose: expected is 0, so abs must be given");
  if (because.trim() === "") throw new Error("expectClose: say why the bound is what it is");
  const bound = rel * Math.abs(expected) + abs;
  const difference = Math.abs(actual - expected);
  const relative = expected === 0 ? Number.NaN : difference / Math.abs(expected);
  if (!(difference <= bound)) {
    expect.fail(
      `got ${actual}, expected ${expected}: differs by ${difference} (relative ${relative}), allowed ${bound} because ${because}`,
    );
  }
  expect(difference).toBeLessThanOrEqual(bound);
}
