import { describe, expect, it } from "vitest";
import { inch, lbf, measured, thou } from "../../kernel-helpers/quantity/index.js";

describe("measured(value, standardUncertainty, degreesOfFreedom)", () => {
  it("puts a quantity or a number together with its uncertainty, frozen", () => {
    const bore = measured(inch(2.4332), thou(0.1), 9);
    expect([bore.kind, bore.degreesOfFreedom]).toEqual(["measured", 9]);
    expect([bore.value, bore.standardUncertainty].map(String)).toEqual(["2.4332 in", "0.1 thou"]);
    expect(measured(0.05, 0.001).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    expect(Object.isFrozen(bore)).toBe(true);
    expect(measured(inch(1), inch(0)).standardUncertainty.si).toBe(0);
  });
  it("rejects an uncertainty of another kind", () => {
    const untyped = measured as unknown as (value: unknown, uncertainty: unknown) => unknown;
    expect(() => untyped(inch(1), lbf(1))).toThrow(/^measured: .* one kind, got a length and a force$/);
    expect(() => untyped(inch(1), 0.1)).toThrow(TypeError);
  });
  it("rejects numbers that cannot be", () => {
    expect(() => measured(inch(1), inch(-0.1))).toThrow(/^measured: standard uncertainty .* got −0\.1 in$/);
    expect(() => measured(1, Number.NaN)).toThrow(/got NaN$/);
    expect(() => measured(1, Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => measured(Number.NaN, 1)).toThrow(/^measured: value must be a finite number/);
    for (const freedom of [0, -1, Number.NaN])
      expect(() => measured(1, 1, freedom)).toThrow(/^measured: degrees of freedom must be more than 0/);
  });
});
