import { describe, expect, it } from "vitest";
import { degree } from "../../../kernel-helpers/quantity/index.js";
import { angleText, degreesMinutesSeconds } from "../../../kernel-helpers/view/results/angle-text.js";

describe("degreesMinutesSeconds(angle)", () => {
  // Source: a taper of 1 : 16 (3/4 in per foot) has a half angle of 1° 47′ 24″ (pipe thread ASME B1.20.1, from memory).
  it("returns the printed half angle of a pipe thread", () => {
    const half = degree((Math.atan(1 / 32) * 180) / Math.PI);
    expect(degreesMinutesSeconds(half)).toBe("1° 47′ 24″");
  });

  it("carries seconds into minutes and minutes into degrees", () => {
    expect(degreesMinutesSeconds(degree(1.99999))).toBe("2° 0′ 0″");
    expect(degreesMinutesSeconds(degree(0.0166665))).toBe("0° 1′ 0″");
  });

  it("keeps the sign of an angle below one degree, and gives zero none", () => {
    expect(degreesMinutesSeconds(degree(-0.5))).toBe("−0° 30′ 0″");
    expect(degreesMinutesSeconds(degree(-1e-9))).toBe("0° 0′ 0″");
  });

  it("gives decimals of a second where asked", () => {
    expect(degreesMinutesSeconds(degree(0.000125), 1)).toBe("0° 0′ 0.5″");
  });
});

describe("angleText(angle)", () => {
  it("is empty where the angle is not known", () => {
    expect(angleText(undefined)).toBe("");
    expect(angleText(degree(90))).toBe("90°");
  });
});
