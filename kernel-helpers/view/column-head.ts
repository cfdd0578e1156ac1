import type { TableColumn } from "./blocks.js";

/** What stands before a cell where its row stands by itself, e.g. "depth [thou]: "; nothing for a column without a title. */
export function columnHead({ title, unit }: TableColumn): string {
  if (title === "") return "";
  return unit === undefined ? `${title}: ` : `${title} [${unit}]: `;
}

/** Whether the first cell of a row that stands by itself needs its column's head: with a unit, or as a bare number. */
export function needsHead(column: TableColumn, cell: string): boolean {
  return column.unit !== undefined || /^\d+$/.test(cell);
}
