import { cellRaw, cellValue, leadOf } from "./cell-text.js";
import { type CsvDocument, headerRow, type Piece, type Row } from "./csv-document.js";

/** What a cell says; "" where the row is too short, or the piece no row. */
export function cellAt(document: CsvDocument, at: number, column: number): string {
  const piece = document.pieces[at];
  const raw = piece?.kind === "row" ? piece.cells[column] : undefined;
  return raw === undefined ? "" : cellValue(raw, document.delimiter);
}

/**
 * Writes a value into a cell. No other character of the file changes; a row that is too short is filled up to
 * the cell with empty ones.
 *
 * @param at      which piece; it must be a row
 * @param column  counted from 0
 * @returns the same document where the cell says so already
 * @throws RangeError  the piece is no row
 */
export function setCell(document: CsvDocument, at: number, column: number, value: string): CsvDocument {
  const row = document.pieces[at];
  if (row?.kind !== "row") throw new RangeError(`setCell: the piece must be a row, got ${row?.kind}`);
  if (cellAt(document, at, column) === value.trim()) return document;
  const cells = [...row.cells];
  while (cells.length <= column) cells.push("");
  const old = row.cells[column] ?? "";
  const raw = cellRaw(value, old === "" ? leadFor(document, column) : old, document.delimiter, column === 0);
  cells[column] = raw.trim() === "" && old === "" ? "" : raw;
  return replacePiece(document, at, Object.freeze({ ...row, cells: Object.freeze(cells) }));
}

/** A row without values, as wide as the header. */
export function emptyRow(document: CsvDocument, end: string): Row {
  const width = headerRow(document)?.cells.length ?? 1;
  const cells = new Array<string>(width).fill("");
  return Object.freeze({ kind: "row", cells: Object.freeze(cells), end });
}

/** The spaces this file writes before the cells of a column. */
export function leadFor(document: CsvDocument, column: number): string {
  return leadOf(headerRow(document)?.cells[column] ?? "");
}

/** The document with one piece in place of another. */
export function replacePiece(document: CsvDocument, at: number, piece: Piece): CsvDocument {
  return Object.freeze({ ...document, pieces: Object.freeze(document.pieces.with(at, piece)) });
}
