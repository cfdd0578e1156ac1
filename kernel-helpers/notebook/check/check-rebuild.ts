import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import {
  codeSources,
  findSheets,
  orderOfRun,
  type RebuildFacts,
  RebuildFileFaults,
  readRebuildFile,
  rebuildFileName,
  type SheetFile,
  sheetLinks,
} from "../../record/index.js";
import { readTableFile, TableFaults } from "../../survey/index.js";
import { readNotebook } from "../file/notebook-file.js";
import type { Notebook } from "../file/notebook-format.js";
import { notebookJson } from "../file/notebook-json.js";
import { createCodeChecker } from "./check-code.js";
import type { CheckFault } from "./check-fault.js";
import { jsonLine } from "./json-line.js";

/** What a check of a rebuild found. */
export interface RebuildCheck {
  readonly kind: "rebuild-check";
  /** True where nothing keeps a run from going well, as far as can be told without running. */
  readonly passes: boolean;
  readonly tables: number;
  readonly sheets: number;
  /** In the order of files: rebuild.json, tables, worksheets. */
  readonly faults: readonly CheckFault[];
}

/**
 * Checks a rebuild without running any cell: rebuild.json, every table, and of every worksheet its form, its code, the
 * tables it reads, and whether what it takes over is handed on by another. Everything is told at once.
 *
 * @param directory  the folder that holds rebuild.json
 */
export function checkRebuild(directory: string): RebuildCheck {
  const { facts, faults: inFacts } = checkFacts(directory);
  const tables = filesIn(directory, "tables", ".csv");
  const sheets = findSheets(directory);
  const inSheets = checkSheets(directory, sheets, tables);
  const needed = tablesNeeded(sheets);
  const inTables = tables.flatMap((file) => checkTable(directory, file, facts, needed));
  const faults = [...inFacts, ...inTables, ...inSheets];
  return Object.freeze({
    kind: "rebuild-check",
    passes: faults.every(({ severity }) => severity === "open"),
    tables: tables.length,
    sheets: sheets.length,
    faults: Object.freeze(faults.map((fault) => Object.freeze(fault))),
  });
}

const whole = { line: 0, column: 0 };

function filesIn(directory: string, folder: string, ending: string): readonly string[] {
  const path = join(directory, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path)
    .filter((file) => file.endsWith(ending))
    .sort()
    .map((file) => `${folder}/${file}`);
}

function checkFacts(directory: string): { facts?: RebuildFacts; faults: readonly CheckFault[] } {
  const path = join(directory, rebuildFileName);
  const file = rebuildFileName;
  try {
    const facts = readRebuildFile(path);
    const text = readFileSync(path, "utf8");
    const faults = facts.examples.map((entry): CheckFault => {
      const dot = entry.indexOf(".");
      const line = jsonLine(text, [entry.slice(0, dot), entry.slice(dot + 1)]);
      const what = `${entry} is still an example; put in the machine's own and take it off the list "examples"`;
      return { severity: "open", file, line, column: 0, what };
    });
    return { facts, faults };
  } catch (error) {
    if (!(error instanceof RebuildFileFaults)) throw error;
    const text = readFileSync(path, "utf8");
    return {
      faults: error.faults.map((what) => ({ severity: "fault", file, ...placeIn(text, what), what })),
    };
  }
}

/** Where a fault of rebuild.json lies: it begins with the line, or with the entry's names between dots. */
function placeIn(text: string, fault: string): Pick<CheckFault, "line" | "column"> {
  const line = /^line (\d+): /.exec(fault)?.[1];
  if (line !== undefined) return { line: Number(line), column: 0 };
  const place = fault.slice(0, Math.max(fault.indexOf(": "), 0));
  try {
    JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    return whole;
  }
  const dot = place.indexOf(".");
  const names = dot < 0 ? [place] : [place.slice(0, dot), place.slice(dot + 1)];
  return {
    line: jsonLine(text, names) || jsonLine(text, place.split(".")) || jsonLine(text, names.slice(0, 1)),
    column: 0,
  };
}

/** The tables that a worksheet asks for and cannot do without; undefined where one cannot be read to tell. */
function tablesNeeded(sheets: readonly SheetFile[]): ReadonlySet<string> | undefined {
  try {
    const sources = sheets.flatMap(({ path }) => codeSources(readNotebook(path).cells));
    return new Set(sources.flatMap((source) => [...source.matchAll(tableAsked)].map((found) => found[2]!)));
  } catch {
    return undefined;
  }
}

