import { columnsNamed } from "./columns.js";
import type { Column, Table } from "./table.js";

/** The one column of lengths of a name; the message lists what there is. */
export function lengthColumn(where: string, table: Table, name: string): Column {
  const found = columnsNamed(table, name).filter(({ dimension }) => dimension === "length");
  if (found.length === 1) return found[0]!;
  const headers = table.columns.map(({ header }) => `"${header}"`).join(", ");
  throw new RangeError(
    `${where}: ${table.file} must have one column "${name}" in a unit of length, got ${found.length} among ${headers}`,
  );
}

/** Mean, taken about the first value so that sizes of inches keep the digits of millionths. */
export function meanOf(values: readonly number[]): number {
  const first = values[0]!;
  return first + values.reduce((sum, v) => sum + (v - first), 0) / values.length;
}

/** Standard deviation with n − 1. */
export function deviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
}

/** A column in a file, for an error: `column "reading [in]" of repeat.csv`. */
export function columnOf(table: Table, { header }: Column): string {
  return `column "${header}" of ${table.file}`;
}
