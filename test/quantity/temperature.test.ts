import { inspect } from "node:util";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  degC,
  degF,
  deltaC,
  deltaF,
  inch,
  isTemperature,
  referenceTemperature,
  temperature,
  temperatureFromJson,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

// The kelvins carry 273.15, whose last place is 6e-14.
const because = "one rounding at 300 to 1000 K";

describe("degC(reading), degF(reading), temperature(reading, scale)", () => {
  // Fixed points of the scales by definition: NIST SP 811, 2008, 8.5 and B.8.
  it.each([
    [degF(32), "degC", 0],
    [degF(212), "degC", 100],
    [degF(68), "degC", 20],
    [degC(-40), "degF", -40],
    [degC(0), "kelvin", 273.15],
    [temperature(0, "kelvin"), "degF", -459.67],
  ] as const)("%s is on the scale %s: %d", (point, scale, reading) => {
    expectClose(point.in(scale), reading, { abs: 2e-13, because });
  });
  it("come back from every scale", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 2000, noNaN: true }),
        fc.constantFrom("degC", "degF"),
        (reading, scale) => {
          expectClose(temperature(reading, scale).in(scale), reading, { abs: 2e-12, because });
        },
      ),
    );
  });
  it("reject what is no temperature", () => {
    expect(() => degC(-274)).toThrow(/^temperature: must not be below absolute zero, got -0\.85/);
    expect(() => degF(Number.NaN)).toThrow(/^degF: reading must be a finite number, got NaN$/);
    expect(() => temperature(1, "rankine" as never)).toThrow(/^temperature: scale must be .* got rankine$/);
    expect(() => degC(1).in("rankine" as never)).toThrow(/^in: a temperature is read in/);
  });
});

describe("a temperature", () => {
  it("less another is a difference, which has no zero point", () => {
    const rise = degF(400).minus(degF(68));
    expect(String(rise)).toBe("332 °F (difference)");
    expectClose(rise.in("deltaC"), 332 / 1.8, { rel: 1e-12, because });
    expectClose(degC(100).minus(degC(0)).in("deltaF"), 180, { rel: 1e-12, because });
  });
  it("plus or minus a difference is a temperature", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 500, noNaN: true }), (step) => {
        const there = degF(70).plus(deltaF(step));
        expectClose(there.in("degF"), 70 + step, { abs: 2e-12, because });
        expectClose(there.minus(deltaF(step)).kelvin, degF(70).kelvin, { rel: 1e-15 * 4, because });
        expectClose(there.minus(degF(70)).si, deltaF(step).si, { abs: 2e-12, because });
      }),
    );
    expect(String(degC(20).plus(deltaF(18)))).toBe("30 °C");
  });
  it("is no difference: 20 °C is 68 °F, but a difference of 20 °C is one of 36 °F", () => {
    expectClose(degC(20).in("degF"), 68, { rel: 1e-14, because });
    expectClose(deltaC(20).in("deltaF"), 36, { rel: 1e-15, because: "one division" });
  });
  it("takes no other temperature in plus, and no length", () => {
    const untyped = degF(68) as unknown as { plus(x: unknown): unknown; minus(x: unknown): unknown };
    expect(() => untyped.plus(degF(1))).toThrow(/^plus: only a temperature difference .* got 1 °F$/);
    expect(() => untyped.plus(inch(1))).toThrow(/got 1 in$/);
    expect(() => untyped.minus(5)).toThrow(/^minus: .* got 5$/);
    expect(() => degC(0).minus(deltaC(300))).toThrow(/absolute zero/);
  });
  it("prints itself as written, in a text, a list and as plain tslab shows a last value", () => {
    expect(String(degF(68))).toBe("68 °F");
    expect(String(temperature(300, "kelvin"))).toBe("300 K");
    expect(inspect([degC(20.5)])).toBe("[ 20.5 °C ]");
    expect(("at " as unknown as number) + (degF(54) as unknown as number)).toBe("at 54 °F");
  });
  it("is frozen and compares with < and >", () => {
    expect(Object.isFrozen(degC(20))).toBe(true);
    expect(degF(69) > degC(20)).toBe(true);
    expect(degF(67) < degC(20)).toBe(true);
    expect(isTemperature(degC(1))).toBe(true);
    expect([1, inch(1), null].some(isTemperature)).toBe(false);
  });
});

describe("JSON.stringify(t), temperatureFromJson(json)", () => {
  it("keep the temperature to the last bit, and its scale", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 2000, noNaN: true }),
        fc.constantFrom("degC", "degF"),
        (reading, scale) => {
          const there = temperature(reading, scale);
          const back = temperatureFromJson(JSON.parse(JSON.stringify(there)));
          expect(back.kelvin).toBe(there.kelvin);
          expect(String(back)).toBe(String(there));
        },
      ),
    );
  });
  it("reject what is no temperature", () => {
    for (const broken of [null, {}, { dimension: "length", si: 1 }])
      expect(() => temperatureFromJson(broken as never)).toThrow(/^temperatureFromJson: a temperature has/);
    expect(() => temperatureFromJson({ dimension: "temperature", kelvin: 1, scale: "x" as never })).toThrow(
      RangeError,
    );
  });
});

describe("referenceTemperature", () => {
  // ISO 1:2022: 20 °C.
  it("is 20 °C and 68 °F exactly", () => {
    expect(referenceTemperature.kelvin).toBe(293.15);
    expect(degF(68).kelvin).toBe(293.15);
  });
});
