import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  degC,
  degF,
  inch,
  isQuantity,
  lbf,
  measured,
  mm,
  thou,
} from "../../kernel-helpers/quantity/index.js";
import { restoreValue, storeValue } from "../../kernel-helpers/record/stored-value.js";

const back = (value: unknown): unknown => restoreValue(JSON.parse(JSON.stringify(storeValue(value))));

describe("storeValue(value) and restoreValue(stored)", () => {
  it("writes a quantity in its own unit, as a person would read it", () => {
    expect(storeValue({ depth: thou(4.3), shaft: inch(2.4375) })).toEqual({
      depth: { thou: 4.3 },
      shaft: { inch: 2.4375 },
    });
    expect(storeValue(degF(54))).toEqual({ degF: 54 });
    expect(storeValue(Number.POSITIVE_INFINITY)).toEqual({ number: "Infinity" });
  });
  it("gives quantities back to the last bit, whatever unit they are shown in", () => {
    const makers = [inch, thou, mm, lbf];
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
        fc.nat(makers.length - 1),
        (value, which) => {
          const quantity = makers[which]!(value);
          const restored = back(quantity);
          expect(isQuantity(restored) && Object.is(restored.si + 0, quantity.si + 0)).toBe(true);
        },
      ),
      { seed: 2, numRuns: 2000 },
    );
  });
  it("gives a product without a usual unit back, kind and all", () => {
    const product = mm(3).times(mm(4)).times(mm(5)).times(mm(6)).times(mm(7));
    const restored = back(product);
    expect(isQuantity(restored, product.dimension) && restored.si).toBe(product.si);
  });
  it("gives temperatures, measured values and endless degrees of freedom back", () => {
    const value = { at: degC(20), bore: measured(mm(61.9), mm(0.01)) };
    const restored = back(value) as typeof value;
    expect(restored.at.kelvin).toBe(293.15);
    expect(restored.bore.value.in("mm")).toBe(61.9);
    expect(restored.bore.degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    expect(Object.isFrozen(restored.bore)).toBe(true);
  });
  it("refuses what a record cannot keep, naming its place", () => {
    expect(() => storeValue({ wear: { bands: [1, Number.NaN] } })).toThrow(
      /value\.wear\.bands\[1\] is not a number/,
    );
    expect(() => storeValue({ when: new Date(0) })).toThrow(/value\.when is a Date/);
    expect(() => storeValue({ f: () => 1 })).toThrow(/value\.f is a function/);
  });
});
