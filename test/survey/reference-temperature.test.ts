import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  degC,
  degF,
  deltaC,
  deltaF,
  inch,
  mm,
  perC,
  perF,
  type TemperatureDifference,
} from "../../kernel-helpers/quantity/index.js";
import {
  referenceTemperatureFactor,
  toReferenceTemperature,
} from "../../kernel-helpers/survey/reference-temperature.js";
import { expectClose } from "../support/expect-close.js";

const steel = perC(11.5e-6);
const bronze = perC(18e-6);
const none = perC(0);

describe("toReferenceTemperature(length, conditions)", () => {
  // Source: ISO 1:2022 (20 °C) with α = 11.5e-6 1/°C, by hand: 100 mm × 11.5e-6 × 5 = 5.75 µm.
  it("takes 5.75 µm off 100 mm of steel at 25 °C, read with a gauge that does not expand", () => {
    const result = toReferenceTemperature(mm(100), {
      temperature: degC(25),
      partExpansion: steel,
      instrumentExpansion: none,
    });
    expectClose(result.correction.in("micrometre"), -5.75, {
      rel: 1e-4,
      because: "second order is αΔT = 6e-5",
    });
    expectClose(result.length.value.in("mm"), 99.99425, { abs: 1e-6, because: "second order is 0.3 nm" });
  });
  // By hand: (18 − 11.5)e-6 × 10 × 100 mm = 6.5 µm.
  it("finds that 100 mm of bronze reads 6.5 µm long on a steel scale at 30 °C", () => {
    const { correction } = toReferenceTemperature(mm(100), {
      temperature: degC(30),
      partExpansion: bronze,
      instrumentExpansion: steel,
    });
    expectClose(correction.in("micrometre"), -6.5, { rel: 2e-4, because: "second order is αΔT = 1.8e-4" });
  });
  // Source: JCGM 100:2008 (GUM), H.1.2, equation H.2: l(1 + αθ) = l_S(1 + α_S θ_S), solved for l.
  it("puts the part at temperature in step with the instrument at temperature", () => {
    const [temperature, read] = [degC(-7), inch(2.4332)];
    const { length } = toReferenceTemperature(read, {
      temperature,
      partExpansion: bronze,
      instrumentExpansion: steel,
    });
    const [part, scale] = [length.value.si * (1 - 18e-6 * 27), read.si * (1 - 11.5e-6 * 27)];
    expectClose(part, scale, { rel: 1e-15, because: "the same product twice" });
  });
  it("changes nothing at 20 °C, which is 68 °F, nor where part and instrument expand alike", () => {
    for (const temperature of [degC(20), degF(68)])
      expectClose(
        toReferenceTemperature(mm(100), {
          temperature,
          partExpansion: bronze,
          instrumentExpansion: none,
        }).length.value.in("mm"),
        100,
        { rel: 2e-16, because: "68 °F is 20 °C but for the last binary digit" },
      );
    const alike = { temperature: degC(35), partExpansion: steel, instrumentExpansion: steel };
    expect(toReferenceTemperature(mm(100), alike).correction.si).toBe(0);
  });
  it("takes the difference of temperatures in degrees, not their readings: 54 °F is 14 °F below", () => {
    const { correction } = toReferenceTemperature(inch(10), {
      temperature: degF(54),
      partExpansion: perF(6.5e-6),
      instrumentExpansion: none,
    });
    expectClose(correction.in("inch"), 10 * 6.5e-6 * 14, {
      rel: 1e-4,
      because: "second order is αΔT = 9e-5",
    });
  });
  it("gives the uncertainty of ΔT: 2 °F standard make 10 in × 6.5e-6 × 2", () => {
    const { length } = toReferenceTemperature(inch(10), {
      temperature: degF(54),
      uncertainty: deltaF(2),
      partExpansion: perF(6.5e-6),
      instrumentExpansion: none,
    });
    expectClose(length.standardUncertainty.in("inch"), 130e-6, {
      rel: 2e-4,
      because: "second order is 2 αΔT",
    });
  });
  it("agrees with the change of the correction when the temperature is moved by a little", () => {
    const at = (
      celsius: number,
      uncertainty?: TemperatureDifference,
    ): ReturnType<typeof toReferenceTemperature> =>
      toReferenceTemperature(mm(1000), {
        temperature: degC(celsius),
        uncertainty,
        partExpansion: bronze,
        instrumentExpansion: steel,
      });
    const slope = (at(41).length.value.si - at(39).length.value.si) / 2;
    expectClose(at(40, deltaC(1)).length.standardUncertainty.si, Math.abs(slope), {
      rel: 1e-7,
      because: "a central difference of 2 °C loses (αΔT)², and digits of 1 m",
    });
    expect(at(40).length.standardUncertainty.si).toBe(0);
  });
  it("is proportional to the length, and undone by exchanging part and instrument", () => {
    const celsius = fc.double({ min: -50, max: 150, noNaN: true });
    const length = fc.double({ min: 1, max: 5000, noNaN: true });
    fc.assert(
      fc.property(celsius, length, (t, l) => {
        const there = { temperature: degC(t), partExpansion: bronze, instrumentExpansion: steel };
        const back = { temperature: degC(t), partExpansion: steel, instrumentExpansion: bronze };
        const once = toReferenceTemperature(mm(l), there).length.value;
        const because = "four roundings";
        expectClose(toReferenceTemperature(once, back).length.value.in("mm"), l, { rel: 1e-15, because });
        expectClose(toReferenceTemperature(mm(2 * l), there).length.value.si, 2 * once.si, {
          rel: 1e-15,
          because,
        });
      }),
    );
  });
  it("refuses a difference for a temperature, a temperature for an uncertainty, and what is missing", () => {
    const good = { temperature: degF(54), partExpansion: steel, instrumentExpansion: steel };
    const wrong =
      (change: object): (() => unknown) =>
      () =>
        toReferenceTemperature(mm(1), { ...good, ...change });
    expect(wrong({ temperature: deltaF(54) })).toThrow(
      /temperature must be a temperature \(degF, degC\), got 54 °F/,
    );
    expect(wrong({ uncertainty: degF(2) })).toThrow(
      /uncertainty must be a temperature difference \(deltaF, deltaC\)/,
    );
    expect(wrong({ partExpansion: undefined })).toThrow(/partExpansion must be a thermal expansion/);
    expect(wrong({ instrumentExpansion: 11.5e-6 })).toThrow(
      /instrumentExpansion must be a thermal expansion .* got 0\.0000115/,
    );
    expect(wrong({ uncertainty: deltaF(-1) })).toThrow(/uncertainty must be 0 or more/);
    expect(wrong({ temperature: degC(151) })).toThrow(/between −50 and 150 °C, got 151 °C/);
    expect(wrong({ temperature: degC(-51) })).toThrow(RangeError);
  });
});

describe("referenceTemperatureFactor(conditions)", () => {
  it("is the factor of every length", () => {
    const warm = {
      temperature: degC(30),
      uncertainty: deltaC(2),
      partExpansion: bronze,
      instrumentExpansion: steel,
    };
    const { value, standardUncertainty } = referenceTemperatureFactor(warm);
    const { length } = toReferenceTemperature(mm(250), warm);
    expect(length.value.si).toBe(0.25 * value);
    expect(length.standardUncertainty.si).toBe(0.25 * standardUncertainty);
  });
});
