import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../kernel-helpers/quantity/index.js";
import { fitTaper, profileOf } from "../../kernel-helpers/survey/index.js";
import { stationOfDiameter } from "../../kernel-helpers/survey/station-of-diameter.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";
import { shaftTable } from "../support/shaft-table.js";

const uncertainties = { readingUncertainty: inch(0.0002), stationUncertainty: inch(0.001) };
const taperOf = (seed: number | undefined) => {
  const { normal } = seed === undefined ? { normal: () => 0 } : seededNoise(seed);
  const readings = Array.from({ length: 12 }, (_, i) => ({
    station: 0.5 * i,
    diameter: 2 + (0.5 * i) / 16 + 0.0002 * normal() + (0.001 / 16) * normal(),
  }));
  return fitTaper(profileOf(shaftTable(readings), uncertainties));
};

describe("stationOfDiameter(taper, diameter)", () => {
  it("puts a diameter where the line has it: 1 in 16, so 1/8 in on diameter lies 2 in along", () => {
    const station = stationOfDiameter(taperOf(undefined), measured(inch(2.125), thou(0)));
    expectClose(station.value.in("inch"), 2, { rel: 1e-9, because: "exact by the taper" });
  });
  it("gives back the ends' own stations, with the uncertainty of the end's diameter over the taper", () => {
    const taper = taperOf(3);
    const { station, diameter } = taper.largeEnd;
    const back = stationOfDiameter(taper, measured(diameter.value, thou(0)));
    expectClose(back.value.si, station.si, { rel: 1e-12, because: "identity" });
    expectClose(back.standardUncertainty.si, diameter.standardUncertainty.si / taper.taper.value, {
      rel: 1e-9,
      because: "identity",
    });
  });
  it("turns 1 thou on a 1:16 taper into 16 thou along the axis", () => {
    const u = (thousandths: number): number =>
      stationOfDiameter(
        taperOf(undefined),
        measured(inch(2.34375), thou(thousandths)),
      ).standardUncertainty.in("thou");
    expectClose(Math.sqrt(u(1) ** 2 - u(0) ** 2), 16, { rel: 1e-6, because: "the taper's ratio" });
  });
  it("covers the true station at its stated confidence", () => {
    const covered = Array.from({ length: 300 }, (_, seed) => {
      const station = stationOfDiameter(taperOf(seed + 1), measured(inch(2.40625), thou(0)));
      return Math.abs(station.value.in("inch") - 6.5) <= 1.96 * station.standardUncertainty.in("inch");
    }).filter(Boolean).length;
    // Beyond the last reading, where taking the end and the slope as independent would cover 89 %.
    // The chance scatter of a count out of 300 at 95 % is 1.3 %.
    expectClose(covered / 300, 0.95, { abs: 0.03, because: "a little over twice that scatter" });
  });
  it("refuses a cylinder", () => {
    const flat = fitTaper(
      profileOf(shaftTable([0, 1, 2, 3].map((station) => ({ station, diameter: 2 }))), uncertainties),
    );
    expect(() => stationOfDiameter(flat, measured(inch(2), thou(1)))).toThrow(/must differ from 0/);
  });
});
