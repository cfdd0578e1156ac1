import { join } from "node:path";
import { filesToShare } from "../record/bundle/index.js";
import {
  dropUnusedCopies,
  forgetReads,
  oneRunAtATime,
  outputPath,
  type RebuildFacts,
  type RunUnderWay,
  readRebuildFile,
  rebuildFileName,
  reportFile,
  type SheetFile,
  sealSheet,
  versions,
  writeFile,
  writeManifest,
} from "../record/index.js";
import type { Painter } from "../view/picture/painter.js";
import { ThreadPainter } from "../view/picture/thread-painter.js";
import type { RunningKernel } from "./client/running-kernel.js";
import { headingOf } from "./file/heading-of.js";
import { readNotebook } from "./file/notebook-file.js";
import { isAsLeft, whyToRun } from "./fresh-sheets.js";
import { buildReport, ReportSections, type ReportSheet } from "./report/index.js";
import { reportOfFiles } from "./report-of-files.js";
import { failureText } from "./runner/failure-text.js";
import { type Progress, runSheets } from "./runner/run-sheets.js";
import type { SheetResult } from "./runner/sheet-result.js";
import { sheetsInOrder } from "./sheets-in-order.js";

/** The folder of a rebuild that holds what is derived: executed notebooks and the report. */
export const outputFolder = "out";

export interface RunRebuildOptions {
  /** The folder that holds rebuild.json. */
  readonly directory: string;
  /** "stale": only sheets whose results do not follow any more from what is on disk; else all. */
  readonly only?: "stale";
  /** Whether executed notebooks carry figures as PNG too, for what shows neither HTML nor SVG. */
  readonly png?: boolean;
  /** A kernel for runs that is being started already, see `startRunKernel`; it is closed with the run. */
  readonly kernel?: Promise<RunningKernel>;
  /** Starts a kernel where one is needed: how foreign code is kept in a sandbox. */
  readonly startKernel?: () => Promise<RunningKernel>;
  /** How long one cell may take [ms]; ten minutes where not given. */
  readonly cellTimeout?: number;
  readonly onStart?: (facts: RebuildFacts) => void;
  /** Called before a sheet is run because it is not fresh, with the reason. */
  readonly onStale?: (sheet: string, why: string) => void;
  readonly onProgress?: (progress: Progress) => void;
  /** Called where another run of the same rebuild is waited for. */
  readonly onWait?: (other: RunUnderWay) => void;
}

export interface RebuildRun {
  readonly facts: RebuildFacts;
  /** Of the sheets that were run, in the order of their run. */
  readonly results: readonly SheetResult[];
  /** The sheets that were fresh, and passed over. */
  readonly fresh: readonly string[];
  /** What sheets take over and no sheet hands on, each as a sentence. */
  readonly missing: readonly string[];
  /** The report's file. */
  readonly report: string;
}

/**
 * Runs the worksheets of a rebuild in the order that follows from what each takes over, writes the executed notebooks
 * and the report to its out/ folder, and leaves the records the sheets wrote in record/. A sheet that fails is in the report with its error. How each
 * sheet ended is noted for `sheetStates`. Another run of the same rebuild is waited for.
 *
 * @throws RebuildFileFaults  rebuild.json cannot be read
 * @throws RangeError  the rebuild has no worksheets, or they take over from each other in a ring
 */
export async function runRebuild(options: RunRebuildOptions): Promise<RebuildRun> {
  const painter = new ThreadPainter({ png: options.png === true });
  try {
    return await oneRunAtATime(options.directory, () => runAndReport(options, painter), options.onWait);
  } finally {
    await Promise.all([
      painter.close(),
      options.kernel?.then((kernel) => kernel.close()).catch(() => undefined),
    ]);
  }
}

