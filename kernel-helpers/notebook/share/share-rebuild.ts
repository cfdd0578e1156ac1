import { join } from "node:path";
import {
  type BagTag,
  crateFile,
  crateMetadata,
  type Files,
  filesToShare,
  type LeftOut,
  leaveOut,
  leftOutFile,
  leftOutSentences,
  makeBag,
  type PrivateName,
  privateNames,
  readLeftOut,
  writeLeftOut,
} from "../../record/bundle/index.js";
import {
  packageVersion,
  type RebuildFacts,
  readOutcome,
  readRebuildFile,
  readRecords,
  rebuildFileName,
  type SheetState,
  sheetStates,
  type Versions,
  versions,
} from "../../record/index.js";
import { canonicalNotebook } from "../file/canonical-notebook.js";
import { checkNotebook } from "../file/check-notebook.js";
import { headingOf } from "../file/heading-of.js";
import type { Notebook } from "../file/notebook-format.js";
import { sheetNow } from "../fresh-sheets.js";
import { buildReport, type ReportSheet } from "../report/index.js";
import { reportOfFiles } from "../report-of-files.js";
import { sheetsInOrder } from "../sheets-in-order.js";
import { bundleName } from "./bundle-name.js";

export interface ShareOptions {
  /** The folder that holds rebuild.json. */
  readonly directory: string;
  /** Names to leave out besides those that rebuild.json lists as private. */
  readonly without?: readonly string[];
  /** The day it is shared: year-month-day. Where not given, that of the latest decision, else `today`. */
  readonly date?: string;
  /** Counts where neither a date is given nor a decision carries one: year-month-day. */
  readonly today: string;
}

/** A rebuild ready to be handed over. */
export interface SharedRebuild {
  /** The bundle's name, made of the title: "line-shaft-of-a-grist-mill". */
  readonly name: string;
  readonly date: string;
  /** The report for people. */
  readonly report: string;
  /** The bundle for machines: a bag, by path. */
  readonly bag: Files;
  readonly leftOut: LeftOut;
  /** What is said of this copy in report and bag, a sentence each. */
  readonly notices: readonly string[];
  /** Places where something left out is still named. */
  readonly stillNamed: readonly string[];
  /** Entries left out that are too short to be looked for in results [-]. */
  readonly tooShort: number;
  /** Sheets that are not as they were last run, with why. */
  readonly notFresh: readonly SheetState[];
}

/**
 * Makes a rebuild ready to be handed over, from its files as they are; no sheet is run. The same files and date give
 * the same bytes.
 *
 * @throws RangeError  a sheet has never been run, or a name to leave out is nowhere
 * @throws RebuildFileFaults  rebuild.json cannot be read
 */
export async function shareRebuild(options: ShareOptions): Promise<SharedRebuild> {
  const { directory } = options;
  const facts = readRebuildFile(join(directory, rebuildFileName));
  const all = filesToShare(directory);
  const before = readLeftOut(all);
  const { files, leftOut, stillNamed, tooShort } = leaveOut(
    all,
    namesToLeaveOut(facts, options),
    namesIn(before),
  );
  const left = merged(before, leftOut);
  const payload = new Map(files);
  payload.delete(leftOutFile);
  if (left.files.length > 0) payload.set(leftOutFile, writeLeftOut(left));

  const found = sheetsInOrder(directory).sheets;
  const sheets = found.map(({ name }) => name);
  const notFresh = sheetStates(directory, found.map(sheetNow)).filter(({ state }) => state === "stale");
  const notices = [...notFresh.map(notFreshSentence), ...leftOutSentences(left)];
  const report = await buildReport(
    reportOfFiles({
      facts: { ...facts, machine: machineOf(payload) },
      sheets: sheets.map((sheet) => sheetOf(directory, sheet, payload)),
      files: payload,
      versions: versionsOfRun(directory, sheets),
      notices,
    }),
  );
  payload.set("out/report.html", new TextEncoder().encode(report));

  const date = options.date ?? latestDecision(directory) ?? options.today;
  const name = bundleName(facts.title);
  const said = { title: facts.title, description: descriptionOf(facts), date, terms: termsNotStated };
  payload.set(
    crateFile,
    crateMetadata(payload, { ...said, versions: { ...versionsOfRun(directory, sheets) } }),
  );
  const bag = makeBag(payload, bagInfo(facts, date, notices));
  return { name, date, report, bag, leftOut: left, notices, stillNamed, tooShort, notFresh };
}

