import { describe, expect, it } from "vitest";
import { formatFixedLimit, formatLimit, roundToLimit } from "../../kernel-helpers/quantity/format-limit.js";
import { formatNumber, lbfFoot, mm } from "../../kernel-helpers/quantity/index.js";

const values = [467.3, 344.7, 1.0049, 9.9951, 0.00098765, 99.96, 7.0001e6, 12, 0.3];

describe("formatFixedLimit(value, decimals, side)", () => {
  it("never passes the limit, and is off by less than one step of its last decimal", () => {
    for (const value of [...values, -1.23456])
      for (const decimals of [0, 1, 3, 6]) {
        const [most, least] = (["at most", "at least"] as const).map((side) =>
          Number(formatFixedLimit(value, decimals, side).replace("−", "-")),
        ) as [number, number];
        const step = 10 ** -decimals;
        const slack = 1e-9 * Math.abs(value);
        expect(most).toBeLessThanOrEqual(value + slack);
        expect(least).toBeGreaterThanOrEqual(value - slack);
        expect(least - most).toBeLessThan(step + slack);
      }
  });
  it("keeps a size of so few decimals, whatever unit it came through, with all its zeros", () => {
    for (const size of [59.7, 60.03, 2.4246, 61.646]) {
      const there = mm(size).in("mm");
      expect(formatFixedLimit(there, 4, "at most")).toBe(size.toFixed(4));
      expect(formatFixedLimit(there, 4, "at least")).toBe(size.toFixed(4));
    }
  });
  it("refuses decimals that are no whole number from 0 to 15", () => {
    for (const decimals of [-1, 2.5, 16])
      expect(() => formatFixedLimit(1, decimals, "at most")).toThrow(/decimals must be a whole number/);
  });
});

describe("formatLimit(value, significant, side)", () => {
  it("never passes the limit, and is off by less than one step of its last digit", () => {
    for (const value of values)
      for (const digits of [1, 2, 3, 6]) {
        const [most, least] = [
          roundToLimit(value, digits, "at most"),
          roundToLimit(value, digits, "at least"),
        ];
        const step = 10 ** (Math.floor(Math.log10(value)) - digits + 1);
        expect(most).toBeLessThanOrEqual(value);
        expect(least).toBeGreaterThanOrEqual(value);
        expect(value - most).toBeLessThan(step);
        expect(least - value).toBeLessThan(step);
        expect(formatLimit(value, digits, "at most")).toBe(formatNumber(most, digits));
      }
  });
  it("writes what formatNumber would round past the limit on its safe side", () => {
    expect([formatNumber(467.3, 2), formatLimit(467.3, 2, "at most")]).toEqual(["470", "460"]);
    expect([formatNumber(462, 2), formatLimit(462, 2, "at least")]).toEqual(["460", "470"]);
    expect(formatLimit(99.96, 2, "at least")).toBe("100");
  });
  it("leaves a limit of so few digits as it is, though it came through a conversion", () => {
    for (const whole of [340, 0.35, 110, 29, 1e5, 0.0007]) {
      const there = lbfFoot(whole).in("lbfFoot");
      expect(formatLimit(there, 2, "at most")).toBe(formatNumber(whole));
      expect(formatLimit(there, 2, "at least")).toBe(formatNumber(whole));
    }
  });
  it("cuts below nothing too: at most −1.23 is −1.3", () => {
    expect(formatLimit(-1.23, 2, "at most")).toBe("−1.3");
    expect(formatLimit(0, 2, "at most")).toBe("0");
  });
  it("refuses digits that are no whole number from 1 to 15", () => {
    for (const digits of [0, 2.5, 16, Number.NaN])
      expect(() => formatLimit(1, digits, "at most")).toThrow(/significant must be a whole number/);
  });
});
