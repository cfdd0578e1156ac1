import type { CsvDocument } from "./csv-document.js";
import { setCell } from "./edit-cells.js";
import { appendRow } from "./edit-rows.js";
import { bodyPieces } from "./table-parts.js";

/**
 * Writes a block of cells, from a cell to the right and downwards. Remark lines between the rows are passed
 * over; rows are added where the table ends.
 *
 * @param line    which line of the body, as in `bodyPieces`; their number means a new row
 * @param column  counted from 0
 * @param block   rows of values
 */
export function setBlock(
  document: CsvDocument,
  line: number,
  column: number,
  block: readonly (readonly string[])[],
): CsvDocument {
  const rows = bodyPieces(document)
    .slice(line)
    .filter((at) => document.pieces[at]!.kind === "row");
  let edited = document;
  for (const [i, values] of block.entries()) {
    let at = rows[i];
    if (at === undefined) {
      edited = appendRow(edited, column, "");
      at = bodyPieces(edited).at(-1)!;
    }
    for (const [j, value] of values.entries()) edited = setCell(edited, at, column + j, value);
  }
  return edited;
}
