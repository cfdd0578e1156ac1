import { describe, expect, it } from "vitest";
import { deltaC, inch, lbf, micrometre, mm, perC, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  fromCertificate,
  fromLimits,
  fromReadings,
  fromResolution,
  fromTemperatureSwing,
} from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-13, because: "a few roundings" };

describe("fromReadings(readings)", () => {
  // J. E. Shigley, R. G. Budynas, Mechanical Engineering Design, 9th edition, table 8-14: preload of ten lubricated
  // bolts at 90 N·m; printed mean 34.18 kN and standard deviation 2.88 kN.
  const preloads = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
  it("gives the printed mean and standard deviation of ten preloads, the latter over √10", () => {
    const { value, standardUncertainty, degreesOfFreedom } = fromReadings(preloads);
    expectClose(value, 34.18, { abs: 5e-3, because: "printed to 4 digits" });
    expectClose(standardUncertainty * Math.sqrt(10), 2.88, { abs: 5e-3, because: "printed to 3 digits" });
    expect(degreesOfFreedom).toBe(9);
  });

  it("does not lose digits to a large common part, and scales with the readings", () => {
    const plain = fromReadings(preloads.map((v) => v / 1024));
    const shifted = fromReadings(preloads.map((v) => 4096 + v / 1024));
    expectClose(shifted.standardUncertainty, plain.standardUncertainty, {
      rel: 1e-9,
      because: "the readings themselves keep 12 digits behind 4096",
    });
    const lengths = fromReadings([thou(1), thou(3), thou(5)]);
    expectClose(lengths.standardUncertainty.in("thou"), 2 / Math.sqrt(3), rounding);
    expect(lengths.value.writtenIn).toBe("thou");
  });

  it.each([
    ["one reading", [inch(1)], /fromReadings: two or more readings are needed, got 1/],
    ["none", [], /two or more readings are needed, got 0/],
    ["no scatter", [inch(1), inch(1)], /fromReadings: readings must differ \(else take the resolution/],
    ["two kinds", [inch(1), lbf(1)], /fromReadings: readings must be of one kind/],
    ["NaN", [1, Number.NaN], /fromReadings: readings\[1\] must be .* got NaN/],
  ])("rejects %s", (_, readings, message) => {
    expect(() => fromReadings<never>(readings as never[])).toThrow(message);
  });
});

describe("fromResolution(reading, step)", () => {
  // JCGM 100:2008, F.2.2.1: u = 0.29 of the resolution.
  it("has 0.29 of the step", () => {
    expectClose(fromResolution(5, 1).standardUncertainty, 0.29, {
      abs: 5e-3,
      because: "printed to 2 digits",
    });
    expect(fromResolution(5, 1).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
  });
  it("is what limits of half a step give", () => {
    expectClose(
      fromResolution(inch(1), thou(0.1)).standardUncertainty.si,
      fromLimits(inch(1), thou(0.05)).standardUncertainty.si,
      rounding,
    );
  });
  it("rejects a step of 0, and of another kind", () => {
    expect(() => fromResolution(inch(1), inch(0))).toThrow(
      /fromResolution: step must be more than 0, got 0 in/,
    );
    expect(() => fromResolution(inch(1), lbf(1) as never)).toThrow(
      /step must be of the kind of 1 in, got 1 lbf/,
    );
  });
});

describe("fromCertificate(value, expanded, statement)", () => {
  // JCGM 100:2008, 4.3.3 (240 µg at three standard deviations: 80 µg) and 4.3.4 (129 µΩ at 99 %: 50 µΩ).
  it("gives the printed standard uncertainties of a mass and of a resistor", () => {
    expectClose(fromCertificate(1000.000325, 240e-6, { k: 3 }).standardUncertainty, 80e-6, rounding);
    expectClose(fromCertificate(10.000742, 129e-6, { coverage: 0.99 }).standardUncertainty, 50e-6, {
      abs: 0.5e-6,
      because: "printed to 2 digits",
    });
  });
  it("takes the factor of Student's t where degrees of freedom are stated", () => {
    // t(95 %, 10) = 2.228, JCGM 100 table G.2.
    const { standardUncertainty, degreesOfFreedom } = fromCertificate(mm(1), micrometre(2.228), {
      coverage: 0.95,
      degreesOfFreedom: 10,
    });
    expectClose(standardUncertainty.in("micrometre"), 1, { rel: 3e-4, because: "table printed to 4 digits" });
    expect(degreesOfFreedom).toBe(10);
  });
  it("rejects k = 0, a coverage of 1 and no uncertainty", () => {
    expect(() => fromCertificate(1, 1, { k: 0 })).toThrow(/fromCertificate: k must be more than 0, got 0/);
    expect(() => fromCertificate(1, 1, { coverage: 1 })).toThrow(/coverage must lie between 0 and 1/);
    expect(() => fromCertificate(1, -1, { k: 2 })).toThrow(
      /expanded uncertainty must be more than 0, got -1/,
    );
  });
});

describe("fromLimits(value, halfWidth, doubt)", () => {
  // JCGM 100:2008, 4.3.7 example 1: α within 16.40 and 16.92: u = 0.15e-6 per °C; H.1.6: 10 % gives ν = 50, 50 % ν = 2.
  it("gives the printed uncertainty of copper's expansion, and degrees of freedom of doubtful limits", () => {
    expectClose(fromLimits(16.66, 0.26).standardUncertainty, 0.15, {
      abs: 5e-3,
      because: "printed to 2 digits",
    });
    expect(fromLimits(perC(0), perC(1e-6), 0.1).degreesOfFreedom).toBe(50);
    expect(fromLimits(deltaC(0), deltaC(0.05), 0.5).degreesOfFreedom).toBe(2);
    expect(fromLimits(1, 1).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
  });
  it("rejects a doubt outside 0 to 1", () => {
    expect(() => fromLimits(1, 1, 1.5)).toThrow(/fromLimits: doubt must be from 0 to 1, got 1.5/);
    expect(() => fromLimits(1, 0)).toThrow(/fromLimits: half width must be more than 0, got 0/);
  });
});

describe("fromTemperatureSwing(amplitude)", () => {
  // JCGM 100:2008, H.1.3.4: ±0.5 °C gives 0.35 °C.
  it("gives the printed 0.35 °C of a swing of 0.5 °C", () => {
    const { value, standardUncertainty } = fromTemperatureSwing(deltaC(0.5));
    expect(value.si).toBe(0);
    expectClose(standardUncertainty.in("deltaC"), 0.35, { abs: 5e-3, because: "printed to 2 digits" });
  });
  it("rejects what is no temperature difference, and 0", () => {
    expect(() => fromTemperatureSwing(mm(1) as never)).toThrow(
      /fromTemperatureSwing: amplitude must be a temperature difference .* got 1 mm/,
    );
    expect(() => fromTemperatureSwing(deltaC(0))).toThrow(
      /fromTemperatureSwing: amplitude must be more than 0/,
    );
  });
});
