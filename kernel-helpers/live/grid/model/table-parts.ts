import type { CsvDocument } from "./csv-document.js";

/** Which pieces stand above the header and say something: the remarks about the whole table. */
export function aboutPieces(document: CsvDocument): readonly number[] {
  const end = document.header < 0 ? document.pieces.length : document.header;
  return piecesOf(document, 0, end);
}

/** Which pieces are the lines of the table: its rows, and the remarks between them. */
export function bodyPieces(document: CsvDocument): readonly number[] {
  return document.header < 0 ? [] : piecesOf(document, document.header + 1, document.pieces.length);
}

function piecesOf({ pieces }: CsvDocument, start: number, end: number): readonly number[] {
  const found: number[] = [];
  for (let at = start; at < end; at++) if (pieces[at]!.kind !== "blank") found.push(at);
  return found;
}
