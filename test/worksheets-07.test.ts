import { beforeAll, describe, expect, it } from "vitest";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { CutPlan, FinishedJournals, TaperWays } from "../kernel-helpers/shaft/index.js";
import type { TaperFit } from "../kernel-helpers/survey/index.js";
import { copyOfDemo, runThrough } from "./support/run-demo.js";

const sheets = ["04-shaft-survey", "05-taper", "06-shaft-salvage", "07-turning-set-up"];

describe.each(["demo", "demo-metric"])("07-turning-set-up on %s", (demo) => {
  let folder: string;
  beforeAll(async () => {
    folder = copyOfDemo(demo, sheets);
    await runThrough(folder);
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
});
