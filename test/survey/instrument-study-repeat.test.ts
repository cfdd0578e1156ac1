import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { instrumentFrom, repeatabilityStudy } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { lengthTable } from "../support/length-table.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

const readings = (values: readonly number[], unit = "thou"): ReturnType<typeof lengthTable> =>
  lengthTable(
    `reading [${unit}]`,
    values.map((value) => [value]),
  );

describe("repeatabilityStudy(table, options)", () => {
  it("gives the published mean and standard deviations of GUM 4.4.3", () => {
    const study = repeatabilityStudy(readings(readReference("gum-4-4-3-temperatures").numbers("t"), "mm"));
    expectClose(study.mean.value.in("mm"), 100.145, { abs: 5e-4, because: "printed to 3 decimals" });
    expectClose(study.standardDeviation.in("mm"), 1.489, { abs: 5e-4, because: "printed to 3 decimals" });
    expectClose(study.mean.standardUncertainty.in("mm"), 0.333, {
      abs: 5e-4,
      because: "printed to 3 decimals",
    });
    expect(study.degreesOfFreedom).toBe(19);
  });
  it("finds the drift of readings sorted by size, and none where low and high take turns", () => {
    const t = readReference("gum-4-4-3-temperatures").numbers("t");
    expect(repeatabilityStudy(readings(t, "mm")).drift!.real).toBe(true);
    const turns = t.map((_, i) => t[i % 2 === 0 ? i : 20 - i]!);
    expect(repeatabilityStudy(readings(turns, "mm")).drift!.real).toBe(false);
  });
  it("covers the true standard deviation in about 95 of 100, and sees drift where none is in about 5, seeded", () => {
    const noise = seededNoise(61);
    let [covered, drifts] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const study = repeatabilityStudy(readings(Array.from({ length: 8 }, () => 10 + noise.normal())));
      if (study.interval!.low <= thou(1) && thou(1) <= study.interval!.high) covered += 1;
      if (study.drift!.real) drifts += 1;
    }
    // Binomial: 380 and 20, ± 3·4.4 of 400.
    expect(covered).toBeGreaterThan(366);
    expect(covered).toBeLessThan(394);
    expect(drifts).toBeGreaterThan(6);
    expect(drifts).toBeLessThan(34);
  });
  it("says where the step read off hides the scatter, and reckons with the step", () => {
    const study = repeatabilityStudy(readings([2, 2, 2, 2, 2]), { resolution: thou(1) });
    expect(study.resolutionLimited).toBe(true);
    expect(study.interval).toBeUndefined();
    expectClose(study.readingUncertainty.in("thou"), 1 / Math.sqrt(12), {
      rel: 1e-12,
      because: "rounding only",
    });
    expectClose(study.mean.standardUncertainty.in("thou"), 1 / Math.sqrt(12), {
      rel: 1e-12,
      because: "rounding only",
    });
    expect(study.warnings.join(" ")).toMatch(/limited by the step read off, 1 thou/);
  });
  it("compares with what rebuild.json states of the instrument", () => {
    const entry = { title: "micrometer", resolution: "0.1 thou", repeatability: "0.2 thou" };
    const instruments = { mic: instrumentFrom("mic", entry) };
    const of = (scale: number): ReturnType<typeof repeatabilityStudy> =>
      repeatabilityStudy(
        lengthTable(
          "reading [thou]",
          [1, 4, 2, 5, 3, 2, 4, 1, 3, 5].map((v) => [v * scale]),
          { remarks: ["instrument reading: mic"], instruments },
        ),
      );
    expect(of(0.13).asStated).toBe(true);
    expect(of(1).asStated).toBe(false);
    expect(of(1).warnings.join(" ")).toMatch(/stated in rebuild\.json, 0\.2 thou, lies outside/);
    expect(of(1).text).toMatch(/repeat to 1\.5 thou .* between 1\.0 thou and 2\.7 thou/);
  });
  it("rejects too few readings, no scatter without a step, and a step of nothing", () => {
    expect(() => repeatabilityStudy(readings([1, 2]))).toThrow(
      /at least 3 readings of one place are needed, got 2 in column ".*" of .*csv; 10 are handy/,
    );
    expect(() => repeatabilityStudy(readings([1, 1, 1]))).toThrow(
      /all alike tell no scatter unless the step read off is known, got 3 alike/,
    );
    expect(() => repeatabilityStudy(readings([1, 2, 3]), { resolution: inch(0) })).toThrow(
      /resolution must be a length greater than 0, got 0 in/,
    );
    expect(() => repeatabilityStudy(readings([1, 2, 3]), { column: "bore" })).toThrow(
      /must have one column "bore"/,
    );
  });
});
