import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import {
  deepestBand,
  depthBudget,
  fitTaper,
  nextReadings,
  profileOf,
  surveyReport,
  taperBudget,
  type WearBands,
  wearBands,
} from "../../kernel-helpers/survey/index.js";
import { present } from "../../kernel-helpers/view/present.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";
import { lengthTable } from "../support/length-table.js";

const surveyed = (diameters: readonly number[], calibration = false): WearBands =>
  wearBands(
    {
      ...profileOf(
        lengthTable(
          "station [in], diameter [in]",
          diameters.map((diameter, i) => [i, diameter]),
        ),
        { readingUncertainty: thou(0.1), stationUncertainty: thou(10) },
      ),
      ...(calibration
        ? {
            commonUncertainty: thou(1),
            commonSources: [{ name: "setting of the micrometer", standardUncertainty: thou(1) }],
          }
        : {}),
    },
    { nominal: inch(2.4375), wornBeyond: thou(1) },
  );
const worn = [2.4374, 2.4375, 2.4374, 2.4375, 2.4331, 2.4332, 2.4332, 2.4331, 2.4374, 2.4375, 2.4374];
const text = (value: unknown): string => renderText(present(value)!).replace(/\s+/g, " ");

describe("surveyReport(wear)", () => {
  const wear = surveyed(worn);
  const report = surveyReport(wear);
  it("has a row for the worn band, each of its edges, and the diameter as made", () => {
    expect(report.rows.map(({ about }) => about)).toEqual(["depth", "edge", "edge", "diameter"]);
  });
  it("tells the band's own depth, the first line of its budget, and its first next reading", () => {
    const [depth] = report.rows;
    const band = deepestBand(wear);
    const [largest] = depthBudget(wear).rows;
    expect(depth!.value).toEqual(band.depth);
    expect([depth!.mostly, depth!.share]).toEqual([largest!.source, largest!.share]);
    expect(depth!.next).toEqual(nextReadings(wear, { about: "depth" }).readings[0]);
  });
  it("gives an edge between its two stations, and sends the reader to the middle of the gap", () => {
    const edge = report.rows[1]!;
    expect(edge.between!.low.in("inch")).toBeGreaterThan(3);
    expect(edge.between!.high.in("inch")).toBeLessThan(4);
    expect(edge.next!.station.in("inch")).toBeCloseTo(3.5, 9);
  });
  it("asks for a better setting, and for no reading, where the setting is most of it", () => {
    const [depth] = surveyReport(surveyed(worn, true)).rows;
    expect(depth!.mostly).toBe("setting of the micrometer");
    expect(depth!.next).toBeUndefined();
    expect(depth!.instead).toMatch(/set the instrument on a standard of known size/);
  });
  it("tells the diameter of a shaft that is not worn, and of one worn from end to end no diameter as made", () => {
    const sound = surveyReport(surveyed(worn.map(() => 2.4374)));
    expect(sound.rows.map(({ about }) => about)).toEqual(["diameter", "diameter"]);
    const gone = surveyReport(surveyed(worn.map((_, i) => 2.433 + (i % 2) / 10000)));
    expect(gone.rows.map(({ about }) => about)).toEqual(["depth"]);
  });
  it("shows each result with its unit, its interval and what to do", () => {
    expect(text(report)).toMatch(
      /band 2.*± .* thou.*read station 3\.5 in: takes 50 % of the uncertainty away/,
    );
  });
  it("rejects what is neither wear bands nor a taper", () => {
    expect(() => surveyReport(undefined as unknown as WearBands)).toThrow(
      /wear bands or a taper are wanted, got undefined/,
    );
  });
});

describe("surveyReport(taper)", () => {
  const table = lengthTable("station [in], diameter [in]", [
    [0, 0.78],
    [1, 0.8303],
    [2, 0.8804],
    [3, 0.9305],
    [4, 0.9809],
  ]);
  const taper = fitTaper(profileOf(table, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) }));
  it("has the taper with its budget's first line, and the end with the longest lever to read next", () => {
    const [row, ...more] = surveyReport(taper).rows;
    expect(more).toEqual([]);
    expect(row!.value).toEqual(taper.taper);
    expect(row!.mostly).toBe(taperBudget(taper).rows[0]!.source);
    expect([0, 4]).toContain(row!.next!.station.in("inch"));
  });
  it("has one interval in budget and result, also where the scatter seen is behind every source", () => {
    const { taper: value } = taper;
    expect(taperBudget(taper).degreesOfFreedom).toBe(value.degreesOfFreedom);
  });
});
