import { describe, expect, it } from "vitest";
import {
  deltaC,
  inch,
  mm,
  newton,
  quantityFromSi,
  setUnitSystem,
} from "../../../kernel-helpers/quantity/index.js";
import { alike } from "../../../kernel-helpers/view/results/alike.js";
import {
  jointUnits,
  leastWarmerText,
  permittedText,
  spreadText,
} from "../../../kernel-helpers/view/results/joint-text.js";
import { shownUnits, sizeLimits, smallAtMost } from "../../../kernel-helpers/view/results/shown-units.js";
import { threeAtLeast, threeAtMost, threeDigits } from "../../../kernel-helpers/view/results/three-digits.js";

describe("limits as they are shown", () => {
  it("take both ends of what is permitted inwards: nothing between the figures shown is outside", () => {
    const limits = { smallest: inch(2.42361), largest: inch(2.42468) };
    expect(sizeLimits(limits, shownUnits("inch"))).toBe("2.4237 in to 2.4246 in");
    const whole = { smallest: mm(59.654), largest: mm(59.7) };
    expect(sizeLimits(whole, shownUnits("metric"))).toBe("59.654 mm to 59.700 mm");
    const clearance = { low: mm(0.08512), high: mm(0.11496) };
    expect(permittedText(clearance, "micrometre", 3)).toBe("85.2 to 114 µm");
  });
  it("cut down what must not be passed, and take up what must be reached or what a load may come to", () => {
    setUnitSystem("metric");
    try {
      expect(
        [threeDigits, threeAtMost, threeAtLeast].map((text) =>
          text(quantityFromSi("force", 1236.7, "newton")),
        ),
      ).toEqual(["1240 N", "1230 N", "1240 N"]);
      expect(threeAtLeast(newton(1231))).toBe("1240 N");
      expect(threeAtMost(newton(1230))).toBe("1230 N");
    } finally {
      setUnitSystem(undefined);
    }
    expect(smallAtMost(mm(0.0125678), shownUnits("metric"))).toBe("12.5 µm");
    expect(leastWarmerText(deltaC(86.51), jointUnits(mm(60)))).toBe("86.6 °C");
  });
});

describe("alike(texts, digits)", () => {
  it("gives the ends of a range and its middle as many digits as each was rounded to", () => {
    const warmer = { low: deltaC(45.02), middle: deltaC(66.03), high: deltaC(86.6) };
    expect(spreadText(warmer as never, "deltaC", 3)).toBe("45.0 to 86.6 °C, middle case 66.0");
    expect(alike(["0.3", "0.575"], 3)).toEqual(["0.300", "0.575"]);
    expect(alike(["0", "−0.5"], 2)).toEqual(["0.0", "−0.5"]);
  });
  it("adds no digit past them, and none to whole numbers", () => {
    expect(alike(["0.18", "28", "115"], 3)).toEqual(["0.18", "28.0", "115"]);
    expect(alike(["13", "56"], 2)).toEqual(["13", "56"]);
    expect(alike(["1.2×10⁻⁵", "0.5"], 2)).toEqual(["1.2×10⁻⁵", "0.5"]);
  });
});
