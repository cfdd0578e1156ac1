import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { readNotebook, writeNotebook } from "../../../kernel-helpers/notebook/file/notebook-file.js";
import type { Cell, CodeCell } from "../../../kernel-helpers/notebook/file/notebook-format.js";
import { failureText } from "../../../kernel-helpers/notebook/runner/failure-text.js";
import { type Progress, runSheets } from "../../../kernel-helpers/notebook/runner/run-sheets.js";
import type { SheetResult } from "../../../kernel-helpers/notebook/runner/sheet-result.js";
import { cellHashesKey } from "../../../kernel-helpers/record/cell-hashes.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

const rebuild = temporaryFolder({ "sheets/broken.ipynb": "{", "tables/readings.csv": "2.43\n" });
const outputDirectory = join(rebuild, "out");

const code = (id: string, source: string): Cell => ({
  cell_type: "code",
  id,
  metadata: {},
  source,
  outputs: [],
  execution_count: null,
});
const text = (id: string, source: string): Cell => ({ cell_type: "markdown", id, metadata: {}, source });

/** The sheets of one run, in order. */
const sheets: Readonly<Record<string, readonly Cell[]>> = {
  good: [
    text("title", "# A sheet"),
    code(
      "read",
      'import { readFileSync } from "node:fs";\nconst reading = Number(readFileSync("tables/readings.csv", "utf8"));',
    ),
    code("show", 'console.log("one"); console.log("two");\nreading'),
    code("empty", ""),
  ],
  clean: [code("look", "typeof (globalThis as any).reading"), code("again", "const reading = 1;")],
  throws: [
    code("before", "const limit = 2;"),
    code("fails", 'const value = 3;\nif (value > limit) throw new RangeError("too large");'),
    text("between", "and so"),
    code("after", "limit"),
    code("last", "1"),
  ],
  complains: [code("complain", 'console.error("not well");\n5'), code("after", "1")],
  late: [
    code("start", 'setTimeout(() => console.error("too late"), 20);'),
    code("wait", "await new Promise((r) => setTimeout(r, 150));"),
  ],
  slow: [code("sleep", "await new Promise((r) => setTimeout(r, 60_000));")],
  dies: [code("exit", "process.exit(7);"), code("after", "1")],
  revived: [code("one", "1")],
};

let results: readonly SheetResult[];
const progress: Progress[] = [];
beforeAll(async () => {
  await ensureBuilt();
  for (const [name, cells] of Object.entries(sheets))
    writeNotebook(join(rebuild, "sheets", `${name}.ipynb`), { metadata: {}, cells });
  results = await runSheets({
    sheets: [...Object.keys(sheets), "broken"].map((name) => ({
      name,
      path: join(rebuild, "sheets", `${name}.ipynb`),
    })),
    directory: rebuild,
    outputDirectory,
    cellTimeout: 3000,
    onProgress: (step) => progress.push(step),
  });
}, buildTimeout);

function resultOf(sheet: string): SheetResult {
  const result = results.find((one) => one.sheet === sheet);
  if (result === undefined) throw new Error(`no result of ${sheet}`);
  return result;
}

function written(sheet: string): readonly CodeCell[] {
  const { cells } = readNotebook(join(outputDirectory, `${sheet}.ipynb`));
  return cells.filter((cell): cell is CodeCell => cell.cell_type === "code");
}

