import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { LiftPlan, Masses, PartsLedger, StoredEnergies } from "../kernel-helpers/intake/index.js";
import { type RebuildRun, runRebuild } from "../kernel-helpers/notebook/run-rebuild.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import { ensureBuilt } from "./support/built.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemo, copyOfDemoRun } from "./support/run-demo.js";

const sheet = "01-intake";

describe.each([
  { demo: "demo", told: 180, unit: "pound", next: ["nut"] },
  { demo: "demo-metric", told: 55, unit: "kilogram", next: ["nut"] },
] as const)("01-intake on $demo", ({ demo, told, unit, next }) => {
  let folder: string;
  beforeAll(async () => {
    folder = await copyOfDemoRun(demo);
  }, 240_000);
  const published = <T>(name: string): T => publishedValue(readSheetRecord(folder, sheet)!, name) as T;

  it("reckons the driven pulley to what it was told to weigh, within the stated uncertainty", () => {
    const { value, standardUncertainty } = published<Masses>("masses").parts[0]!.mass;
    expectClose(value.in(unit), told, {
      abs: 2 * standardUncertainty.in(unit),
      because: "twice the standard uncertainty the sheet states",
    });
  });
  it("lifts every part of the ledger within its tags, and knows the energy that turns", () => {
    const { lifts, unsaid, verdict } = published<LiftPlan>("lifts");
    expect([verdict, unsaid]).toEqual(["holds", []]);
    const lifted = new Set(lifts.flatMap(({ parts }) => parts));
    expect([...lifted].sort()).toEqual(
      published<PartsLedger>("parts")
        .parts.map(({ part }) => part)
        .sort(),
    );
    expect(lifts.filter(({ lift }) => lift !== undefined).length).toBe(3);
    expect(published<StoredEnergies>("energy").stores.length).toBe(3);
  });
  it("reckons the moment of inertia as a rim and a solid shaft by hand would: Σ m r²", () => {
    // The rim carries most of it: m (D² + d²)/8 of the rim alone is at least 3/4 of the whole pulley's.
    const { parts, inertia } = published<Masses>("masses");
    const [pulley] = parts;
    const rim = pulley!.pieces.find(({ piece }) => piece === "rim")!;
    const [outside, inside] = unit === "pound" ? [30, 28.5] : [600, 564];
    const scale = unit === "pound" ? 0.0254 : 0.001;
    const ofRim = (rim.mass.value.si * (outside ** 2 + inside ** 2) * scale ** 2) / 8;
    const share = ofRim / pulley!.inertia.value.si;
    expect(share).toBeGreaterThan(0.75);
    expect(share).toBeLessThan(1);
    const sum = parts.reduce((total, part) => total + part.inertia.value.si, 0);
    expectClose(inertia.value.si, sum, { rel: 1e-12, because: "bodies on one axis add" });
  });
  it("says what comes off next, and the handover shows the ledger", () => {
    expect(published<PartsLedger>("parts").removeNext).toEqual(next);
    expect(readFileSync(join(folder, "out", "12-handover.ipynb"), "utf8")).toContain("Parts ledger");
  });
});

describe("01-intake where the ledger cannot be", () => {
  it("stops there and names file, line and column", async () => {
    await ensureBuilt();
    const folder = copyOfDemo("demo", [sheet]);
    const path = join(folder, "tables", "parts.csv");
    writeFileSync(
      path,
      readFileSync(path, "utf8").replace("nut, in place, belt", "nut, in place, driven pulley"),
    );
    const run: RebuildRun = await runRebuild({ directory: folder });
    expect(run.results[0]!.error!.message).toMatch(
      /parts\.csv line \d+, column "comes off after \[text\]": found a ring: .*driven pulley after nut/,
    );
  }, 240_000);
});