async function runAndReport(options: RunRebuildOptions, painter: Painter): Promise<RebuildRun> {
  const { directory } = options;
  const facts = readRebuildFile(join(directory, rebuildFileName));
  const { sheets, missing } = sheetsInOrder(directory);
  if (sheets.length === 0) throw new RangeError(`runRebuild: no worksheets in ${join(directory, "sheets")}`);
  options.onStart?.(facts);
  const sections = new ReportSections(painter);
  const ended = new Map<string, ReportSheet>();
  const results = await runAndNote(sheets, options, painter, (result) => {
    const sheet = reportSheet(result);
    ended.set(sheet.name, sheet);
    sections
      .of(
        sheet,
        sheets.findIndex(({ name }) => name === sheet.name),
      )
      .catch(() => undefined); // told when the report is built
  });
  const report = join(directory, reportFile);
  const ran = new Set(results.map(({ sheet }) => sheet));
  const fresh = sheets.map(({ name }) => name).filter((name) => !ran.has(name));
  if (ran.size === 0 && isAsLeft(directory, reportFile)) return { facts, results, fresh, missing, report };

  const input = reportOfFiles({
    facts,
    sheets: sheets.map(({ name }) => ended.get(name) ?? freshSheet(name, directory)),
    files: filesToShare(directory, "follow"),
    versions: versions(),
  });
  writeFile(report, await buildReport(input, sections));
  dropUnusedCopies(directory, Date.now());
  writeManifest(directory, "written");
  return { facts, results, fresh, missing, report };
}

/**
 * Runs some worksheets of a rebuild, in its order, like `runRebuild`, but leaves the report alone: that is about all
 * of them.
 *
 * @throws RangeError  the rebuild has no worksheet of a name given
 */
export async function runSomeSheets(
  names: readonly string[],
  options: Pick<RunRebuildOptions, "directory" | "onProgress" | "onWait">,
): Promise<readonly SheetResult[]> {
  return oneRunAtATime(options.directory, () => runThese(names, options), options.onWait);
}

async function runThese(
  names: readonly string[],
  options: Pick<RunRebuildOptions, "directory" | "onProgress">,
): Promise<readonly SheetResult[]> {
  const { sheets } = sheetsInOrder(options.directory);
  const stranger = names.find((name) => !sheets.some((sheet) => sheet.name === name));
  if (stranger !== undefined)
    throw new RangeError(`runSomeSheets: there must be a sheet of each name, got ${stranger}`);
  const results = await runAndNote(
    sheets.filter(({ name }) => names.includes(name)),
    options,
  );
  writeManifest(options.directory, "left");
  return results;
}

async function runAndNote(
  sheets: readonly SheetFile[],
  {
    directory,
    only,
    kernel,
    startKernel,
    cellTimeout,
    onStale,
    onProgress,
  }: Omit<RunRebuildOptions, "onStart">,
  painter?: Painter,
  onSheet: (result: SheetResult) => void = () => {},
): Promise<readonly SheetResult[]> {
  const why = only === "stale" ? whyToRun(directory, sheets) : () => undefined;
  return runSheets({
    sheets,
    skip({ name }) {
      const reason = why(name);
      if (reason === "") return true;
      if (reason !== undefined) onStale?.(name, reason);
      forgetReads(directory, name);
      return false;
    },
    directory,
    kernel,
    ...(startKernel && { startKernel }),
    ...(cellTimeout !== undefined && { cellTimeout }),
    painter,
    outputDirectory: join(directory, outputFolder),
    // The next sheet may take over from this one while its pictures are being drawn; they may still fail.
    onCellsRun: (result) => noteOutcome(directory, result, "to come"),
    onProgress(progress) {
      if (progress.type === "sheet-ended") {
        noteOutcome(directory, progress.result, "written");
        onSheet(progress.result);
      }
      onProgress?.(progress);
    },
  });
}

/** Says on disk how a sheet ended, so that its state can be told later. */
function noteOutcome(directory: string, result: SheetResult, output: "to come" | "written"): void {
  const { sheet, status, notebook, failedCell, error } = result;
  const cell = failedCell && { cell: { id: failedCell.id, number: failedCell.index + 1 } };
  const failure = error && { failure: { ...cell, message: `${error.name}: ${error.message}` } };
  sealSheet(directory, { sheet, status, cells: notebook?.cells, output, ...failure });
}

/** A sheet for the report that was fresh, as it was run before. */
function freshSheet(name: string, directory: string): ReportSheet {
  const notebook = readNotebook(join(directory, outputPath(name)));
  return { name, title: headingOf(notebook.cells) ?? name, notebook, status: "ok" };
}

/** A sheet for the report as it was just run. */
function reportSheet(result: SheetResult): ReportSheet {
  const { sheet, status, path } = result;
  // From the file: a report made later of the same file must come out the same, down to the order of fields.
  const notebook = path === undefined ? undefined : readNotebook(path);
  return {
    name: sheet,
    title: notebook === undefined ? sheet : (headingOf(notebook.cells) ?? sheet),
    notebook,
    status,
    failure: status === "failed" ? failureText(result) : undefined,
  };
}
