import type { TableColumn } from "./blocks.js";

/** What stands before a cell where its row stands by itself, e.g. "depth [thou]: "; nothing for a column without a title. */
export function columnHead({ title, unit }: TableColumn): string {
  if (title === "") return "";
  return unit === undefined ? `${title}: ` : `${title} [${unit}]: `;
}