function namesToLeaveOut(facts: RebuildFacts, { without = [] }: ShareOptions): readonly PrivateName[] {
  return [...privateNames(facts.private), ...without.map((name) => ({ section: "any", name }) as const)];
}

/** Names that stand in quotes in what was left out before. */
function namesIn(before: LeftOut | undefined): readonly string[] {
  return (before?.files ?? []).flatMap(({ parts }) =>
    parts.flatMap(({ what }) => [...what.matchAll(/"([^"]+)"/g)].map(([, name]) => name!)),
  );
}

/** What was left out before stays said: this copy was made of one that was not whole. */
function merged(before: LeftOut | undefined, now: LeftOut): LeftOut {
  if (before === undefined) return now;
  const files = [...before.files];
  for (const change of now.files) {
    const at = files.findIndex(({ file }) => file === change.file);
    if (at < 0) files.push(change);
    else files[at] = { ...files[at]!, parts: [...files[at]!.parts, ...change.parts] };
  }
  const cannotRun = [...before.cannotRun, ...now.cannotRun];
  const mayDiffer = [...new Set([...before.mayDiffer, ...now.mayDiffer])].sort();
  return { schema: 1, files: files.sort((a, b) => (a.file < b.file ? -1 : 1)), cannotRun, mayDiffer };
}

/** Facts of the machine as the copy has them, in their order. */
function machineOf(payload: Files): RebuildFacts["machine"] {
  const json = JSON.parse(new TextDecoder().decode(payload.get(rebuildFileName)));
  return Object.entries<string>(json.machine ?? {}).map(([label, value]) => ({ label, value }));
}

/** A sheet as it was last run, from the executed notebook in the copy. */
function sheetOf(directory: string, name: string, payload: Files): ReportSheet {
  const path = `out/${name}.ipynb`;
  const bytes = payload.get(path);
  const outcome = readOutcome(directory, name);
  const ended = outcome?.status ?? (bytes === undefined ? undefined : endOf(bytes));
  if (bytes === undefined || ended === undefined)
    throw new RangeError(
      `shareRebuild: every sheet must have been run, got none of ${name}; journalbox run does that`,
    );
  const notebook = canonicalNotebook(checkNotebook(JSON.parse(new TextDecoder().decode(bytes)), path));
  const failure = outcome?.failure?.message;
  const title = headingOf(notebook.cells) ?? name;
  return { name, title, notebook, status: ended, ...(failure !== undefined && { failure }) };
}

/** How a run ended that was made elsewhere: by what the executed notebook shows. */
function endOf(bytes: Uint8Array): "ok" | "failed" {
  const { cells }: Pick<Notebook, "cells"> = JSON.parse(new TextDecoder().decode(bytes));
  const failed = cells.some(
    (cell) => cell.cell_type === "code" && cell.outputs.some(({ output_type }) => output_type === "error"),
  );
  return failed ? "failed" : "ok";
}

function notFreshSentence({ name, why }: SheetState): string {
  return `What is shown of ${name} is not what its files give now. ${why}`;
}

function versionsOfRun(directory: string, sheets: readonly string[]): Versions {
  for (const sheet of sheets) {
    const { journalbox, node, tslab } = readOutcome(directory, sheet)?.versions ?? {};
    if (journalbox !== undefined && node !== undefined && tslab !== undefined)
      return { journalbox, node, tslab };
  }
  return versions();
}

function latestDecision(directory: string): string | undefined {
  const dates = readRecords(directory).flatMap(({ decisions }) =>
    Object.values(decisions).map(({ on }) => on),
  );
  return dates
    .filter((on) => /^\d{4}-\d\d-\d\d$/.test(on))
    .sort()
    .at(-1);
}

function descriptionOf({ machine, invented }: RebuildFacts): string {
  const what = machine.find(({ label }) => label === "what it is")?.value;
  const remark = invented ? " The readings are invented, for demonstration." : "";
  return `Readings, worksheets, results and decisions of a rebuild${what === undefined ? "" : `: ${what}`}.${remark}`;
}

const termsNotStated =
  "The rebuild does not say under which terms it may be used; ask those from whom you have it.";

function bagInfo(facts: RebuildFacts, date: string, notices: readonly string[]): readonly BagTag[] {
  return [
    { label: "Bag-Software-Agent", value: `Journalbox ${packageVersion()}` },
    { label: "Bagging-Date", value: date },
    { label: "External-Description", value: facts.title },
    ...notices.map((value) => ({ label: "Of-This-Copy", value })),
  ];
}
