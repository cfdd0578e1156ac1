import { readFileSync } from "node:fs";
import { join } from "node:path";

/** A published data file: its `#` header, its column names, and its rows as printed. */
export interface Reference {
  readonly header: readonly string[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** The numbers of one column; NaN where the cell is empty or no number. */
  readonly numbers: (column: string) => number[];
}

/** Reads test/reference/<name>.csv as published: nobody retypes a digit. */
export function readReference(name: string): Reference {
  const lines = readFileSync(join(__dirname, "..", "reference", `${name}.csv`), "utf8").split(/\r?\n/);
  const header = lines.filter((line) => line.startsWith("#")).map((line) => line.replace(/^#\s*/, ""));
  const body = lines.filter((line) => line !== "" && !line.startsWith("#")).map((line) => line.split(","));
  const [columns, ...rows] = body;
  if (columns === undefined) throw new Error(`readReference: ${name} has no rows`);
  const numbers = (column: string): number[] => {
    const at = columns.indexOf(column);
    if (at < 0) throw new Error(`readReference: ${name} has no column ${column}`);
    return rows.map((row) => Number(row[at] === "" ? Number.NaN : row[at]));
  };
  return { header, columns, rows, numbers };
}
