import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  inch,
  inFraction,
  inMicrometres,
  inThou,
  lengthWithUncertainty,
  mm,
  readLength,
  thou,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

describe("inThou(length), inMicrometres(length)", () => {
  it("write small lengths as the trade says them", () => {
    expect(inThou(inch(0.0043))).toBe("4.3 thou");
    expect(inThou(inch(-0.0043), 0)).toBe("−4 thou");
    expect(inMicrometres(mm(0.0584))).toBe("58 µm");
    expect(inMicrometres(thou(1), 1)).toBe("25.4 µm");
  });
  it("reject a count of decimals that is none", () => {
    expect(() => inThou(inch(1), -1)).toThrow(/decimals/);
  });
});

describe("inFraction(length, denominator)", () => {
  it.each([
    [2.4375, "2 7/16 in"],
    [2.4332, "2 7/16 in − 4.3 thou"],
    [2.4418, "2 7/16 in + 4.3 thou"],
    [0.5, "1/2 in"],
    [3, "3 in"],
    [0, "0 in"],
    [63 / 64, "63/64 in"],
    [2.9999, "3 in − 0.1 thou"],
    [0.00002, "0 in + 0.020 thou"],
    [-2.4375, "−2 7/16 in"],
    [-2.4332, "−2 7/16 in + 4.3 thou"],
    [-0.001, "0 in − 1.0 thou"],
  ])("writes %d in as %s", (inches, text) => {
    expect(inFraction(inch(inches))).toBe(text);
  });
  it("writes every 64th in lowest terms, and it is read back exactly", () => {
    for (let i = -300; i <= 300; i++) {
      const text = inFraction(inch(i / 64));
      expect(text).not.toMatch(/thou/);
      const [, over, under] = /(\d+)\/(\d+)/.exec(text) ?? ["", "1", "2"];
      expect(Number(over) % 2).toBe(1);
      expect(64 % Number(under)).toBe(0);
      expect(readLength(text).si).toBe(inch(i / 64).si);
    }
  });
  it("gives fraction and rest that add up to the length", () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 100, noNaN: true }), (inches) => {
        const [, fraction, sign = "+", rest = "0"] = /^(.*? in)(?: ([+−]) ([\d.]+) thou)?$/.exec(
          inFraction(inch(inches), 16),
        )!;
        const thousandths = Number(rest) * (sign === "−" ? -1 : 1);
        const total = readLength(fraction!).in("inch") + thousandths / 1000;
        expectClose(total, inches, { rel: 1e-12, abs: 0.0000501, because: "the rest is given to a tenth" });
        expect(Math.abs(thousandths)).toBeLessThanOrEqual(1000 / 32 + 0.05);
      }),
    );
  });
  it("keeps to the denominator asked for", () => {
    expect(inFraction(inch(2.4375), 8)).toBe("2 1/2 in − 62.5 thou");
    expect(() => inFraction(inch(1), 10)).toThrow(/^inFraction: denominator must be .* got 10$/);
  });
});

describe("lengthWithUncertainty(length, expanded, unit)", () => {
  it("rounds both to two digits of the uncertainty, in the unit asked for", () => {
    expect(lengthWithUncertainty(inch(2.433172), inch(0.00024), "inch")).toBe("2.43317 ± 0.00024 in");
    expect(lengthWithUncertainty(inch(2.433172), inch(0.00024), "mm")).toBe("61.8026 ± 0.0061 mm");
    expect(lengthWithUncertainty(thou(4.31), thou(0.0996), "thou")).toBe("4.31 ± 0.10 thou");
    expect(lengthWithUncertainty(mm(0.058), mm(0.004), "micrometre")).toBe("58.0 ± 4.0 µm");
  });
});
