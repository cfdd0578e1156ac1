import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { welchSatterthwaite } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";

describe("welchSatterthwaite(contributions, degreesOfFreedom)", () => {
  // JCGM 100:2008, H.1.6: the three parts of the comparator, 25.6, and the whole, 16.7.
  it("gives the degrees of freedom of the GUM's gauge block", () => {
    const printed = { rel: 1e-2, because: "worked out from u = 9.7, rounded: 4 times 0.5 % at most" };
    expectClose(welchSatterthwaite([5.8, 3.9, 6.7], [24, 5, 8]), 25.6, printed);
    expectClose(welchSatterthwaite([25, 9.7, 2.9, 16.6], [18, 25.6, 50, 2]), 16.7, printed);
  });

  it("of one contribution is its own, and of n equal ones n times theirs", () => {
    expect(welchSatterthwaite([3e-7], [5])).toBe(5);
    expectClose(welchSatterthwaite([2e-90, 2e-90, 2e-90], [4, 4, 4]), 12, {
      rel: 1e-14,
      because: "exact: 9/(3/4), scaled so that nothing underflows",
    });
  });

  it("is Infinity when nothing with finite degrees of freedom counts", () => {
    expect(welchSatterthwaite([1, 2], [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY])).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(welchSatterthwaite([0, 0], [3, 4])).toBe(Number.POSITIVE_INFINITY);
  });

  it("lies between the smallest and the sum", () => {
    const part = fc.tuple(
      fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
      fc.double({ min: 0.5, max: 100, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
        const dofs = parts.map(([, dof]) => dof);
        const effective = welchSatterthwaite(
          parts.map(([u]) => u),
          dofs,
        );
        expect(effective).toBeGreaterThanOrEqual(Math.min(...dofs) * (1 - 1e-12));
        expect(effective).toBeLessThanOrEqual(dofs.reduce((a, b) => a + b, 0) * (1 + 1e-12));
      }),
      { seed: 1 },
    );
  });

  it.each([
    [[], [], /contributions needs at least 1/],
    [[1], [1, 2], /equally long/],
    [[-1], [2], /contributions\[0\] must be 0 or more, got -1/],
    [[1], [0], /degreesOfFreedom\[0\] must be greater than 0/],
    [[Number.NaN], [1], /contributions\[0\] must be a finite number/],
  ])("rejects %j with %j", (contributions, dofs, message) => {
    expect(() => welchSatterthwaite(contributions, dofs)).toThrow(message);
  });
});
