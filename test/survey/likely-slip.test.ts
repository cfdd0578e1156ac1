import { describe, expect, it } from "vitest";
import { decimalsWritten, likelySlip, type Slip } from "../../kernel-helpers/survey/likely-slip.js";

describe("likelySlip(slip)", () => {
  const slip = (read: number, expected: number, more: Partial<Slip> = {}): string =>
    likelySlip({ unit: "inch", read, expected, u: 0.00015, decimals: 4, ...more });

  it.each([
    [24.373, 2.4372, "ten times too large: 2.4373 in?"],
    [0.24373, 2.4372, "ten times too small: 2.4373 in?"],
    [2.4123, 2.4372, "one turn of the thimble (0.025 in) short: 2.4373 in?"],
    [2.4623, 2.4372, "one turn of the thimble (0.025 in) over: 2.4373 in?"],
    [2.3873, 2.4372, "two turns of the thimble (0.050 in) short: 2.4373 in?"],
    [2.4382, 2.4372, "one thou over: 2.4372 in?"],
    [2.4733, 2.4374, "two digits swapped: 2.4373 in?"],
    [4.2373, 2.4372, "two digits swapped: 2.4373 in?"],
    [2.8373, 2.4372, "one digit wrong: 2.4373 in?"],
    [2.4296, 2.4372, ""],
  ])("of %f where %f was expected says: %s", (read, expected, words) => {
    expect(slip(read, expected)).toBe(words);
  });

  it("names no slip that misses by more than 3 standard uncertainties", () => {
    const turn = "one turn of the thimble (0.025 in) short: 2.4377 in?";
    expect(slip(2.4127, 2.4373)).toBe(turn); // 0.0004 < 3 u
    expect(slip(2.4128, 2.4373)).toBe(""); // 0.0005 > 3 u
  });

  it("calls no digit wrong where any reading could be mended so", () => {
    // One step of the third decimal is 0.001 in = 2 u: some digit always fits.
    expect(slip(2.433, 2.4402, { u: 0.0005 })).toBe("");
  });

  it("knows the metric thimble", () => {
    expect(slip(60.48, 59.98, { unit: "mm", u: 0.005, decimals: 2 })).toBe(
      "one turn of the thimble (0.5 mm) over: 59.98 mm?",
    );
  });
});

describe("decimalsWritten(readings)", () => {
  it("is what the longest reading needs", () => {
    expect(decimalsWritten([2.4373, 2.5, 2])).toBe(4);
    expect(decimalsWritten([60, 61])).toBe(0);
    expect(decimalsWritten([0.1 + 0.2])).toBe(1); // not the 17 digits of rounding
  });
});
