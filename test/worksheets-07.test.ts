import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type {
  CutPlan,
  FinishedJournals,
  FitsToMake,
  IndicatorSchedule,
  ShaftDrawing,
  TaperWays,
} from "../kernel-helpers/shaft/index.js";
import type { TaperFit } from "../kernel-helpers/survey/index.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemoRun } from "./support/run-demo.js";

describe.each(["demo", "demo-metric"])("07-turning-set-up on %s", (demo) => {
  let folder: string;
  beforeAll(async () => {
    folder = await copyOfDemoRun(demo);
  }, 240_000);
  const published = (sheet: string, name: string): unknown =>
    publishedValue(readSheetRecord(folder, sheet)!, name);

  it("turns the journals that the salvage left, to limits below what it says", () => {
    const { journals } = published("06-shaft-salvage", "journals") as FinishedJournals;
    const plans = ["nearCuts", "farCuts"].map((name) => published("07-turning-set-up", name) as CutPlan);
    plans.forEach((plan, i) => {
      expect(plan.name).toBe(journals[i]!.name);
      expect(plan.limits.largest.si).toBeLessThanOrEqual(journals[i]!.diameter.value.si * (1 + 1e-9));
      // The tool cuts all round before it is at size.
      expect(plan.passes.at(-1)!.interrupted).toBe(false);
      expect(plan.passes[0]!.interrupted).toBe(true);
    });
  });
  it("finds a way to set the taper that was measured, true enough", () => {
    const { ways, taper } = published("07-turning-set-up", "taperWays") as TaperWays;
    const measuredTaper = (published("05-taper", "taper") as TaperFit).taper;
    expect(taper.value).toBe(Math.abs(measuredTaper.value));
    expect(ways[0]!.verdict).toBe("good enough");
    expect(ways.find(({ name }) => name === "tailstock set over")!.verdict).toBe("cannot reach");
  });
  it("decides how the taper is set, by a way that breaks no limit", () => {
    const { decisions } = readSheetRecord(folder, "07-turning-set-up")!;
    const made = decisions!["taper setting"]!;
    const { options, choice, override, limits } = made;
    expect(options.find(({ name }) => name === choice)!.breaks).toEqual([]);
    expect(options.some(({ breaks }) => breaks.length > 0)).toBe(true);
    expect(override).toBeUndefined();
    expect(limits?.map(({ figure }) => figure)).toEqual(["taper may be wrong by"]);
  });
  it("tells the indicator's rise over its travel, and that it stands square enough", () => {
    const schedule = published("07-turning-set-up", "schedule") as IndicatorSchedule;
    const { travel, alongAxis } = schedule.rows.at(-1)!;
    expectClose((2 * alongAxis.value.si) / travel.si, schedule.taper.value, {
      rel: 1e-9,
      because: "rounding only",
    });
    expect(schedule.overSeat.si).toBeLessThan(schedule.allowed.si);
  });
  it("says what new parts are bored to, by the fits of the rebuild and for the shaft as it is", () => {
    const { fits, asMeasured } = published("07-turning-set-up", "fits") as FitsToMake;
    const { words } = JSON.parse(readFileSync(join(folder, "rebuild.json"), "utf8"));
    expect(fits.map(({ fit }) => fit.split(" ").at(-1))).toEqual(
      ["set collar", "keyed pulley", "sleeve"].map((part) => words[`${part} fit`]),
    );
    expect(fits.map(({ type }) => type)).toEqual(["clearance", "transition", "interference"]);
    const [collar, , sleeve] = fits;
    expect(collar!.boreForTheShaft!.smallest.si).toBeGreaterThan(asMeasured.value.si);
    expect(sleeve!.boreForTheShaft!.largest.si).toBeLessThan(asMeasured.value.si);
  });
  it("draws the whole shaft: thread, keyseat and fillets, as long as it lies between its ends", () => {
    const { stretches, length } = published("07-turning-set-up", "drawing") as ShaftDrawing;
    const [thread, taper] = stretches;
    expect(thread!.thread!.name).toMatch(/, (right|left) hand$/);
    expect(taper!.keyseat!.floor).toBe("along the flank");
    expect(stretches.filter(({ fillet }) => fillet !== undefined).map(({ name }) => name)).toEqual(
      (published("06-shaft-salvage", "journals") as FinishedJournals).journals.map(({ name }) => name),
    );
    const { dimensions } = JSON.parse(readFileSync(join(folder, "rebuild.json"), "utf8"));
    expect(String(length)).toBe(dimensions["between centres"]);
  });
});
