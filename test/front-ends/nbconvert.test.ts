import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { readNotebook } from "../../kernel-helpers/notebook/file/notebook-file.js";
import type { CodeCell, Notebook, Output } from "../../kernel-helpers/notebook/file/notebook-format.js";
import { sheetsInOrder } from "../../kernel-helpers/notebook/sheets-in-order.js";
import { buildTimeout, ensureBuilt } from "../support/built.js";
import { isHere, newBench } from "./jupyter.js";

// The worksheets through Jupyter's own runner, which knows nothing of ours but the kernelspec.
const here = isHere(["jupyter", "nbconvert", "--version"], "the worksheets through jupyter nbconvert");

describe.runIf(here)("jupyter nbconvert --execute", () => {
  const bench = newBench();
  // nbconvert takes them as they come: a sheet that takes over from another must come after it.
  const sheets = sheetsInOrder(join(bench.folder, "mill")).sheets.map(({ name }) => `${name}.ipynb`);
  const ran = new Map<string, Notebook>();
  let told = "";

  beforeAll(async () => {
    await ensureBuilt();
    const run = spawnSync("jupyter", ["nbconvert", "--to", "notebook", "--inplace", "--execute", ...sheets], {
      cwd: bench.sheets,
      env: bench.environment,
      encoding: "utf8",
    });
    told = run.stderr;
    expect(run.status, told).toBe(0);
    for (const sheet of sheets) ran.set(sheet, readNotebook(join(bench.sheets, sheet)));
  }, buildTimeout + 180_000);

  const codeOf = (sheet: string): readonly CodeCell[] =>
    ran.get(sheet)!.cells.filter((cell): cell is CodeCell => cell.cell_type === "code");
  const outputsOf = (sheet: string): readonly Output[] => codeOf(sheet).flatMap(({ outputs }) => outputs);

  it("runs every worksheet, every cell in its turn", () => {
    expect(sheets.length).toBeGreaterThanOrEqual(2);
    for (const sheet of sheets)
      expect(codeOf(sheet).map(({ execution_count }) => execution_count)).toEqual(
        codeOf(sheet).map((_, i) => i + 1),
      );
  });
  it("meets no error, and leaves nothing printed", () => {
    for (const sheet of sheets)
      expect(
        outputsOf(sheet).filter(
          (output) => output.output_type === "error" || output.output_type === "stream",
        ),
      ).toEqual([]);
    expect(told).not.toMatch(/warn|error/i);
  });
  it("shows results as HTML and as text, and a single figure as a picture too", () => {
    const types = outputsOf("04-shaft-survey.ipynb").map((output) =>
      Object.keys("data" in output ? output.data : {}),
    );
    expect(types.every((each) => each.includes("text/plain"))).toBe(true);
    expect(types.filter((each) => each.includes("text/html")).length).toBeGreaterThan(4);
    expect(types.some((each) => each.includes("image/png"))).toBe(true);
  });
  it("hands on from sheet to sheet: each that has something to hand on has left its record", () => {
    const giving = sheets.filter((sheet) =>
      codeOf(sheet).some(({ source }) => /\.(publish|decide|note)\(/.test(source)),
    );
    expect(giving.length).toBeGreaterThanOrEqual(2);
    const records = readdirSync(join(bench.folder, "mill", "record")).filter((file) =>
      file.endsWith(".json"),
    );
    expect(records.sort()).toEqual(giving.map((sheet) => sheet.replace(/ipynb$/, "json")).sort());
  });
});
