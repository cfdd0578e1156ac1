import type { CsvDocument, Piece, Row } from "./csv-document.js";
import { plainCell, scanCell } from "./scan-cell.js";

/**
 * Takes the text of a CSV file apart without losing a character; `writeCsv` puts it together again.
 *
 * Rows, cells and remarks are those the table reader sees. A quote that is left open, or that swallows lines
 * which look like rows, is a plain character here, so that the rows behind it can still be seen and mended.
 *
 * @param text  the file's text with its byte order mark, if it has one
 */
export function parseCsv(text: string): CsvDocument {
  const mark = text.startsWith("\uFEFF") ? "\uFEFF" : "";
  const body = text.slice(mark.length);
  const delimiter = delimiterOf(body);
  const pieces: Piece[] = [];
  let header = -1;
  for (let at = 0; at < body.length; ) {
    const line = lineAt(body, at);
    const kind = line.text.trim() === "" ? "blank" : /^\s*#/.test(line.text) ? "remark" : "row";
    if (kind !== "row") {
      pieces.push(Object.freeze({ kind, text: line.text, end: line.end }));
      at = line.next;
      continue;
    }
    const columnCount = header < 0 ? 0 : (pieces[header] as Row).cells.length;
    const { row, next } = rowAt(body, at, delimiter, columnCount);
    if (header < 0) header = pieces.length;
    pieces.push(row);
    at = next;
  }
  const lineEnd = /\r\n?|\n/.exec(body)?.[0] ?? "\n";
  return Object.freeze({
    kind: "csv-document",
    mark,
    delimiter,
    lineEnd,
    pieces: Object.freeze(pieces),
    header,
  });
}

interface Line {
  readonly text: string;
  readonly end: string;
  readonly next: number;
}

function lineAt(text: string, start: number): Line {
  let at = start;
  while (at < text.length && text[at] !== "\n" && text[at] !== "\r") at++;
  const end = lineEndAt(text, at);
  return { text: text.slice(start, at), end, next: at + end.length };
}

function lineEndAt(text: string, at: number): string {
  if (text[at] === "\r") return text[at + 1] === "\n" ? "\r\n" : "\r";
  return text[at] === "\n" ? "\n" : "";
}

function rowAt(
  text: string,
  start: number,
  delimiter: string,
  columnCount: number,
): { readonly row: Row; readonly next: number } {
  const quoted = cellsAt(text, start, delimiter, scanCell);
  const trusted = !quoted.open && !quoted.values.some((value) => swallowsRows(value, columnCount, delimiter));
  const { cells, at } = trusted ? quoted : cellsAt(text, start, delimiter, plainCell);
  const end = lineEndAt(text, at);
  return { row: Object.freeze({ kind: "row", cells: Object.freeze(cells), end }), next: at + end.length };
}

function cellsAt(text: string, start: number, delimiter: string, scan: typeof scanCell) {
  const cells: string[] = [];
  const values: string[] = [];
  let [at, open] = [start, false];
  for (;;) {
    const cell = scan(text, at, delimiter);
    cells.push(text.slice(at, cell.end));
    values.push(cell.value);
    open ||= cell.open;
    at = cell.end;
    if (text[at] !== delimiter) return { cells, values, at, open };
    at++;
  }
}

/** A cell of several lines that is no cell: text behind its closing quote, or a line of it as wide as a row. */
function swallowsRows(value: string, columnCount: number, delimiter: string): boolean {
  if (!value.includes("\n")) return false;
  const below = value.split("\n").slice(1);
  return (
    value.startsWith('"') ||
    (columnCount > 1 && below.some((line) => line.split(delimiter).length >= columnCount))
  );
}

function delimiterOf(text: string): string {
  for (let at = 0; at < text.length; ) {
    const line = lineAt(text, at);
    if (line.text.trim() !== "" && !/^\s*#/.test(line.text))
      return [",", ";", "\t"].find((one) => line.text.includes(one)) ?? ",";
    at = line.next;
  }
  return ",";
}
