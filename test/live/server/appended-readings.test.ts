import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { beforeAll, describe, expect, it } from "vitest";
import type { RunIn } from "../../../kernel-helpers/bearing/index.js";
import { sha256 } from "../../../kernel-helpers/live/server/rebuild-files.js";
import { publishedValue, readSheetRecord } from "../../../kernel-helpers/record/sheet-record.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { type EventEar, type Live, liveRebuild, sheetFile } from "./live-client.js";

beforeAll(() => ensureBuilt(), buildTimeout);

const rise = (t: number): string => (64 + 20 * (1 - Math.exp(-t / 26))).toFixed(1);
const rowAt = (t: number): string => `${t},110,64,${rise(t)}\n`;
const header = "time [min],speed [rpm],room [degF],pulley box [degF]\n";
/** The table as it grows at the machine, by minutes. */
const tableOf = (...minutes: readonly number[]): string => header + minutes.map(rowAt).join("");

const open = 'import { openRebuild, runIn, degF, deltaF } from "journalbox";\nconst rebuild = openRebuild();';
const judge =
  'const judged = runIn(rebuild.table("run-in"), { stopAt: degF(150), thermometer: deltaF(0.4) });\njudged';
const publish = "rebuild.publish({ runIn: judged });";
/** Tells that the table was read, and waits until the test lets it go on. */
const hold = `import { existsSync, writeFileSync } from "node:fs";
if (!existsSync("go")) writeFileSync("read", "");
while (!existsSync("go")) await new Promise((go) => setTimeout(go, 20));`;
const name = "11-run-in";

/** Writes a table as the page's grid does: from what it last saw. */
async function write(live: Live, from: string, text: string): Promise<number> {
  return (await live.ask("PUT", "/api/tables/run-in", { text, base: sha256(from) })).status;
}

async function stateOf(live: Live): Promise<{ readonly state: string; readonly why: string }> {
  return (await live.ask("GET", "/api/rebuild")).json.sheets[0];
}

async function runAll(live: Live, ear: EventEar): Promise<void> {
  const before = ear.heard.filter(({ type }) => type === "run-ended").length;
  expect((await live.ask("POST", "/api/run", {})).status).toBe(202);
  while (ear.heard.filter(({ type }) => type === "run-ended").length === before) await pause(20);
}

function judgedIn(live: Live): RunIn {
  return publishedValue(readSheetRecord(live.directory, name)!, "runIn") as RunIn;
}

describe("readings appended while the machine runs", () => {
  it("make the sheet stale, say which line came, and count in the next run", async () => {
    const live = await liveRebuild({
      "tables/run-in.csv": tableOf(0, 5, 10),
      [`sheets/${name}.ipynb`]: sheetFile(open, judge, publish),
    });
    const ear = await live.listen();
    await runAll(live, ear);
    expect(await stateOf(live)).toMatchObject({ state: "fresh" });
    expect(judgedIn(live).state).toBe("cannot tell yet");
    const [early, later] = [tableOf(0, 5, 10), tableOf(0, 5, 10, 20, 30, 45, 60, 80)];
    expect(await write(live, early, later)).toBe(200);
    // Every page that looks at the rebuild is told at once.
    await ear.until((e) => e.type === "state" && e.sheets[0]!.state === "stale");
    expect(await stateOf(live)).toMatchObject({
      state: "stale",
      why: expect.stringMatching(/^Since the last run tables\/run-in\.csv has changed \(/),
    });
    await runAll(live, ear);
    expect(await stateOf(live)).toMatchObject({ state: "fresh", why: "" });
    const { boxes, state } = judgedIn(live);
    expect(boxes[0]!.readings).toHaveLength(8);
    expect(state).toBe("go on");
  });

  it("leave a run that has read the table already with the rows it read, and stale when it ends", async () => {
    const live = await liveRebuild({
      "tables/run-in.csv": tableOf(0, 5, 10),
      [`sheets/${name}.ipynb`]: sheetFile(open, judge, hold, publish),
    });
    const ear = await live.listen();
    const running = runAll(live, ear);
    while (!existsSync(join(live.directory, "read"))) await pause(20);
    expect(await write(live, tableOf(0, 5, 10), tableOf(0, 5, 10, 20))).toBe(200);
    writeFileSync(join(live.directory, "go"), "");
    await running;
    expect(judgedIn(live).boxes[0]!.readings).toHaveLength(3);
    expect(await stateOf(live)).toMatchObject({
      state: "stale",
      why: expect.stringMatching(/tables\/run-in\.csv has changed/),
    });
    await runAll(live, ear);
    expect(judgedIn(live).boxes[0]!.readings).toHaveLength(4);
    expect(await stateOf(live)).toMatchObject({ state: "fresh" });
  });

  it("are not overwritten by a page that has not seen them", async () => {
    const early = tableOf(0, 5, 10);
    const live = await liveRebuild({
      "tables/run-in.csv": early,
      [`sheets/${name}.ipynb`]: sheetFile(open, judge, publish),
    });
    expect(await write(live, early, tableOf(0, 5, 10, 20))).toBe(200);
    expect(await write(live, early, tableOf(0, 5, 10, 25))).toBe(409);
    expect((await live.ask("GET", "/api/tables/run-in")).json.text).toBe(tableOf(0, 5, 10, 20));
  });
});
