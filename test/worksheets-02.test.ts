import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { ThreadHand, ThreadIdentity } from "../kernel-helpers/joint/index.js";
import { type RebuildRun, runRebuild } from "../kernel-helpers/notebook/run-rebuild.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import { ensureBuilt } from "./support/built.js";
import { copyOfDemo, copyOfDemoRun } from "./support/run-demo.js";

const sheet = "02-fastener-removal";

// What the invented readings were made from.
const truths = [
  { demo: "demo", thread: "1 1/2 in BSW", loosen: "counter-clockwise" },
  { demo: "demo-metric", thread: "M36 × 3", loosen: "clockwise" },
] as const;

describe.each(truths)("02-fastener-removal on $demo", ({ demo, thread, loosen }) => {
  let folder: string;
  beforeAll(async () => {
    folder = await copyOfDemoRun(demo);
  }, 240_000);
  const published = <T>(name: string): T => publishedValue(readSheetRecord(folder, sheet)!, name) as T;

  it("names the thread among those its readings allow", () => {
    const { matches } = published<ThreadIdentity>("thread");
    expect(matches.filter(({ agrees }) => agrees).map(({ thread: { name } }) => name)).toContain(thread);
  });
  it("says which way the nut comes off", () => {
    expect(published<ThreadHand>("hand").loosen).toBe(loosen);
  });
});

describe("02-fastener-removal where the thread seen contradicts the one expected", () => {
  it("stops at the hand, before anything is said of pulling, until the reason is written down", async () => {
    await ensureBuilt();
    const folder = copyOfDemo("demo", [sheet]);
    const path = join(folder, "rebuild.json");
    const rebuild = JSON.parse(readFileSync(path, "utf8"));
    rebuild.words["nut thread hand"] = "left";
    writeFileSync(path, JSON.stringify(rebuild));
    const stopped: RebuildRun = await runRebuild({ directory: folder });
    expect(stopped.results[0]!.error!.message).toMatch(
      /thread seen is left-hand, but running calls for right-hand/,
    );
    rebuild.words["nut thread hand resolved"] = "an old nut was turned round on a new stud";
    writeFileSync(path, JSON.stringify(rebuild));
    const resolved = await runRebuild({ directory: folder });
    expect(resolved.results[0]!.status).toBe("ok");
  }, 240_000);
});
