import type { CsvDocument } from "./csv-document.js";
import { replacePiece } from "./edit-cells.js";
import { withRemarkParts, withRemarkText } from "./remark-parts.js";

/**
 * Writes another label or value into a remark line, or another text behind its #.
 *
 * @throws RangeError  the piece is no remark
 */
export function setRemark(
  document: CsvDocument,
  at: number,
  change: { readonly label?: string; readonly value?: string; readonly text?: string },
): CsvDocument {
  const piece = document.pieces[at];
  if (piece?.kind !== "remark")
    throw new RangeError(`setRemark: the piece must be a remark, got ${piece?.kind}`);
  const text =
    change.text === undefined ? withRemarkParts(piece.text, change) : withRemarkText(piece.text, change.text);
  return text === piece.text ? document : replacePiece(document, at, Object.freeze({ ...piece, text }));
}