const tableAsked = /\.\s*table\s*\(\s*(["'`])((?:(?!\1).)+)\1/g;

function checkTable(
  directory: string,
  file: string,
  facts: RebuildFacts | undefined,
  needed: ReadonlySet<string> | undefined,
): readonly CheckFault[] {
  // Without a rebuild.json that can be read, instruments and parts are not known, and are not asked for.
  const known = facts === undefined ? {} : { instruments: facts.instruments, parts: facts.parts };
  try {
    const { warnings } = readTableFile(join(directory, file), {
      name: basename(file, ".csv"),
      file,
      ...known,
    });
    if (facts === undefined) return [];
    return warnings.map((what) => ({
      severity: "open",
      file,
      line: Number(/^Line (\d+)/.exec(what)?.[1] ?? 0),
      column: 0,
      what,
    }));
  } catch (error) {
    if (!(error instanceof TableFaults)) throw error;
    if (error.isOnlyHeader && needed?.has(basename(file, ".csv")) === false) {
      const what = "nothing is written under its header yet; the worksheets do without";
      return [{ severity: "open", file, line: error.faults[0]!.line, column: 0, what }];
    }
    return error.faults.map(({ line, columnNumber, column, found, expected, mend }) => ({
      severity: "fault",
      file,
      line,
      column: columnNumber,
      what: `${column === "" ? "" : `${column}: `}found ${found}, expected ${expected}; ${mend}`,
    }));
  }
}

interface ReadSheet {
  readonly name: string;
  readonly file: string;
  readonly notebook: Notebook;
}

function checkSheets(
  directory: string,
  sheets: readonly SheetFile[],
  tables: readonly string[],
): readonly CheckFault[] {
  const faults: CheckFault[] = [];
  const read: ReadSheet[] = [];
  for (const { name, path } of sheets) {
    const inside = relative(directory, path);
    const file = inside.startsWith("..") ? `${name}.ipynb` : inside.replaceAll("\\", "/");
    try {
      const notebook = readNotebook(path);
      read.push({ name, file, notebook });
      if (notebookJson(notebook) !== readFileSync(path, "utf8"))
        faults.push({
          severity: "open",
          file,
          ...whole,
          what: "it is not in its canonical form: saved in the live page it is, and a diff then shows only what was changed",
        });
    } catch (error) {
      const what = error instanceof Error ? error.message.replace(`${path}: `, "") : String(error);
      faults.push({ severity: "fault", file, ...whole, what });
    }
  }
  faults.push(...checkOrder(read));
  const checker = createCodeChecker(directory);
  try {
    for (const sheet of read) {
      faults.push(...tablesMissing(sheet, tables));
      const cells = sheet.notebook.cells.filter(
        ({ cell_type, source }) => cell_type === "code" && source.trim() !== "",
      );
      for (const { cell, line, column, text, fileName } of checker.check(cells)) {
        const place = fileName === undefined ? { cell, line, column } : { line, column };
        faults.push({ severity: "fault", file: fileName ?? sheet.file, ...place, what: text });
      }
    }
  } finally {
    checker.close();
  }
  return faults;
}

/** Whether everything taken over is handed on, by a sheet that can run before. */
function checkOrder(sheets: readonly ReadSheet[]): readonly CheckFault[] {
  const linked = sheets.map(({ name, notebook }) => ({
    name,
    links: sheetLinks(codeSources(notebook.cells)),
  }));
  const fileOf = (text: string): string => sheets.find(({ name }) => text.includes(name))?.file ?? "sheets";
  try {
    return orderOfRun(linked).missing.map((what) => ({
      severity: "fault",
      file: fileOf(what),
      ...whole,
      what,
    }));
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    return [{ severity: "fault", file: fileOf(what), ...whole, what }];
  }
}

/** Tables asked for by a name that is written out, and not there. */
function tablesMissing({ file, notebook }: ReadSheet, tables: readonly string[]): readonly CheckFault[] {
  const faults: CheckFault[] = [];
  for (const { id, cell_type, source } of notebook.cells) {
    if (cell_type !== "code") continue;
    for (const found of source.matchAll(tableAsked)) {
      if (tables.includes(`tables/${found[2]}.csv`)) continue;
      const before = source.slice(0, found.index).split("\n");
      const place = { cell: id, line: before.length, column: before.at(-1)!.length + 1 };
      const names = tables.map((table) => basename(table, ".csv")).join(", ") || "none";
      const what = `there is no tables/${found[2]}.csv; there are ${names}`;
      faults.push({ severity: "fault", file, ...place, what });
    }
  }
  return faults;
}
