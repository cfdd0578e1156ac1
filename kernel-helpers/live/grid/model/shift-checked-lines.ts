import type { CsvDocument } from "./csv-document.js";
import { remarkParts } from "./remark-parts.js";

/** Lines that came in or went out at a line of the file, counted from 1. */
export interface LineShift {
  readonly from: number;
  readonly removed: number;
  readonly added: number;
}

/**
 * Lets remarks `# checked: line 12` point at the rows they pointed at before lines were put in or taken out.
 * A line that was taken out is no longer named: `line –` stands there, which the table reader reports unless
 * other lines are named too. Without this a remark would vouch for a row nobody checked.
 */
export function shiftCheckedLines(document: CsvDocument, shift: LineShift): CsvDocument {
  let changed = false;
  const pieces = document.pieces.map((piece) => {
    if (piece.kind !== "remark") return piece;
    const parts = remarkParts(piece.text);
    if (parts.label.trim().toLowerCase() !== "checked") return piece;
    const value = parts.value.replace(/\d+/g, (number) => shifted(Number(number), shift) ?? "–");
    if (value === parts.value) return piece;
    changed = true;
    return Object.freeze({
      ...piece,
      text: parts.before + parts.label + parts.between + value + parts.after,
    });
  });
  return changed ? Object.freeze({ ...document, pieces: Object.freeze(pieces) }) : document;
}

function shifted(line: number, { from, removed, added }: LineShift): string | undefined {
  if (line < from) return String(line);
  if (line < from + removed) return undefined;
  return String(line - removed + added);
}
