import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { superscript } from "../../kernel-helpers/quantity/format-number.js";
import {
  decimalsFor,
  formatFixed,
  formatNumber,
  formatWithUncertainty,
} from "../../kernel-helpers/quantity/index.js";
import { readNumber } from "../../kernel-helpers/quantity/read-number.js";
import { expectClose } from "../support/expect-close.js";

describe("formatNumber(value, significant)", () => {
  it.each([
    [2.4375, "2.4375"],
    [2, "2"],
    [-0.00043210001, "−0.0004321"],
    [0.1 + 0.2, "0.3"],
    [123456.7, "123457"],
    [999999.5, "1000000"],
    [-0, "0"],
    [0.0001, "0.0001"],
    [0.00001, "1×10⁻⁵"],
    [11.7e-6, "1.17×10⁻⁵"],
    [123456789, "123457000"],
    [999999999, "1×10⁹"],
    [-2.5e12, "−2.5×10¹²"],
    [Number.NEGATIVE_INFINITY, "−Infinity"],
    [Number.NaN, "NaN"],
  ])("writes %d as %s", (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });
  it("is read back to the digits it shows", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e15, max: 1e15, noNaN: true, noDefaultInfinity: true }), (value) => {
        const because = "half of the sixth digit";
        // Below 10⁻³⁰⁷ a double has no six digits.
        expectClose(readNumber(formatNumber(value)), value, { rel: 5.1e-6, abs: 1e-307, because });
      }),
    );
  });
  it("rejects a count of digits outside 1 to 17", () => {
    for (const count of [0, 18, 2.5, Number.NaN])
      expect(() => formatNumber(1, count)).toThrow(/^formatNumber: significant must be/);
  });
});

describe("formatFixed(value, decimals)", () => {
  it("keeps its zeros, takes a true minus sign and has no −0", () => {
    expect(formatFixed(2.5, 3)).toBe("2.500");
    expect(formatFixed(-4.31, 1)).toBe("−4.3");
    expect(formatFixed(-0.001, 2)).toBe("0.00");
  });
  it("rejects a count of decimals it cannot give", () => {
    for (const count of [-1, 101, 0.5]) expect(() => formatFixed(1, count)).toThrow(/^formatFixed: decimals/);
  });
});

describe("decimalsFor(uncertainty)", () => {
  it.each([
    [0.000238, 5],
    [0.0996, 2],
    [0.0994, 3],
    [0.1, 2],
    [1, 1],
    [9.96, 0],
    [35, 0],
    [1234, 0],
  ])("keeps two significant digits of %d with %d decimals", (uncertainty, decimals) => {
    expect(decimalsFor(uncertainty)).toBe(decimals);
  });
  it("rejects what is no uncertainty", () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => decimalsFor(bad)).toThrow(/^decimalsFor: uncertainty must be more than 0, got/);
    expect(() => decimalsFor(1, 0)).toThrow(/^decimalsFor: digits/);
  });
});

describe("formatWithUncertainty(value, uncertainty)", () => {
  // JCGM 100:2008 (GUM), 7.2.2: m = 100.021 47 g with u = 0.35 mg; 7.2.6: 10.057 62 Ω with 27 mΩ is 10.058 Ω.
  it("writes the examples of the GUM as it prints them", () => {
    expect(formatWithUncertainty(100.02147, 0.00035)).toEqual(["100.02147", "0.00035"]);
    expect(formatWithUncertainty(10.05762, 0.027)).toEqual(["10.058", "0.027"]);
  });
  it("rounds both to the same place, a ten or a hundred too", () => {
    expect(formatWithUncertainty(2.433172, 0.000238)).toEqual(["2.43317", "0.00024"]);
    expect(formatWithUncertainty(2.5, 0.0996)).toEqual(["2.50", "0.10"]);
    expect(formatWithUncertainty(29876.5, 1234)).toEqual(["29900", "1200"]);
    expect(formatWithUncertainty(-0.00001, 0.012)).toEqual(["0.000", "0.012"]);
    expect(formatWithUncertainty(-12.5, 0.996)).toEqual(["−12.5", "1.0"]);
  });
  it("keeps the written value within half of the last place, which is at most a twentieth of the uncertainty", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
        (value, uncertainty) => {
          const [shown, shownUncertainty] = formatWithUncertainty(value, uncertainty).map(readNumber);
          expect(Math.abs(shown! - value)).toBeLessThanOrEqual(uncertainty / 19);
          expectClose(shownUncertainty!, uncertainty, { rel: 0.0501, because: "two digits are kept" });
        },
      ),
    );
  });
  it("leaves a value without uncertainty as it is", () => {
    expect(formatWithUncertainty(2.4375, 0)).toEqual(["2.4375", "0"]);
  });
  it("rejects a negative uncertainty", () => {
    expect(() => formatWithUncertainty(1, -0.1)).toThrow(/^formatWithUncertainty: uncertainty .* got -0\.1$/);
  });
});

describe("superscript(whole)", () => {
  it("raises every digit and the minus sign", () => {
    expect(superscript(-1234567890)).toBe("⁻¹²³⁴⁵⁶⁷⁸⁹⁰");
  });
});
