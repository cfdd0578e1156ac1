import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import {
  codeHash,
  forgetReads,
  openRebuild,
  readOutcome,
  readReads,
  resetSession,
  sheetStates,
  writeOutcome,
} from "../../kernel-helpers/record/index.js";
import { markMixed } from "../../kernel-helpers/record/sheet-outcome.js";
import { stateFile } from "../../kernel-helpers/record/sheet-reads.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const code = codeHash([{ cell_type: "code", source: "1" }]);
const table = "station [in],diameter [in]\n1,2.4375\n2,2.4370\n";
const rebuildJson = '{ "schema": 1, "title": "T", "units": "inch" }';

afterEach(() => resetSession());

function rebuildFolder(): string {
  return temporaryFolder({ "rebuild.json": rebuildJson, "tables/a.csv": table, "tables/b.csv": table });
}

/** Runs a sheet as its cells would, and notes that it went well. */
function run(folder: string, sheet: string, cells: (rebuild: ReturnType<typeof openRebuild>) => void): void {
  resetSession();
  forgetReads(folder, sheet);
  cells(openRebuild({ folder, sheet }));
  writeOutcome(folder, { sheet, status: "ok", code });
}

/** The states of the sheets 01 and 02, both with the code they had. */
function states(folder: string): string[] {
  const sheets = [
    { name: "01", code },
    { name: "02", code },
  ];
  return sheetStates(folder, sheets).map(({ state, why }) => (why === "" ? state : `${state}: ${why}`));
}

describe("codeHash(cells)", () => {
  const cell = (source: string, cell_type = "code") => ({ cell_type, source });
  it("depends on the code and its order, and on nothing else", () => {
    const hash = codeHash([cell("a"), cell("b")]);
    expect(codeHash([cell("# text", "markdown"), cell("a\n"), cell(""), cell("b")])).toBe(hash);
    for (const other of [[cell("b"), cell("a")], [cell("a\nb")], [cell("a")], [cell("a"), cell(" b")]])
      expect(codeHash(other)).not.toBe(hash);
  });
  // Source: printf '["a"]' | sha256sum (GNU coreutils)
  it("is the SHA-256 of the sources as a JSON list", () => {
    expect(codeHash([cell("a")])).toBe("0eb5b8d6f81bc677da8a08567cc4fa9a06a57e9ec8da85ed73a7f62727996002");
  });
});

