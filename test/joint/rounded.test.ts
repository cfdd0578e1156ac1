import { describe, expect, it } from "vitest";
import { rounded, roundedDown } from "../../kernel-helpers/joint/rounded.js";
import { inch, lbfFoot, mm, quantityFromSi } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 1e-14, because: "rounding only" };

describe("rounded(value, digits)", () => {
  it("keeps so many digits in the unit it was written in", () => {
    expect(rounded(lbfFoot(348.916), 3).toString()).toBe("349 lbf·ft");
    expectClose(rounded(inch(0.0042949), 2).in("inch"), 0.0043, rounding);
    expectClose(rounded(mm(-61.949), 3).in("mm"), -61.9, rounding);
    expect(rounded(mm(0), 3).si).toBe(0);
  });
  it("is off by half a step of the last digit at most, and changes nothing a second time", () => {
    for (const value of [1.0049, 9.9951, 123.456, 0.00098765, 7e6]) {
      const once = rounded(lbfFoot(value), 3);
      expect(Math.abs(once.in("lbfFoot") - value) / value).toBeLessThanOrEqual(0.005);
      expect(rounded(once, 3).si).toBe(once.si);
    }
  });
  it("rounds in SI what was written in no unit", () => {
    expect(rounded(quantityFromSi("length", 1.23456), 3).si).toBe(1.23);
  });
  it("refuses digits that are no whole number from 1 to 15", () => {
    for (const digits of [0, 2.5, 16, Number.NaN]) expect(() => rounded(inch(1), digits)).toThrow(RangeError);
  });
});

describe("roundedDown(limit, digits)", () => {
  it("is never above the limit, where rounding to the nearest is", () => {
    expect(rounded(lbfFoot(348.916), 3).toString()).toBe("349 lbf·ft");
    expect(roundedDown(lbfFoot(348.916), 3).toString()).toBe("348 lbf·ft");
    for (const value of [1.0049, 9.9951, 467.3, 7e6])
      expect(roundedDown(lbfFoot(value), 2).si).toBeLessThanOrEqual(lbfFoot(value).si);
    expectClose(roundedDown(lbfFoot(340), 2).in("lbfFoot"), 340, rounding);
  });
  it("refuses digits that are no whole number from 1 to 15", () => {
    expect(() => roundedDown(inch(1), 0)).toThrow(RangeError);
  });
});
