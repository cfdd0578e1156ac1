import { beforeAll, describe, expect, it } from "vitest";
import { inch, type Length, mm } from "../kernel-helpers/quantity/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { CleanUp, FinishedJournals, OptionsWeighed, ShaftLoads } from "../kernel-helpers/shaft/index.js";
import { copyOfDemo, runThrough } from "./support/run-demo.js";

const sheets = ["04-shaft-survey", "06-shaft-salvage"];
const demos: readonly (readonly [demo: string, finished: Length])[] = [
  ["demo", inch(2.425)],
  ["demo-metric", mm(59.7)],
];

describe.each(demos)("06-shaft-salvage on %s", (demo, finished) => {
  let folder: string;
  beforeAll(async () => {
    folder = copyOfDemo(demo, sheets);
    await runThrough(folder);
  }, 240_000);

  it("plans on a cylinder between the bounds, and the journal is turned below it", () => {
    const record = readSheetRecord(folder, "06-shaft-salvage")!;
    const { least, most, plan } = publishedValue(record, "left") as CleanUp;
    expect(plan.value.si).toBeGreaterThanOrEqual(least.value.si);
    expect(plan.value.si).toBeLessThanOrEqual(most.value.si);
    expect(finished.si).toBeLessThan(plan.value.si - 2 * plan.standardUncertainty.si);
  });
  it("hands on every worn journal with its size, its load and the speed, for the boxes made to it", () => {
    const record = readSheetRecord(folder, "06-shaft-salvage")!;
    const { journals, speed } = publishedValue(record, "journals") as FinishedJournals;
    expect(journals.map(({ name }) => name)).toEqual(["pulley box", "far box"]);
    expect(journals[0]!.diameter.value.si).toBe(finished.si);
    expect(journals.every(({ load }) => load !== undefined && load.force.value.si > 0)).toBe(true);
    expect(speed!.si).toBeGreaterThan(0);
  });
  it("leaves a decision that stands on all limits, without an override", () => {
    const record = readSheetRecord(folder, "06-shaft-salvage")!;
    const text = JSON.stringify(record);
    expect(text).toMatch(/"choice":"turn undersize"/);
    expect(text).not.toMatch(/"override"/);
    const { options, stands, chosen, flips } = publishedValue(record, "weighed") as OptionsWeighed;
    expect([stands, chosen]).toEqual(["turn undersize", "turn undersize"]);
    expect(options[0]!.chance).toBeGreaterThan(0.95);
    expect(flips[0]!.moves).toBeDefined();
  });
  it("gives the boxes the loads that the belts make, with their directions", () => {
    const record = readSheetRecord(folder, "06-shaft-salvage")!;
    const { journals } = publishedValue(record, "journals") as FinishedJournals;
    const { boxes } = publishedValue(record, "loads") as ShaftLoads;
    journals.forEach(({ load }, i) => {
      expect(load!.force.value.si).toBe(boxes[i]!.force.value.si);
      expect(load!.direction!.si).toBe(boxes[i]!.direction.si);
      expect(load!.turnsWithShaft).toBe(false);
    });
  });
});
