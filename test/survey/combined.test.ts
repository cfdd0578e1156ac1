import { describe, expect, it } from "vitest";
import { combined } from "../../kernel-helpers/survey/combined.js";
import { scattersTooMuch, scatterWarning } from "../../kernel-helpers/survey/scatter-test.js";
import { expectClose } from "../support/expect-close.js";

describe("combined(uReadings, dof, uCommon)", () => {
  it("adds the squares and stretches the degrees of freedom (Welch–Satterthwaite)", () => {
    const { u, degreesOfFreedom } = combined(3, 5, 4);
    expect(u).toBe(5);
    expectClose(degreesOfFreedom, 5 * (5 / 3) ** 4, { rel: 1e-14, because: "GUM G.2b with one finite term" });
  });
  it("keeps what it is where nothing is common, and Infinity where all is known", () => {
    expect(combined(3, 5, 0)).toEqual({ u: 3, degreesOfFreedom: 5 });
    expect(combined(3, Number.POSITIVE_INFINITY, 4).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    expect(combined(0, 5, 4)).toEqual({ u: 4, degreesOfFreedom: Number.POSITIVE_INFINITY });
  });
});

describe("scattersTooMuch(chiSquare, degreesOfFreedom)", () => {
  // Source: chi-square table, upper 1 % point: 23.209 with 10 degrees of freedom, 6.635 with 1.
  it("turns at the printed 1 % point", () => {
    expect(scattersTooMuch(23.21, 10)).toBe(true);
    expect(scattersTooMuch(23.208, 10)).toBe(false);
    expect(scattersTooMuch(6.636, 1)).toBe(true);
    expect(scattersTooMuch(6.634, 1)).toBe(false);
  });
  it("says nothing without a degree of freedom", () => {
    expect(scattersTooMuch(100, 0)).toBe(false);
  });
  it("is warned of in words of the trade", () => {
    expect(scatterWarning(2.345)).toMatch(
      /scatter 2\.3 times more .* rough surface, dirt, or more than one hand/,
    );
  });
});
