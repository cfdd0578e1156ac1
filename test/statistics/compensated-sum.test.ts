import { describe, expect, it } from "vitest";
import { compensatedSum } from "../../kernel-helpers/statistics/index.js";

describe("compensatedSum(values)", () => {
  it("keeps what plain addition loses", () => {
    expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
    expect([1, 1e100, 1, -1e100].reduce((a, b) => a + b, 0)).toBe(0);
  });
  it("sums a million tenths to the last digit", () => {
    expect(compensatedSum(new Array<number>(1e6).fill(0.1))).toBe(100000);
  });
  it("is 0 for nothing", () => {
    expect(compensatedSum([])).toBe(0);
  });
});
