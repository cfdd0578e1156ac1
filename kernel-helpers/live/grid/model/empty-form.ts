import { cellValue } from "./cell-text.js";
import { type ColumnLook, columnLook } from "./column-look.js";
import { type CsvDocument, headerRow } from "./csv-document.js";
import { cellAt } from "./edit-cells.js";
import { remarkParts } from "./remark-parts.js";
import { aboutPieces, bodyPieces } from "./table-parts.js";

/** A form to print and take to the bench. */
export interface EmptyForm {
  readonly columns: readonly ColumnLook[];
  /** The remarks with a label; what stands for one visit only (temperature, who, when) is left to be written. */
  readonly remarks: readonly { readonly label: string; readonly value: string }[];
  /** Station and angle as in the table, other cells empty; empty rows fill the page. */
  readonly rows: readonly (readonly string[])[];
}

/** So many rows a form has at least, and so many empty ones behind those with a station. */
const leastRows = 24;
const spareRows = 4;

const writtenAtBench = /^(temperature|temperature uncertainty|who|by|when|date|time|checked)$/i;

/** The form for reading a table again, or for the first time. */
export function emptyForm(document: CsvDocument): EmptyForm {
  const header = headerRow(document)?.cells ?? [];
  const columns = header.map((cell) => columnLook(cellValue(cell, document.delimiter)));
  const kept = columns.map(({ isStation, name }) => isStation || name.toLowerCase() === "angle");
  const rows = bodyPieces(document)
    .filter((at) => document.pieces[at]!.kind === "row")
    .map((at) => columns.map((_, column) => (kept[column] ? cellAt(document, at, column) : "")));
  const wanted = Math.max(leastRows, rows.length + spareRows);
  while (rows.length < wanted) rows.push(columns.map(() => ""));
  const remarks = aboutPieces(document).flatMap((at) => {
    const piece = document.pieces[at]!;
    const { label, value } = piece.kind === "remark" ? remarkParts(piece.text) : { label: "", value: "" };
    return label === "" ? [] : [{ label, value: writtenAtBench.test(label) ? "" : value }];
  });
  for (const label of ["temperature", "who", "when"])
    if (!remarks.some((remark) => remark.label.toLowerCase() === label)) remarks.push({ label, value: "" });
  return Object.freeze({ columns, remarks, rows });
}
