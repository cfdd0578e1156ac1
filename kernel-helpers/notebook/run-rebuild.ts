import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import {
  findSheets,
  type RebuildFacts,
  readRebuildFile,
  rebuildFileName,
  recordFolder,
  versions,
  writeFile,
} from "../record/index.js";
import type { Notebook } from "./file/notebook-format.js";
import { buildReport, type Labelled, type ReportSheet } from "./report/index.js";
import { failureText } from "./runner/failure-text.js";
import { type Progress, runSheets } from "./runner/run-sheets.js";
import type { SheetResult } from "./runner/sheet-result.js";

/** The folder of a rebuild that holds what is derived: executed notebooks and the report. */
export const outputFolder = "out";

export interface RunRebuildOptions {
  /** The folder that holds rebuild.json. */
  readonly directory: string;
  readonly onStart?: (facts: RebuildFacts) => void;
  readonly onProgress?: (progress: Progress) => void;
}

export interface RebuildRun {
  readonly facts: RebuildFacts;
  readonly results: readonly SheetResult[];
  /** The report's file. */
  readonly report: string;
}

/**
 * Runs every worksheet of a rebuild, writes the executed notebooks and the report to its out/ folder, and
 * leaves the records the sheets wrote in record/. A sheet that fails is in the report with its error.
 *
 * @throws RebuildFileFaults  rebuild.json cannot be read
 * @throws RangeError  the rebuild has no worksheets
 */
export async function runRebuild(options: RunRebuildOptions): Promise<RebuildRun> {
  const { directory } = options;
  const facts = readRebuildFile(join(directory, rebuildFileName));
  const sheets = findSheets(directory);
  if (sheets.length === 0) throw new RangeError(`runRebuild: no worksheets in ${join(directory, "sheets")}`);
  options.onStart?.(facts);
  const results = await runSheets({
    sheets,
    directory,
    outputDirectory: join(directory, outputFolder),
    onProgress: options.onProgress,
  });

  const tables = filesIn(directory, "tables", ".csv");
  const html = await buildReport({
    title: facts.title,
    facts: facts.machine,
    invented: facts.invented,
    sheets: results.map(reportSheet),
    tables: tables.map(({ name, text, sha256 }) => ({ name, file: `${name}.csv`, text, sha256 })),
    records: filesIn(directory, recordFolder, ".json").map(({ name, text }) => ({
      name: `${name}.json`,
      text,
    })),
    provenance: provenance(facts, tables, sheets),
  });
  const report = join(directory, outputFolder, "report.html");
  writeFile(report, html);
  return { facts, results, report };
}

function reportSheet(result: SheetResult): ReportSheet {
  const { sheet, status, notebook } = result;
  return {
    name: sheet,
    title: notebook === undefined ? sheet : (headingOf(notebook) ?? sheet),
    notebook,
    status,
    failure: status === "failed" ? failureText(result) : undefined,
  };
}

/** The first heading of a notebook's text. */
function headingOf(notebook: Notebook): string | undefined {
  for (const { cell_type, source } of notebook.cells) {
    const heading = cell_type === "markdown" ? /^#\s+(.+?)\s*$/m.exec(source) : null;
    if (heading !== null) return heading[1];
  }
  return undefined;
}

interface NamedFile {
  readonly name: string;
  readonly text: string;
  readonly sha256: string;
}

function filesIn(directory: string, folder: string, ending: string): readonly NamedFile[] {
  const path = join(directory, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path)
    .filter((file) => file.endsWith(ending))
    .sort()
    .map((file) => {
      const bytes = readFileSync(join(path, file));
      return { name: basename(file, ending), text: bytes.toString("utf8"), sha256: sha256(bytes) };
    });
}

function provenance(
  facts: RebuildFacts,
  tables: readonly NamedFile[],
  sheets: readonly { readonly name: string; readonly path: string }[],
): readonly Labelled[] {
  const { journalbox, node, tslab } = versions();
  return [
    { label: "Journalbox", value: journalbox },
    { label: "Node.js", value: node },
    { label: "tslab", value: tslab },
    { label: rebuildFileName, value: facts.sha256 },
    ...tables.map(({ name, sha256 }) => ({ label: `tables/${name}.csv`, value: sha256 })),
    ...sheets.map(({ name, path }) => ({
      label: `${name}.ipynb, as run`,
      value: sha256(readFileSync(path)),
    })),
  ];
}

function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
