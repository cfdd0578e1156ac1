import { describe, expect, it } from "vitest";
import { mm } from "../../kernel-helpers/quantity/index.js";
import { calibrationLine, correctedReading } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { lengthTable } from "../support/length-table.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("calibrationLine(table, options)", () => {
  // GUM H.3: correction b(t) = reference - reading; here the error is reading - reference, and degrees are taken as mm.
  const { numbers } = readReference("gum-h3-thermometer");
  const corrections = numbers("b_k");
  const rows = numbers("t_k").map((t, k) => [t, t + corrections[k]!]);
  const table = lengthTable("reading [mm], reference [mm]", rows);
  const line = calibrationLine(table);
  it("gives the published line of GUM H.3", () => {
    const at20 = correctedReading(line, mm(20));
    expectClose(-at20.error.value.in("mm"), -0.1712, { abs: 5e-5, because: "4 decimals" });
    expectClose(at20.error.standardUncertainty.in("mm"), 0.0029, { abs: 5e-5, because: "4 decimals" });
    expectClose(-line.line.slope, 0.00218, { abs: 5e-6, because: "5 decimals" });
    expectClose(line.line.uSlope, 0.00067, { abs: 5e-6, because: "5 decimals" });
    expectClose(line.line.residualStandardDeviation! * 1000, 0.0035, { abs: 5e-5, because: "4 decimals" });
  });
  it("gives its published correction at 30, with uncertainty, and warns that it lies beyond the range", () => {
    const at30 = correctedReading(line, mm(30));
    expectClose(-at30.error.value.in("mm"), -0.1494, { abs: 5e-5, because: "4 decimals" });
    expectClose(at30.error.standardUncertainty.in("mm"), 0.0041, { abs: 5e-5, because: "4 decimals" });
    expectClose(at30.error.degreesOfFreedom, 9, { rel: 1e-12, because: "n - 2" });
    expect(at30.warnings.join(" ")).toMatch(/beyond the range calibrated, 21\.521 mm to 26\.511 mm/);
    expect(correctedReading(line, mm(24)).warnings).toEqual([]);
  });
  it("adds what is common and the reading's own uncertainty in squares", () => {
    const common = calibrationLine(table, { common: mm(0.003) });
    const [bare, both] = [correctedReading(line, mm(25)), correctedReading(common, mm(25), mm(0.004))];
    const u = (m: { standardUncertainty: { in(u: "mm"): number } }): number => m.standardUncertainty.in("mm");
    expectClose(u(both.value) ** 2, u(bare.error) ** 2 + 0.003 ** 2 + 0.004 ** 2, {
      rel: 1e-9,
      because: "rounding only",
    });
    expect(both.value.degreesOfFreedom).toBeGreaterThan(9);
    expectClose(both.value.value.in("mm") + both.error.value.in("mm"), 25, {
      rel: 1e-12,
      because: "rounding only",
    });
  });
  it("gives back a line put in, and covers it in about 95 of 100, seeded", () => {
    const noise = seededNoise(81);
    const sizes = [0, 5, 10, 15, 20, 25];
    let covered = 0;
    for (let i = 0; i < 300; i++) {
      const noisy = sizes.map((size) => [size + 0.01 + 0.001 * size + 0.002 * noise.normal(), size]);
      const found = calibrationLine(lengthTable("reading [mm], reference [mm]", noisy), {
        uncertainty: mm(0.002),
      });
      const reading = 12 + 0.01 + 0.012;
      const { value } = correctedReading(found, mm(reading));
      if (Math.abs(value.value.in("mm") - 12) < 1.96 * value.standardUncertainty.in("mm")) covered += 1;
    }
    // Binomial: 285 ± 3·3.8 of 300.
    expect(covered).toBeGreaterThan(273);
    expect(covered).toBeLessThan(297);
  });
  it("widens where the gauges scatter more than stated", () => {
    const found = calibrationLine(table, { uncertainty: mm(0.0001) });
    expect(found.warnings.join(" ")).toMatch(/scatter .* times more than the instrument states/);
    expectClose(found.line.uSlope, line.line.uSlope, { rel: 1e-9, because: "the scatter alone judges" });
  });
  it("rejects too few gauges and impossible uncertainties", () => {
    const two = lengthTable("reading [mm], reference [mm]", [
      [1, 1],
      [2, 2],
    ]);
    expect(() => calibrationLine(two)).toThrow(
      /calibrationLine: at least 3 gauges are needed \(2 with \{ uncertainty \}\), got 2 in column "reading \[.*\]" of .*csv/,
    );
    expect(() => calibrationLine(table, { uncertainty: mm(0) })).toThrow(
      /uncertainty must be a length greater than 0, got 0 mm/,
    );
    expect(() => calibrationLine(table, { common: mm(-1) })).toThrow(/common must be 0 or more/);
    expect(() => correctedReading(line, mm(25), mm(-1))).toThrow(/correctedReading: u must be 0 or more/);
    const alike = lengthTable("reading [mm], reference [mm]", [
      [1, 1],
      [1, 1],
      [1, 2],
    ]);
    expect(() => calibrationLine(alike)).toThrow(/gauges of two sizes at least are needed/);
  });
});
