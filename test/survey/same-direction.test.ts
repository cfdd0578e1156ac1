import { describe, expect, it } from "vitest";
import { degree } from "../../kernel-helpers/quantity/index.js";
import { sameDirection } from "../../kernel-helpers/survey/same-direction.js";

describe("sameDirection(a, b)", () => {
  it("is true for the same angle and for whole turns more or less, in spite of rounding", () => {
    for (const turns of [0, 1, -1, 5])
      expect(sameDirection(degree(37.3).si, degree(37.3 + 360 * turns).si)).toBe(true);
  });
  it("is false for opposite directions and for an arc second", () => {
    expect(sameDirection(0, Math.PI)).toBe(false);
    expect(sameDirection(degree(90).si, degree(90 + 1 / 3600).si)).toBe(false);
  });
});
