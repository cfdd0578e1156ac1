import { cellRaw } from "./cell-text.js";
import { type CsvDocument, headerRow } from "./csv-document.js";
import { leadFor } from "./edit-cells.js";

/**
 * Puts a column in, empty below its header. Rows that end before it stay as they are.
 *
 * @param column  where, counted from 0; the column that stood there goes one to the right
 * @param header  name, angle and unit, e.g. "diameter @ 90 deg [in]"
 */
export function insertColumn(document: CsvDocument, column: number, header: string): CsvDocument {
  const lead = column === 0 ? "" : leadFor(document, Math.max(1, column - 1));
  const pieces = document.pieces.map((piece, at) => {
    if (piece.kind !== "row" || (at !== document.header && piece.cells.length < column)) return piece;
    const raw = at === document.header ? cellRaw(header, lead, document.delimiter, column === 0) : "";
    const cells = piece.cells.toSpliced(column, 0, raw);
    return Object.freeze({ ...piece, cells: Object.freeze(cells) });
  });
  return Object.freeze({ ...document, pieces: Object.freeze(pieces) });
}

/** A file without header gets one, behind the remarks it has. */
export function startTable(document: CsvDocument, headers: readonly string[]): CsvDocument {
  if (headerRow(document) !== undefined) throw new RangeError("startTable: the table has a header already");
  const { pieces, lineEnd, delimiter } = document;
  const at = pieces.findLastIndex(({ kind }) => kind === "remark") + 1;
  const before = pieces
    .slice(0, at)
    .map((piece) => (piece.end === "" ? Object.freeze({ ...piece, end: lineEnd }) : piece));
  const cells = headers.map((header, i) => cellRaw(header, i === 0 ? "" : " ", delimiter, i === 0));
  const row = Object.freeze({ kind: "row" as const, cells: Object.freeze(cells), end: lineEnd });
  return Object.freeze({
    ...document,
    pieces: Object.freeze([...before, row, ...pieces.slice(at)]),
    header: at,
  });
}
