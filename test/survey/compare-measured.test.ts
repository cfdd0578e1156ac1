import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../kernel-helpers/quantity/index.js";
import { compareMeasured } from "../../kernel-helpers/survey/compare-measured.js";
import { expectClose } from "../support/expect-close.js";

const because = "the t-table prints 4 digits";

describe("compareMeasured(first, second)", () => {
  // Student t, two-sided 95 %: 1.960 for ν = ∞, 2.228 for ν = 10 (JCGM 100:2008, table G.2).
  it("widens the difference of two equal uncertainties by √2 and the factor of the table", () => {
    const known = compareMeasured(["a", measured(inch(2), thou(1))], ["b", measured(inch(2), thou(1))]);
    expectClose(Number(known.expanded) / thou(1).si, 1.96 * Math.SQRT2, { rel: 3e-4, because });
    // Welch–Satterthwaite with one part known exactly leaves the other's degrees of freedom.
    const few = compareMeasured(["a", measured(inch(2), thou(1), 10)], ["b", measured(inch(2), thou(0))]);
    expect(few.difference.degreesOfFreedom).toBe(10);
    expectClose(Number(few.expanded) / thou(1).si, 2.228, { rel: 3e-4, because });
  });
  it("adds degrees of freedom as Welch and Satterthwaite do: two equal parts count double", () => {
    const both = compareMeasured(["a", measured(1, 0.1, 6)], ["b", measured(1, 0.1, 6)]);
    expectClose(both.difference.degreesOfFreedom, 12, { rel: 1e-12, because: "an identity" });
  });
  it("agrees just inside the expanded uncertainty and not just outside", () => {
    const apart = (k: number): boolean =>
      compareMeasured(["a", measured(k, 1)], ["b", measured(0, 0)]).agrees;
    expect([apart(1.9599), apart(1.96), apart(-1.9599), apart(-1.97)]).toEqual([true, false, true, false]);
  });
  it("gives the chance of so large a difference: 1 for none, 5 % at the limit", () => {
    const chance = (k: number): number =>
      compareMeasured(["a", measured(k, 1)], ["b", measured(0, 0)]).chance;
    expect(chance(0)).toBe(1);
    expectClose(chance(1.959963985), 0.05, { rel: 1e-8, because: "the normal quantile has 10 digits" });
  });
  it("keeps the unit of the first value", () => {
    const { difference } = compareMeasured(
      ["a", measured(inch(2.001), thou(1))],
      ["b", measured(inch(2), thou(1))],
    );
    expect(String(difference.value)).toBe("0.001 in");
  });
  it("refuses two kinds, and two values without uncertainty", () => {
    expect(() =>
      compareMeasured(["a", measured(inch(1), thou(1))] as never, ["b", measured(1, 1)] as never),
    ).toThrow(/a length and a number/);
    expect(() => compareMeasured(["a", measured(1, 0)], ["b", measured(1, 0)])).toThrow(/got 0 and 0/);
  });
});