describe("sheetStates(directory, sheets)", () => {
  it("are never run, and say where a record was written elsewhere", () => {
    const folder = rebuildFolder();
    expect(states(folder)[0]).toBe("never run: It has not been run from top to bottom yet.");
    openRebuild({ folder, sheet: "01" }).publish({ x: 1 });
    expect(states(folder)[0]).toMatch(/^never run: .* here yet; record\/01\.json was written elsewhere\.$/);
  });
  it("are fresh after a run, and stale when a table the sheet read changes, goes, and not another", () => {
    const folder = rebuildFolder();
    run(folder, "01", (rebuild) => rebuild.table("a"));
    expect(states(folder)[0]).toBe("fresh");
    writeFileSync(join(folder, "tables", "b.csv"), `${table}3,2.4\n`);
    expect(states(folder)[0]).toBe("fresh");
    writeFileSync(join(folder, "tables", "a.csv"), `${table}3,2.4\n`);
    expect(states(folder)[0]).toBe("stale: Since the last run tables/a.csv has changed.");
    rmSync(join(folder, "tables", "a.csv"));
    expect(states(folder)[0]).toBe("stale: Since the last run tables/a.csv has gone.");
    writeFileSync(join(folder, "tables", "a.csv"), table);
    expect(states(folder)[0]).toBe("fresh");
  });
  it("are stale when rebuild.json changes, and name all that has changed", () => {
    const folder = rebuildFolder();
    run(folder, "01", (rebuild) => rebuild.table("a"));
    writeFileSync(join(folder, "rebuild.json"), rebuildJson.replace("T", "U"));
    expect(states(folder)[0]).toBe("stale: Since the last run rebuild.json has changed.");
    writeFileSync(join(folder, "tables", "a.csv"), "x");
    expect(states(folder)[0]).toBe(
      "stale: Since the last run rebuild.json has changed and tables/a.csv has changed.",
    );
  });
  it("are stale when the code or the version of Journalbox is another", () => {
    const folder = rebuildFolder();
    run(folder, "01", () => {});
    expect(sheetStates(folder, [{ name: "01", code: "other" }])[0]).toEqual({
      name: "01",
      state: "stale",
      why: "Since the last run the code of the sheet has changed.",
    });
    const file = stateFile(folder, "01", "run");
    const outcome = readOutcome(folder, "01")!;
    writeFileSync(
      file,
      JSON.stringify({ ...outcome, versions: { ...outcome.versions, journalbox: "0.0.1" } }),
    );
    expect(states(folder)[0]).toMatch(
      /^stale: Since the last run Journalbox has gone from version 0\.0\.1 to \d/,
    );
  });
  it("are stale when a recalled result is another, comes from a stale sheet, or has gone", () => {
    const folder = rebuildFolder();
    const result = { kind: "wear bands", depth: 1 };
    const first = (value: unknown) => () =>
      run(folder, "01", (rebuild) => {
        rebuild.table("a");
        rebuild.publish({ wear: value });
      });
    first(result)();
    run(folder, "02", (rebuild) => rebuild.recall("wear", "wear bands"));
    expect(states(folder)).toEqual(["fresh", "fresh"]);
    writeFileSync(join(folder, "tables", "a.csv"), `${table}3,2.4\n`);
    expect(states(folder)[1]).toBe(
      'stale: Since the last run 01, from which it has "wear", is not fresh itself (stale).',
    );
    first(result)(); // run again, to the same result
    expect(states(folder)).toEqual(["fresh", "fresh"]);
    first({ ...result, depth: 2 })();
    expect(states(folder)[1]).toBe('stale: Since the last run "wear" from 01 has changed.');
    rmSync(join(folder, "record", "01.json"));
    expect(states(folder)).toEqual([
      "stale: Since the last run record/01.json has gone.",
      'stale: Since the last run "wear", which 01 published, has gone.',
    ]);
  });
  it("are stale when the sheet recalled from is no sheet any more, and end for sheets that recall from each other", () => {
    const folder = rebuildFolder();
    const other = (from: string, to: string) => () =>
      run(folder, to, (rebuild) => {
        rebuild.publish({ [to]: { kind: "taper" } });
        rebuild.recall(from, "taper");
      });
    openRebuild({ folder, sheet: "01" }).publish({ "01": { kind: "taper" } });
    other("01", "02")();
    other("02", "01")();
    expect(states(folder)).toEqual(["fresh", "fresh"]);
    expect(sheetStates(folder, [{ name: "02", code }])[0]!.why).toMatch(
      /01, .* is no sheet of this rebuild any more/,
    );
  });
  it("are stale when something else has written the record", () => {
    const folder = rebuildFolder();
    run(folder, "01", (rebuild) => rebuild.publish({ x: 1 }));
    expect(states(folder)[0]).toBe("fresh");
    openRebuild({ folder, sheet: "01" }).publish({ x: 2 });
    expect(states(folder)[0]).toBe("stale: Since the last run record/01.json was written by something else.");
  });
  it("are failed with the cell's message, and stale once the table it failed at is mended", () => {
    const folder = rebuildFolder();
    writeFileSync(join(folder, "tables", "a.csv"), "torn");
    const rebuild = openRebuild({ folder, sheet: "01" });
    expect(() => rebuild.table("a")).toThrow();
    expect(() => rebuild.table("c")).toThrow();
    const failure = { cell: { id: "open", number: 3 }, message: "TableFaults: a.csv has a fault" };
    writeOutcome(folder, { sheet: "01", status: "failed", code, failure });
    expect(states(folder)[0]).toBe("failed: Cell 3 (open): TableFaults: a.csv has a fault.");
    writeFileSync(join(folder, "tables", "a.csv"), table);
    expect(states(folder)[0]).toBe(
      "stale: Since the last run tables/a.csv has changed. That run failed: Cell 3 (open): TableFaults: a.csv has a fault.",
    );
    writeFileSync(join(folder, "tables", "a.csv"), "torn");
    writeFileSync(join(folder, "tables", "c.csv"), table);
    expect(states(folder)[0]).toMatch(/^stale: Since the last run tables\/c\.csv has come\./);
  });
  it("are failed for a file that cannot be read", () => {
    expect(sheetStates(rebuildFolder(), [{ name: "01", problem: "01.ipynb: not a notebook" }])).toEqual([
      { name: "01", state: "failed", why: "01.ipynb: not a notebook" },
    ]);
  });
  it("are never run where what was noted is torn", () => {
    const folder = rebuildFolder();
    run(folder, "01", () => {});
    for (const torn of ["", "{", "null", '{"schema":1}', '{"schema":2}']) {
      writeFileSync(stateFile(folder, "01", "run"), torn);
      expect(states(folder)[0]).toMatch(/^never run/);
    }
  });
});

describe("markMixed(directory, sheet)", () => {
  it("marks an outcome when the sheet has read something else since, and not when it read the same", () => {
    const folder = rebuildFolder();
    run(folder, "01", (rebuild) => rebuild.table("a"));
    forgetReads(folder, "01");
    openRebuild({ folder, sheet: "01" });
    markMixed(folder, "01");
    expect(states(folder)[0]).toBe("fresh");
    writeFileSync(join(folder, "tables", "a.csv"), `${table}3,2.4\n`);
    openRebuild({ folder, sheet: "01" }).table("a");
    markMixed(folder, "01");
    writeFileSync(join(folder, "tables", "a.csv"), table);
    expect(states(folder)[0]).toMatch(
      /^stale: Since the last run some of its cells were run again by themselves/,
    );
  });
});

describe("what a sheet reads", () => {
  it("is noted over all its openings until the session is reset, under the name of the sheet", () => {
    const folder = rebuildFolder();
    openRebuild({ folder, sheet: "01" }).table("a");
    openRebuild({ folder, sheet: "01" }).table("b");
    expect(Object.keys(readReads(folder, "01").inputs)).toEqual([
      "rebuild.json",
      "tables/a.csv",
      "tables/b.csv",
    ]);
    expect(readReads(folder, "01").process).toBe(process.pid);
    resetSession();
    openRebuild({ folder, sheet: "01" });
    expect(Object.keys(readReads(folder, "01").inputs)).toEqual(["rebuild.json"]);
    expect(readReads(folder, "02").inputs).toEqual({});
  });
});