describe("runSheets(options)", () => {
  it("gives one result a sheet, in order", () => {
    expect(results.map(({ sheet, status }) => `${sheet} ${status}`)).toEqual([
      "good ok",
      "clean ok",
      "throws failed",
      "complains failed",
      "late failed",
      "slow failed",
      "dies failed",
      "revived ok",
      "broken failed",
    ]);
  });
  it("runs cells in the rebuild's folder, and writes outputs and numbers", () => {
    const [read, show, empty] = written("good");
    expect(read).toMatchObject({ execution_count: 1, outputs: [] });
    expect(show?.execution_count).toBe(2);
    expect(show?.outputs).toEqual([
      { output_type: "stream", name: "stdout", text: "one\ntwo\n" },
      { output_type: "execute_result", data: { "text/plain": "2.43" }, metadata: {}, execution_count: 2 },
    ]);
    expect(empty).toMatchObject({ execution_count: null, outputs: [] });
    const file = readNotebook(join(outputDirectory, "good.ipynb"));
    expect(resultOf("good").notebook!.cells).toEqual(file.cells);
    // What the file carries beside the notebook: the hash of each cell, by which an altered one is named.
    const { [cellHashesKey]: hashes, ...metadata } = file.metadata;
    expect(resultOf("good").notebook!.metadata).toEqual(metadata);
    expect(Object.keys(hashes as object)).toEqual(file.cells.map(({ id }) => id).sort());
  });
  it("runs each sheet in a clean state, numbered from 1", () => {
    expect(written("clean")[0]).toMatchObject({
      execution_count: 1,
      outputs: [{ data: { "text/plain": "'undefined'" } }],
    });
  });
  it("stops a sheet at the cell that fails, names it, and writes what there is", () => {
    const { failedCell, error, notRun } = resultOf("throws");
    expect(failedCell).toMatchObject({ id: "fails", index: 1 });
    expect(error).toMatchObject({ name: "RangeError", message: "too large" });
    expect(notRun).toEqual(["after", "last"]);
    const [, fails, after] = written("throws");
    expect(fails?.outputs[0]).toMatchObject({
      output_type: "error",
      ename: "RangeError",
      evalue: "too large",
    });
    expect(after).toMatchObject({
      execution_count: null,
      outputs: [{ data: { "text/plain": "Not run, because cell fails failed." } }],
    });
  });
  it("lets a sheet fail that writes to its error output, at once or late", () => {
    expect(resultOf("complains")).toMatchObject({
      failedCell: { id: "complain" },
      stderr: "not well\n",
      notRun: ["after"],
    });
    expect(resultOf("late")).toMatchObject({ failedCell: { id: "start" }, stderr: "too late\n", notRun: [] });
  });
  it("interrupts a cell that takes too long", () => {
    expect(resultOf("slow").error?.message).toBe("the cell took longer than 3 s: it was interrupted");
  });
  it("starts a new kernel after one died, and says so", () => {
    expect(resultOf("dies")).toMatchObject({ error: { name: "KernelDiedError" }, notRun: ["after"] });
    expect(written("dies")[0]?.outputs[0]).toMatchObject({ output_type: "error", ename: "KernelDiedError" });
    expect(resultOf("revived").newKernel).toMatch(/the kernel ended with exit code 7/);
    expect(results.filter(({ newKernel }) => newKernel !== undefined)).toHaveLength(1);
  });
  it("reports a file that is no notebook, and goes on", () => {
    const { error, notebook } = resultOf("broken");
    expect(error?.message).toMatch(/broken\.ipynb: not a notebook/);
    expect(notebook).toBeUndefined();
  });
  it("tells how far it has come", () => {
    expect(progress.filter(({ type }) => type === "kernel-started")).toHaveLength(2);
    expect(
      progress.filter((step) => "sheet" in step && step.sheet === "good").map((step) => step.type),
    ).toEqual(["sheet-started", "cell-started", "cell-started"]);
    expect(progress.filter(({ type }) => type === "sheet-ended")).toHaveLength(results.length);
  });
  it("writes the same bytes when it runs again", async () => {
    const file = join(outputDirectory, "good.ipynb");
    const first = readFileSync(file, "utf8");
    await runSheets({
      sheets: [{ name: "good", path: join(rebuild, "sheets", "good.ipynb") }],
      directory: rebuild,
      outputDirectory,
    });
    expect(readFileSync(file, "utf8")).toBe(first);
  });
  it("refuses two sheets of one name, and a name that is none", async () => {
    const twice = [
      { name: "a", path: "a" },
      { name: "a", path: "b" },
    ];
    await expect(runSheets({ sheets: twice, directory: rebuild, outputDirectory })).rejects.toThrow(
      /got a twice/,
    );
    const outside = [{ name: "../a", path: "a" }];
    await expect(runSheets({ sheets: outside, directory: rebuild, outputDirectory })).rejects.toThrow(
      /got \.\.\/a/,
    );
  });
});

describe("failureText(result)", () => {
  it("names the cell, shows its source and the error, and what was not run", () => {
    expect(failureText(resultOf("throws")).split("\n")).toEqual([
      "throws: cell fails (number 2) failed",
      "  | const value = 3;",
      '  | if (value > limit) throw new RangeError("too large");',
      "  RangeError: too large",
      "  in cell 2, line 2:26",
      "    1 | const value = 3;",
      '  > 2 | if (value > limit) throw new RangeError("too large");',
      "      |                          ^",
      "  not run after it: after, last",
      "",
    ]);
  });
  it("is empty for a sheet that went well", () => {
    expect(failureText(resultOf("good"))).toBe("");
  });
});
