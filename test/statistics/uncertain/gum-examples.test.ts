import { describe, expect, it } from "vitest";
import {
  deltaC,
  measured,
  micrometre,
  mm,
  perC,
  quantityFromSi,
} from "../../../kernel-helpers/quantity/index.js";
import {
  type Budget,
  budget,
  correlated,
  coverageFactor,
  fromCertificate,
  fromLimits,
  fromTemperatureSwing,
  leastSquares,
  uncertain,
} from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";
import { readReference } from "../../support/read-reference.js";

const nm = (value: number) => quantityFromSi("length", value * 1e-9);

// JCGM 100:2008 (GUM), H.1: a gauge block of 50 mm against a standard. l = ls + d − ls(δα·θ + αs·δθ).
function gaugeBlock(): Budget {
  const standard = uncertain(
    fromCertificate(mm(50.000623), micrometre(0.075), { k: 3, degreesOfFreedom: 18 }),
    "standard",
  );
  const scatter = uncertain(measured(nm(215), nm(5.8), 24), "repeated observations");
  const random = uncertain(measured(nm(0), nm(3.9), 5), "comparator, random");
  const systematic = uncertain(measured(nm(0), nm(6.7), 8), "comparator, systematic");
  const expansion = uncertain(fromLimits(perC(11.5e-6), perC(2e-6)), "expansion of the standard");
  const unlike = uncertain(fromLimits(perC(0), perC(1e-6), 0.1), "difference of expansion");
  const mean = uncertain(measured(deltaC(-0.1), deltaC(0.2)), "mean temperature");
  const swing = uncertain(fromTemperatureSwing(deltaC(0.5)), "swing of temperature");
  const apart = uncertain(fromLimits(deltaC(0), deltaC(0.05), 0.5), "difference of temperature");
  const difference = scatter.plus(random).plus(systematic);
  const heat = unlike.times(mean.plus(swing)).plus(expansion.times(apart));
  return budget(standard.plus(difference).minus(standard.times(heat)), { coverage: 0.99 });
}

describe("the gauge block of GUM H.1", () => {
  const shown = gaugeBlock();
  const byName = new Map(shown.rows.map((row) => [row.source, row]));
  const nanometres = (name: string): number => Number(byName.get(name)!.contribution) * 1e9;

  it("has the length printed, 50.000 838 mm", () => {
    expectClose(Number(shown.value) * 1e3, 50.000838, { abs: 5e-7, because: "printed to 1 nm" });
  });

  it.each([
    ["standard", 25, 0.5],
    ["difference of expansion", 2.9, 0.05],
    ["difference of temperature", 16.6, 0.05],
  ])("%s contributes %d nm", (name, printed, abs) => {
    expectClose(nanometres(name), printed, { abs, because: "half of the last digit printed" });
  });

  it("the comparator contributes 9.7 nm in three parts", () => {
    const parts = ["repeated observations", "comparator, random", "comparator, systematic"].map(nanometres);
    expectClose(Math.hypot(...parts), 9.7, { abs: 0.05, because: "half of the last digit printed" });
  });

  it("the mean temperature, its swing and the expansion contribute nothing: they meet factors of 0", () => {
    for (const name of ["mean temperature", "swing of temperature", "expansion of the standard"])
      expect(byName.has(name)).toBe(false);
    expect(shown.rows).toHaveLength(6);
  });

  it("together 32 nm, 16 degrees of freedom once rounded down, 93 nm at 99 %", () => {
    const u = Number(shown.standardUncertainty) * 1e9;
    expectClose(u, 32, { abs: 0.5, because: "printed to 1 nm" });
    // By hand from the inputs printed, in nm: δα by ls·θ, δθ by ls·α (rectangular: half the width over √3).
    const ofExpansion = (50.000623e6 * 0.1 * 1e-6) / Math.sqrt(3);
    const ofTemperature = (50.000623e6 * 11.5e-6 * 0.05) / Math.sqrt(3);
    expectClose(u, Math.hypot(25, 5.8, 3.9, 6.7, ofExpansion, ofTemperature), {
      rel: 1e-9,
      because: "the law of propagation by hand; derivatives are exact",
    });
    expectClose(shown.degreesOfFreedom, 16.7, { rel: 1e-2, because: "printed from rounded contributions" });
    expect(Math.floor(shown.degreesOfFreedom)).toBe(16);
    expectClose(coverageFactor(0.99, 16), 2.92, { abs: 5e-3, because: "printed to 3 digits" });
    // Printed as 2.92 × 32 nm; unrounded 2.92 × 31.7 nm.
    expectClose(coverageFactor(0.99, Math.floor(shown.degreesOfFreedom)) * u, 93, {
      abs: 1,
      because: "printed from u rounded up to 32 nm",
    });
  });
});

describe("the thermometer of GUM H.3", () => {
  const reference = readReference("gum-h3-thermometer");
  const readings = reference.numbers("t_k");
  const corrections = reference.numbers("b_k");
  const fit = leastSquares(
    readings.map((t) => [1, t - 20]),
    corrections,
  );
  const [y1, y2] = fit.coefficients as [number, number];
  const [s1, s2] = fit.standardUncertainties as [number, number];
  const r = fit.covariance[0]![1]! / (s1 * s2);
  const printed = "half of the last digit printed";

  it("has the line printed, with its correlation", () => {
    expectClose(y1, -0.1712, { abs: 5e-5, because: printed });
    expectClose(y2, 0.00218, { abs: 5e-6, because: printed });
    expectClose(s1, 0.0029, { abs: 5e-5, because: printed });
    expectClose(s2, 0.00067, { abs: 5e-6, because: printed });
    expectClose(r, -0.93, { abs: 5e-4, because: printed });
  });

  it("carries it to 30 °C: −0.1494 °C, u = 0.0041 °C, 9 degrees of freedom", () => {
    const { intercept, slope } = correlated(
      { intercept: measured(y1, s1, fit.degreesOfFreedom), slope: measured(y2, s2, fit.degreesOfFreedom) },
      [["intercept", "slope", r]],
    );
    const at30 = intercept.plus(slope.times(30 - 20));
    expectClose(at30.value, -0.1494, { abs: 5e-5, because: printed });
    expectClose(at30.standardUncertainty, 0.0041, { abs: 5e-5, because: printed });
    expectClose(at30.degreesOfFreedom, 9, { rel: 1e-12, because: "both come from one fit" });
    const { rows, isCorrelated } = budget(at30);
    expect(isCorrelated).toBe(true);
    expectClose(
      rows.reduce((sum, { share }) => sum + share, 0),
      1,
      { rel: 1e-12, because: "shares are parts of the whole" },
    );
  });
});
