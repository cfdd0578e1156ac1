import { describe, expect, it } from "vitest";
import { degree, inch, measured, metre, mm } from "../../kernel-helpers/quantity/index.js";
import { expandedUncertainty, formatMeasured, plusMinus } from "../../kernel-helpers/view/format-measured.js";
import { expectClose } from "../support/expect-close.js";

describe("expandedUncertainty(measured)", () => {
  // Source: JCGM 100:2008 (GUM), annex H.1: u = 32 nm, 16 degrees of freedom, t₉₉ = 2.92, U₉₉ = 93 nm.
  it("returns the printed k and U of the end gauge", () => {
    const gauge = measured(metre(0.050000838), metre(32e-9), 16);
    const { k, expanded } = expandedUncertainty(gauge, 0.99);
    expectClose(k, 2.92, { abs: 0.005, because: "the source prints 3 digits" });
    expectClose(expanded, 93e-9, { abs: 0.6e-9, because: "the source prints 2 digits" });
  });

  it("returns k = 1.96 for an uncertainty taken as known", () => {
    expectClose(expandedUncertainty(measured(1, 1)).k, 1.959964, {
      abs: 1e-6,
      because: "7 digits of tables",
    });
  });

  it("rejects a coverage of 1", () => {
    expect(() => expandedUncertainty(measured(1, 1), 1)).toThrow(RangeError);
  });
});

describe("formatMeasured(measured)", () => {
  it("shows two digits of the expanded uncertainty, the value to the same place, the share and k", () => {
    const size = measured(inch(2.433172), inch(0.000122));
    expect(formatMeasured(size)).toBe("2.43317 ± 0.00024 in (95 %, k = 2.0)");
  });

  it("shows k of few degrees of freedom, and another share where asked", () => {
    // t₉₅(2) = 4.303, t₉₉(2) = 9.925: GUM, table G.2.
    expect(formatMeasured(measured(mm(61.9), mm(0.01), 2))).toBe("61.900 ± 0.043 mm (95 %, k = 4.3)");
    expect(formatMeasured(measured(mm(61.9), mm(0.01), 2), { coverage: 0.99 })).toBe(
      "61.900 ± 0.099 mm (99 %, k = 9.9)",
    );
  });

  it("is the same length in another unit", () => {
    const depth = measured(inch(0.0043), inch(0.00012));
    expect(formatMeasured(depth, { unit: "thou" })).toBe("4.30 ± 0.24 thou (95 %, k = 2.0)");
    expect(formatMeasured(depth, { unit: "micrometre" })).toBe("109.2 ± 6.0 µm (95 %, k = 2.0)");
  });

  it("shows a plain number without unit and an angle with its sign", () => {
    expect(formatMeasured(measured(0.05, 0.0001))).toBe("0.05000 ± 0.00020 (95 %, k = 2.0)");
    expect(plusMinus(measured(degree(1.4321), degree(0.001)))).toBe("1.4321 ± 0.0020°");
  });

  it("says so where a value is taken as exact", () => {
    expect(formatMeasured(measured(inch(2.4375), inch(0)))).toBe("2.4375 ± 0 in (taken as exact)");
  });

  it("rejects a unit of another kind, and a unit for a plain number", () => {
    expect(() => formatMeasured(measured(degree(1), degree(0.1)), { unit: "thou" })).toThrow(
      /unit must measure angle, got thou, which measures length/,
    );
    expect(() => formatMeasured(measured(1, 0.1), { unit: "inch" })).toThrow(/plain number .* got in/);
  });
});
