import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { inch, type Length, mm } from "../kernel-helpers/quantity/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type {
  CleanUp,
  FinishedJournals,
  OptionsWeighed,
  ShaftLoads,
  ShaftStrength,
} from "../kernel-helpers/shaft/index.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemoRun } from "./support/run-demo.js";

const demos: readonly (readonly [demo: string, finished: Length])[] = [
  ["demo", inch(2.425)],
  ["demo-metric", mm(59.7)],
];

interface Recorded {
  readonly options: readonly { readonly name: string; readonly breaks: readonly string[] }[];
  readonly choice: string;
  readonly override: string;
  readonly limits: readonly { readonly figure: string }[];
}

const recordedDecision = (folder: string): Recorded =>
  JSON.parse(readFileSync(join(folder, "record/06-shaft-salvage.json"), "utf8")).decisions.shaft;

describe.each(demos)("06-shaft-salvage on %s", (demo, finished) => {
  let folder: string;
  beforeAll(async () => {
    folder = await copyOfDemoRun(demo);
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
  it("breaks the smallest diameter allowed openly, with the strength reckoned as the reason", () => {
    const record = readSheetRecord(folder, "06-shaft-salvage")!;
    const text = JSON.stringify(record);
    expect(text).toMatch(/"choice":"turn undersize"/);
    const { options: ways, choice, override, limits } = recordedDecision(folder);
    const broken = (of: string, what: RegExp) =>
      ways.find(({ name }) => name === of)!.breaks.filter((text) => what.test(text));
    expect(broken(choice, /^(?!slope)/).join()).toMatch(/^smallest diameter allowed, /);
    expect(broken("new shaft", /^(?!slope)/)).toEqual([]);
    // The lean in the boxes is no way's fault: every way breaks it, a new shaft too, or none does.
    const leans = broken(choice, /^slope/).length;
    expect(broken("new shaft", /^slope/)).toHaveLength(leans);
    expect(override.includes("lean in the boxes")).toBe(leans > 0);
    expect(limits.map(({ figure }) => figure)).toEqual(["smallest diameter allowed"]);
    // The figures of the reason, which a person wrote, are those the sheet reckons.
    const { places } = publishedValue(record, "strength") as ShaftStrength;
    for (const place of ["end of the pulley box", "seat of the second pulley"]) {
      const written = Number(new RegExp(`${place}.*?factor (?:of )?([\\d.]+)`).exec(override)![1]);
      const reckoned = places.find(({ name }) => name === place.replace("of the pulley", "of pulley"))!;
      const least = Math.min(reckoned.fatigue.factor.value, reckoned.yielding.factor.value);
      expectClose(written, least, { rel: 0.025, because: "written with two digits" });
    }
    const { options, stands, chosen, flips, beyondChoice } = publishedValue(
      record,
      "weighed",
    ) as OptionsWeighed;
    expect([stands, chosen]).toEqual(["turn undersize", "turn undersize"]);
    expect(beyondChoice).toHaveLength(leans);
    // Far enough above what is wanted for the draws to tell, whatever the seed.
    const { chance, chanceUncertainty } = options[0]!;
    expect(chance - 5 * chanceUncertainty).toBeGreaterThan(0.95);
    const held = options[0]!.limits.map(({ name }) => name);
    expect(held.filter((name) => name.startsWith("slope in "))).toHaveLength(2);
    expect(held).toContain("speed away from whirls, %");
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
