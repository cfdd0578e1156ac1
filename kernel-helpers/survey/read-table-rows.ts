import { type CsvError, parse } from "csv-parse/sync";
import { csvForm } from "./csv-form.js";
import type { Remark } from "./table.js";
import type { ReportFault } from "./table-faults.js";

/** The rows of a file as they stand, header first, each with the line it begins on. */
export interface TableRows {
  readonly cells: readonly (readonly string[])[];
  readonly lines: readonly number[];
  readonly remarks: readonly Remark[];
}

/**
 * Takes a text apart: lines that begin with `#` are remarks, blank lines hold nothing, the others are rows
 * of cells between commas (in double quotes where a cell holds a comma, a quote or a line end).
 *
 * Cells parted by semicolons or tabs are reported, and read all the same so that other faults are found.
 * So is a quote that is left open; the lines it would swallow are read as rows.
 */
export function readTableRows(text: string, report: ReportFault): TableRows {
  const textLines = text.split("\n");
  const headerAt = textLines.findIndex((line) => line.trim() !== "" && !isRemark(line));
  const delimiter = headerAt < 0 ? "," : delimiterOf(textLines[headerAt]!);
  if (delimiter !== ",") reportDelimiter(headerAt + 1, delimiter, report);
  const rows: OpenRows = { cells: [], lines: [], remarks: [] };
  readLines(textLines, 0, textLines.length, delimiter, rows, report);
  return rows;
}

interface OpenRows {
  readonly cells: string[][];
  readonly lines: number[];
  readonly remarks: Remark[];
}

/** Reads the lines from `start` up to but not including `end` (counted from 0) onto the end of `rows`. */
function readLines(
  textLines: readonly string[],
  start: number,
  end: number,
  delimiter: string,
  rows: OpenRows,
  report: ReportFault,
): void {
  const { records, quoteLeftOpen } = parseRecords(textLines.slice(start, end).join("\n"), delimiter);
  let at = start;
  const passRemarks = (): void => {
    for (; at < end && isRemark(textLines[at]!); at++) rows.remarks.push(remarkOf(textLines[at]!, at + 1));
  };
  for (const cells of records) {
    passRemarks();
    const lineEnds = lineEndsIn(cells);
    const next = at + 1 + lineEnds;
    const open = lineEnds === 0 ? undefined : openQuoteIn(cells, rows.cells[0]?.length ?? 0, delimiter);
    if (open !== undefined) {
      reportOpenQuote(at + open + 1, report);
      readLines(textLines, at + open + 1, next, delimiter, rows, report);
    } else if (!isBlank(cells) || (rows.cells.length === 0 && cells.length > 1)) {
      rows.cells.push(cells);
      rows.lines.push(at + 1);
    }
    at = next;
  }
  passRemarks();
  if (quoteLeftOpen) {
    reportOpenQuote(at + 1, report);
    readLines(textLines, at + 1, end, delimiter, rows, report);
  }
}

function parseRecords(text: string, delimiter: string): { records: string[][]; quoteLeftOpen: boolean } {
  let quoteLeftOpen = false;
  const records: string[][] = parse(text, {
    ...csvForm,
    delimiter,
    skip_records_with_error: true,
    on_skip: (error: CsvError | undefined) => {
      if (error?.code !== "CSV_QUOTE_NOT_CLOSED") throw error;
      quoteLeftOpen = true;
      return undefined;
    },
  });
  return { records, quoteLeftOpen };
}

/**
 * How many lines below the start of its row a quote opens that swallows other rows; undefined if none does.
 * It shows in a cell of several lines where text follows the closing quote, or one of whose lines has as
 * many delimiters as a row.
 */
function openQuoteIn(cells: readonly string[], columnCount: number, delimiter: string): number | undefined {
  let linesAbove = 0;
  for (const cell of cells) {
    const ends = lineEndsIn([cell]);
    if (ends === 0) continue;
    const looksLikeRow = (line: string): boolean => line.split(delimiter).length >= columnCount;
    if (cell.startsWith('"') || (columnCount > 1 && cell.split("\n").slice(1).some(looksLikeRow)))
      return linesAbove;
    linesAbove += ends;
  }
  return undefined;
}

/** Spreadsheets write a blank row as ",,,"; above the header it is no blank row but a header without names. */
function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === "");
}

function lineEndsIn(cells: readonly string[]): number {
  let count = 0;
  for (const cell of cells)
    for (let at = cell.indexOf("\n"); at >= 0; at = cell.indexOf("\n", at + 1)) count++;
  return count;
}

function reportOpenQuote(line: number, report: ReportFault): void {
  const found = 'a quote (") that is not closed on this line';
  report(
    line,
    undefined,
    found,
    "a closing quote before the next comma or line end",
    "close it, or delete it",
  );
}

function isRemark(line: string): boolean {
  return /^\s*#/.test(line);
}

/** `# key: value`; the key is in lower case, and empty for a remark without one. */
function remarkOf(line: string, number: number): Remark {
  const text = line.trim().slice(1).trim();
  // The colon of a clock time or an address begins no value.
  const match = /^([^:]+):(?:\s+(.*)|)$/.exec(text) ?? /^([\p{L}\s]+):(?!\/\/)(.*)$/u.exec(text);
  return Object.freeze({
    key: match === null ? "" : match[1]!.trim().replace(/\s+/g, " ").toLowerCase(),
    value: match === null ? text : (match[2] ?? "").trim(),
    line: number,
  });
}

const delimiterNames: Readonly<Record<string, string>> = { ";": "semicolons", "\t": "tabs" };

function delimiterOf(header: string): string {
  return header.includes(",") ? "," : header.includes(";") ? ";" : header.includes("\t") ? "\t" : ",";
}

function reportDelimiter(line: number, delimiter: string, report: ReportFault): void {
  report(
    line,
    undefined,
    `columns parted by ${delimiterNames[delimiter]}`,
    "columns parted by commas, numbers with a decimal point",
    "save the table again as comma-separated values with decimal points (language English)",
  );
}
