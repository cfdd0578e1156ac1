import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { goodTable, liveRebuild, sheetFile } from "./live-client.js";

beforeAll(() => ensureBuilt(), buildTimeout);

const head = 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild();';
const files = {
  "tables/survey.csv": goodTable,
  "sheets/01-a.ipynb": sheetFile(head, 'rebuild.table("survey").rowCount'),
  "sheets/02-b.ipynb": sheetFile(head, 'rebuild.table("bore").rowCount'),
};

describe("POST /api/run", () => {
  it("runs the sheets as they are on disk, tells how far it is, writes the report, and leaves the states right", async () => {
    const live = await liveRebuild(files);
    const ear = await live.listen();
    expect(await live.ask("POST", "/api/run", {})).toMatchObject({
      status: 202,
      json: { sheets: ["01-a", "02-b"] },
    });
    expect((await live.ask("POST", "/api/run", {})).status).toBe(409);
    const ended = await ear.until((e) => e.type === "run-ended");
    expect(ended).toEqual({ type: "run-ended", failed: ["02-b"], report: true });
    const stages = ear.heard.flatMap((e) => (e.type === "progress" ? [`${e.stage} ${e.sheet ?? ""}`] : []));
    expect(stages).toEqual([
      "kernel-started ",
      "sheet-started 01-a",
      "cell-started 01-a",
      "cell-started 01-a",
      "sheet-ended 01-a",
      "sheet-started 02-b",
      "cell-started 02-b",
      "cell-started 02-b",
      "sheet-ended 02-b",
    ]);
    const failure = ear.heard.find((e) => e.type === "progress" && e.status === "failed");
    expect(failure).toMatchObject({
      failure: expect.stringMatching(/02-b: cell c2 .*there is no tables\/bore\.csv/s),
    });
    expect(readFileSync(join(live.directory, "out", "report.html"), "utf8")).toContain("Pump shaft");
    const states = (await live.ask("GET", "/api/rebuild")).json.sheets;
    expect(states[0]).toMatchObject({ state: "fresh" });
    expect(states[1]).toMatchObject({
      state: "failed",
      why: expect.stringMatching(/^Cell 2 \(c2\): RangeError/),
    });
    expect((await live.ask("GET", "/api/outputs/01-a")).status).toBe(200);

    // Writing the table that was missing makes the failed sheet stale: it may go now.
    writeFileSync(join(live.directory, "tables", "bore.csv"), goodTable);
    const again = (await live.ask("GET", "/api/rebuild")).json.sheets[1];
    expect(again).toMatchObject({ state: "stale", why: expect.stringMatching(/tables\/bore\.csv has come/) });
    await live.ask("POST", "/api/run", { sheets: ["02-b"] });
    await ear.until((e) => e.type === "run-ended" && !e.report && e.failed.length === 0);
    expect((await live.ask("GET", "/api/rebuild")).json.sheets[1]).toMatchObject({ state: "fresh", why: "" });
  });
  it("is stopped by DELETE, also in a loop without end", async () => {
    const live = await liveRebuild({ "sheets/01-a.ipynb": sheetFile("for (;;) {}") });
    const ear = await live.listen();
    await live.ask("POST", "/api/run", {});
    await ear.until((e) => e.type === "progress" && e.stage === "cell-started");
    expect((await live.ask("DELETE", "/api/run")).status).toBe(204);
    const ended = await ear.until((e) => e.type === "run-ended");
    expect(ended).toMatchObject({ error: "the run was stopped", report: false });
    expect(existsSync(join(live.directory, "out", "report.html"))).toBe(false);
    expect((await live.ask("POST", "/api/run", {})).status).toBe(202);
  });
  it("says why nothing could be run", async () => {
    const live = await liveRebuild({ "rebuild.json": "{", "sheets/01-a.ipynb": sheetFile("1") });
    const ear = await live.listen();
    await live.ask("POST", "/api/run", {});
    const ended = await ear.until((e) => e.type === "run-ended");
    expect(ended).toMatchObject({ error: expect.stringMatching(/rebuild\.json/) });
  });
});
