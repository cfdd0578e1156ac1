import { createHash } from "node:crypto";
import { systemOf } from "../quantity/index.js";
import { isWordsName } from "./column-names.js";
import { conditionsFrom, type KnownThings } from "./conditions.js";
import { decodeText } from "./decode-text.js";
import { readTableCells } from "./read-table-cells.js";
import { checkDiameters } from "./read-table-diameters.js";
import { type HeaderColumn, readTableHeader } from "./read-table-header.js";
import { checkPlaces } from "./read-table-places.js";
import { readTableRows } from "./read-table-rows.js";
import type { Column, Remark, Table } from "./table.js";
import { noRows, type ReportFault, type TableFault, TableFaults } from "./table-faults.js";

/** What a table is called, and what its remarks may name. */
export interface ReadTableOptions extends KnownThings {
  /** The name a worksheet calls it by. */
  readonly name: string;
  /** The file, for messages and for the record. */
  readonly file: string;
}

/**
 * Reads a table of readings from the bytes of a CSV file:
 *
 * ```
 * # instrument: mic-2-3
 * # temperature: 54 ± 2 degF
 * station [in],angle [deg],diameter [in],remark
 * 0.5,0,2.4374,
 * 0.5,90,2.4332,light rust
 * 1.0,0,-,not reached
 * ```
 *
 * - Lines that begin with # are remarks, `# key: value`; `conditionsFrom` says which are understood.
 * - Every header carries its unit in square brackets; [-] is a plain number, [text] words. Columns called
 *   remark, comment, note, instrument, by, date or time hold words without saying so.
 * - Readings at several angles stand below each other (the long form, with a column angle) or side by side
 *   (the wide form: `diameter @ 0 deg [in]`, `diameter @ 90 deg [in]`).
 * - Numbers have a decimal point: 2.4332, 2 7/16, 1.2e-3. `-` says that no reading was taken.
 * - Text in UTF-8 (UTF-16 with a byte order mark), lines ending as they like, blank lines anywhere.
 *
 * Diameters must be greater than 0 and within a third to three times the median of their name, unless the
 * row's remark says "checked" or a line says `# checked: line 12`. A station (with its angle) stands once,
 * unless it is said to be a repeat. Nothing is guessed, and nothing left out.
 *
 * @param bytes  of the file
 * @param options.name  what worksheets call the table
 * @param options.file  its name in messages
 * @param options.instruments  those that remarks may name
 * @param options.parts  those that remarks may name
 * @returns the table; values in SI units [m, rad, …], doubts in `warnings`
 * @throws TableFaults  all that is wrong with it, at once
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0.5,2 7/16");
 * readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" }).rowCount // 1
 * @source the form is our own; cells and quotes as in RFC 4180 (Y. Shafranovich, 2005), section 2
 */
export function readTable(bytes: Uint8Array, options: ReadTableOptions): Table {
  const { name, file } = options;
  const faults: TableFault[] = [];
  const report: ReportFault = (line, column, found, expected, mend) => {
    const [header, number] = [column?.header ?? "", column?.number ?? 0];
    faults.push(Object.freeze({ file, line, column: header, columnNumber: number, found, expected, mend }));
  };
  const table = tableFrom(bytes, options, report);
  if (table === undefined || faults.length > 0) throw new TableFaults(file, faults);
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  return Object.freeze({ kind: "table", name, file, ...table, sha256 });
}

type TableContent = Omit<Table, "kind" | "name" | "file" | "sha256">;

/** All but the name of a table; where faults are reported, something like it, or undefined. */
function tableFrom(bytes: Uint8Array, known: KnownThings, report: ReportFault): TableContent | undefined {
  const text = decodeText(bytes, report);
  if (text === undefined) return undefined;
  const rows = readTableRows(text, report);
  const headerLine = rows.lines[0];
  if (headerLine === undefined) {
    const found = text.trim() === "" ? "nothing" : "remarks only";
    report(
      0,
      undefined,
      found,
      'a header such as "station [in],diameter [in]"',
      "write the header and the readings",
    );
    return undefined;
  }
  const header = readTableHeader(rows.cells[0]!, headerLine, report);
  if (header.length === 0) return undefined;
  if (rows.cells.length === 1)
    report(headerLine, undefined, noRows, "a row for each reading", "write the readings below it");
  const columns = readTableCells(rows, header, report);
  const lines = Object.freeze(rows.lines.slice(1));
  checkDiameters(columns, header, lines, checkedLines(columns, lines, rows.remarks, report), report);
  const doubts = checkPlaces(columns, header, lines, rows.remarks, report);
  const { conditions, warnings } = conditionsFrom(rows.remarks, columns, known, report);
  return {
    remarks: Object.freeze(rows.remarks),
    columns: Object.freeze(columns),
    rowCount: lines.length,
    lines,
    unitSystem: unitSystemOf(header),
    conditions,
    warnings: Object.freeze([...warnings, ...doubts]),
  };
}

/** The lines whose readings somebody has checked: the row's remark says so, or a line `# checked: line 12`. */
function checkedLines(
  columns: readonly Column[],
  lines: readonly number[],
  remarks: readonly Remark[],
  report: ReportFault,
): ReadonlySet<number> {
  const checked = new Set<number>();
  for (const { name, text } of columns)
    if (isWordsName(name))
      for (let row = 0; row < lines.length; row++)
        if (/(?<!not )\bchecked\b/i.test(text[row]!)) checked.add(lines[row]!);
  for (const { key, value, line } of remarks) {
    if (key !== "checked") continue;
    const named = (value.match(/\d+/g) ?? []).map(Number);
    const rowLines = new Set(lines);
    const missing = named.find((one) => !rowLines.has(one));
    if (named.length === 0 || missing !== undefined)
      report(
        line,
        undefined,
        `"checked: ${value}"`,
        "the line of a row, counted in this file",
        'write e.g. "# checked: line 12"; lines move when others are put in above',
      );
    for (const one of named) checked.add(one);
  }
  return checked;
}

function unitSystemOf(header: readonly HeaderColumn[]): Table["unitSystem"] {
  for (const { dimension, unit } of header) {
    const system = dimension === "length" ? systemOf(unit!) : "both";
    if (system !== "both") return system;
  }
  return undefined;
}
