import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { runRebuild } from "../../kernel-helpers/notebook/run-rebuild.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

beforeAll(() => ensureBuilt(), 120_000);

function audit(...args: string[]): {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
} {
  const program = join(packageRoot(), "dist", "cli", "main.js");
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, "audit", ...args], {
    encoding: "utf8",
  });
  return { code: status, out: stdout, err: stderr };
}

/** One sheet that decides on the first reading of a table, which must not be below 2.43 in; run once. */
async function decided(): Promise<string> {
  const sources = [
    'import { inch, measured, openRebuild, thou } from "journalbox";\nconst rebuild = openRebuild();',
    'const first = Number(rebuild.table("t").columns[1]!.text[0]);\nconst breaks = first < 2.43 ? ["2.43 in at least"] : [];',
    'rebuild.decide({ name: "pin", question: "Keep the pin?", choice: "keep", reason: "sound", by: "AB", on: "2026-05-04",\n  options: [{ name: "keep", figures: { diameter: measured(inch(first), thou(0.2)) }, breaks }] })',
  ];
  const folder = temporaryFolder({
    "rebuild.json": '{ "schema": 1, "title": "One pin", "units": "inch" }',
    "tables/t.csv": "station [in], diameter [in]\n1, 2.4310\n",
    "sheets/01-pin.ipynb": JSON.stringify({
      nbformat: 4,
      nbformat_minor: 5,
      metadata: {},
      cells: sources.map((source, i) => ({
        cell_type: "code",
        id: `c${i}`,
        metadata: {},
        execution_count: null,
        outputs: [],
        source,
      })),
    }),
  });
  const { results } = await runRebuild({ directory: folder });
  expect(results.map(({ status }) => status)).toEqual(["ok"]);
  return folder;
}

const change = (folder: string, file: string, from: string, to: string): void => {
  const path = join(folder, file);
  writeFileSync(path, readFileSync(path, "utf8").replace(from, to));
};

describe("journalbox audit", () => {
  it("ends with 0, 3, 4 or 5 as the decision stands, stands on moved figures, follows no longer, or cannot be checked", async () => {
    const folder = await decided();
    expect(audit(folder)).toMatchObject({ code: 0, out: expect.stringMatching(/YES: pin: stands\n/) });
    change(folder, "tables/t.csv", "2.4310", "2.4320");
    const moved = audit(folder);
    expect(moved.code).toBe(3);
    expect(moved.out).toMatch(
      /when decided: 2\.43100 ± 0\.00039 in\s+now: 2\.43200 ± 0\.00039 in\s+moved by: \+1 thou, 5 times its standard uncertainty/,
    );
    expect(moved.out).toMatch(/Because of: tables\/t\.csv line 2, diameter: 2\.4310 became 2\.4320/);
    change(folder, "tables/t.csv", "2.4320", "2.4290");
    expect(audit(folder)).toMatchObject({
      code: 4,
      out: expect.stringMatching(/NO: pin: no longer follows/),
    });
    change(folder, "tables/t.csv", "2.4290", "2.4X90");
    expect(audit(folder)).toMatchObject({ code: 5, out: expect.stringMatching(/pin: cannot be checked/) });
  }, 120_000);

  it("tells with --explain how far a reading may move before the decision flips", async () => {
    const folder = await decided();
    const { out, code } = audit(folder, "--explain", "--only", "pin");
    expect(audit(folder, "--explain", "--only", "hub")).toMatchObject({
      code: 1,
      err: expect.stringMatching(/the decision to explain must be on record, got hub of pin/),
    });
    expect(audit(folder, "--only", "pin").code).toBe(2);
    expect(code).toBe(0);
    // 2.4310 may fall to 2.4300, which is not below the limit; it flips a ten-thousandth under that.
    expect(out).toMatch(/tables\/t\.csv line 2, diameter +2\.4310 +2\.4299 +–/);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /2 readings lie behind “pin”\. 1 of them moves a figure of it\. 1 of them, moved by itself within 100 steps of its last written place \(a whole number 10\), would overturn it\./,
    );
  }, 120_000);

  it("runs nothing with --no-run, and prints JSON with --json", async () => {
    const folder = await decided();
    change(folder, "sheets/01-pin.ipynb", "sound", "still sound");
    const { out, code } = audit(folder, "--no-run", "--json");
    expect(code).toBe(3);
    expect(JSON.parse(out)).toMatchObject({
      kind: "audit",
      schema: 1,
      rerun: false,
      files: { findings: [{ file: "sheets/01-pin.ipynb", what: "altered" }] },
      decisions: [{ name: "pin", verdict: "cannot be checked" }],
    });
  }, 120_000);

  it("ends with 2 where the call is off", () => {
    expect(audit(temporaryFolder())).toMatchObject({
      code: 2,
      err: expect.stringMatching(/no rebuild\.json/),
    });
    expect(audit("--explain", "--no-run").code).toBe(2);
  });
});
