import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ts from "@tslab/typescript-for-tslab";
import { bench, describe } from "vitest";
import { readNotebook, writeNotebook } from "../../kernel-helpers/notebook/file/notebook-file.js";
import type { Cell } from "../../kernel-helpers/notebook/file/notebook-format.js";
import { sheetsInOrder } from "../../kernel-helpers/notebook/sheets-in-order.js";
import { templateFolder } from "../../kernel-helpers/record/find-sheets.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";

// The whole demo rebuild, from a fresh process: both runners read the same cells. Ours also draws every figure and
// writes the report; Jupyter with plain tslab prints results as text and draws nothing.
const folder = mkdtempSync(join(tmpdir(), "journalbox-bench-"));
process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
const hasJupyter = spawnSync("jupyter", ["nbconvert", "--version"]).status === 0;
if (!hasJupyter) process.stderr.write("\nNOT MEASURED HERE: there is no jupyter nbconvert to compare with\n");

function newRebuild(name: string): string {
  const rebuild = join(folder, name);
  for (const part of ["rebuild.json", "tables"])
    cpSync(join(templateFolder(), "demo", part), join(rebuild, part), { recursive: true });
  return rebuild;
}

/** Plain tslab overlooks the short form of a property whose value comes from an earlier cell: written out here. */
function writtenOut(cell: Cell): Cell {
  if (cell.cell_type !== "code") return cell;
  const file = ts.createSourceFile("cell.ts", cell.source, ts.ScriptTarget.Latest);
  const ends: { readonly at: number; readonly name: string }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isShorthandPropertyAssignment(node)) ends.push({ at: node.name.end, name: node.name.text });
    ts.forEachChild(node, visit);
  };
  visit(file);
  const source = ends.reduceRight(
    (text, { at, name }) => `${text.slice(0, at)}: ${name}${text.slice(at)}`,
    cell.source,
  );
  return { ...cell, source };
}

function setUpJupyter(): {
  readonly sheets: string;
  readonly files: string[];
  readonly environment: NodeJS.ProcessEnv;
} {
  const rebuild = newRebuild("with-jupyter");
  const sheets = join(rebuild, "sheets");
  mkdirSync(sheets);
  const files = sheetsInOrder(newRebuild("list")).sheets.map(({ name, path }) => {
    const notebook = readNotebook(path);
    writeNotebook(join(sheets, `${name}.ipynb`), { ...notebook, cells: notebook.cells.map(writtenOut) });
    return `${name}.ipynb`;
  });
  mkdirSync(join(rebuild, "node_modules"));
  symlinkSync(packageRoot(), join(rebuild, "node_modules", "journalbox"), "junction");
  const spec = join(folder, "data", "kernels", "journalbox");
  mkdirSync(spec, { recursive: true });
  const program = createRequire(__filename).resolve("tslab/bin/tslab");
  const argv = [process.execPath, program, "kernel", "--config-path", "{connection_file}"];
  writeFileSync(
    join(spec, "kernel.json"),
    JSON.stringify({ argv, display_name: "tslab", language: "typescript" }),
  );
  const environment = { ...process.env, JUPYTER_DATA_DIR: join(folder, "data"), JUPYTER_PATH: "" };
  return { sheets, files, environment };
}

function mustEndWell(run: ReturnType<typeof spawnSync>): void {
  if (run.status !== 0) throw new Error(`${run.stdout}\n${run.stderr}`);
}

describe.runIf(hasJupyter)("the demo rebuild, from a fresh process", () => {
  const options = { iterations: 5, warmupIterations: 1, time: 0, warmupTime: 0 };
  const ours = newRebuild("ours");
  const { sheets, files, environment } = setUpJupyter();
  const cli = join(packageRoot(), "dist", "cli", "main.js");
  bench(
    "journalbox run, with figures and report",
    () => mustEndWell(spawnSync(process.execPath, [cli, "run", "--all", ours], { encoding: "utf8" })),
    options,
  );
  bench(
    "jupyter nbconvert --execute with plain tslab",
    () =>
      mustEndWell(
        spawnSync(
          "jupyter",
          ["nbconvert", "--to", "notebook", "--execute", "--output-dir", join(folder, "executed"), ...files],
          { cwd: sheets, env: environment, encoding: "utf8" },
        ),
      ),
    options,
  );
});
