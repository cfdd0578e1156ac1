import { type CsvDocument, lineNumbers, type Piece } from "./csv-document.js";
import { emptyRow, setCell } from "./edit-cells.js";
import { shiftCheckedLines } from "./shift-checked-lines.js";

/**
 * Puts an empty row before a piece, or behind the last one. Remarks `# checked: line 12` follow the rows they
 * name.
 */
export function insertRow(document: CsvDocument, at: number): CsvDocument {
  return insertPiece(document, at, emptyRow(document, document.lineEnd));
}

/** Puts a remark before a piece; `text` is the whole line with its #. */
export function insertRemark(document: CsvDocument, at: number, text: string): CsvDocument {
  return insertPiece(document, at, Object.freeze({ kind: "remark", text, end: document.lineEnd }));
}

/** Takes a piece out with its line end. Remarks `# checked: line 12` follow the rows they name. */
export function deletePiece(document: CsvDocument, at: number): CsvDocument {
  const numbers = lineNumbers(document);
  const [from, behind] = [numbers[at]!, numbers[at + 1]!];
  const pieces = document.pieces.toSpliced(at, 1);
  const removed = document.pieces[at]!;
  // The file ended without a line end: it still does.
  if (removed.end === "" && at > 0) pieces[at - 1] = Object.freeze({ ...pieces[at - 1]!, end: "" });
  const header = at < document.header ? document.header - 1 : at === document.header ? -1 : document.header;
  const shorter = Object.freeze({ ...document, pieces: Object.freeze(pieces), header });
  const count = Math.max(behind - from, 1);
  return shiftCheckedLines(shorter, { from, removed: count, added: 0 });
}

/**
 * Adds a row behind the last row or remark, before the blank lines a file may end with, and writes a value
 * into one of its cells.
 */
export function appendRow(document: CsvDocument, column: number, value: string): CsvDocument {
  const at = document.pieces.findLastIndex(({ kind }) => kind !== "blank") + 1;
  return setCell(insertRow(document, at), at, column, value);
}

function insertPiece(document: CsvDocument, at: number, piece: Piece): CsvDocument {
  const line = lineNumbers(document)[at]!;
  const pieces = document.pieces.toSpliced(at, 0, piece);
  const before = pieces[at - 1];
  let from = line;
  // Behind a last line without line end: that line gets one, and the new one goes without.
  if (before !== undefined && before.end === "") {
    pieces[at - 1] = Object.freeze({ ...before, end: document.lineEnd });
    pieces[at] = Object.freeze({ ...piece, end: "" });
    from = line + 1;
  }
  const header = at <= document.header ? document.header + 1 : document.header;
  const longer = Object.freeze({ ...document, pieces: Object.freeze(pieces), header });
  return shiftCheckedLines(longer, { from, removed: 0, added: 1 });
}
