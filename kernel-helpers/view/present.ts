import { formatNumber } from "../quantity/format-number.js";
import type { Block, Presentation, TableColumn } from "./blocks.js";
import { presentResult } from "./results/present-result.js";

/** Longer arrays are cut to this many rows, with a sentence that says so. */
const mostRows = 500;
const rowsAtFirst = 20;

const blockTypes: readonly string[] = [
  "text",
  "facts",
  "table",
  "figure",
  "drawing",
  "verdict",
  "caution",
  "warning",
] satisfies Block["type"][];

/**
 * How a value is presented: a presentation as it is, a result by its kind, an array of flat records as a table. A key such as
 * "diameter [in]" gives the column its unit.
 *
 * @returns undefined for a value that has no look of its own
 */
export function present(value: unknown): Presentation | undefined {
  if (isPresentation(value)) return value;
  const result = presentResult(value);
  if (result !== undefined) return result;
  if (isListOfRecords(value)) return tableOfRecords(value);
  return undefined;
}

type FlatRecord = Readonly<Record<string, string | number | boolean | null | undefined>>;

function isPresentation(value: unknown): value is Presentation {
  if (typeof value !== "object" || value === null) return false;
  const { title, blocks } = value as { title?: unknown; blocks?: unknown };
  return typeof title === "string" && Array.isArray(blocks) && blocks.every(isBlock);
}

function isBlock(value: unknown): boolean {
  return typeof value === "object" && value !== null && blockTypes.includes((value as Block).type);
}

function isListOfRecords(value: unknown): value is readonly FlatRecord[] {
  return Array.isArray(value) && value.length > 0 && value.every(isFlatRecord);
}

function isFlatRecord(value: unknown): boolean {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  const cells = Object.values(value);
  return (
    cells.length > 0 &&
    cells.every((cell) => cell === null || typeof cell !== "object") &&
    !cells.some(isCode)
  );
}

function isCode(cell: unknown): boolean {
  return typeof cell === "function" || typeof cell === "symbol" || typeof cell === "bigint";
}

function tableOfRecords(records: readonly FlatRecord[]): Presentation {
  const shown = records.slice(0, mostRows);
  const keys = [...new Set(shown.flatMap((record) => Object.keys(record)))];
  const columns = keys.map((key) => columnOf(key, shown));
  const rows = shown.map((record) => ({ cells: keys.map((key) => cellText(record[key])) }));
  const table: Block = { type: "table", columns, rows, showRows: rowsAtFirst };
  const cut: Block = {
    type: "text",
    text: `Only the first ${mostRows} of ${records.length} rows are shown.`,
  };
  return {
    title: `Table of ${records.length} ${records.length === 1 ? "row" : "rows"}`,
    blocks: records.length > mostRows ? [table, cut] : [table],
  };
}

function columnOf(key: string, records: readonly FlatRecord[]): TableColumn {
  const numeric = records.every((record) => record[key] == null || typeof record[key] === "number");
  const align = numeric ? "right" : "left";
  const [, title, unit] = key.match(/^(.+?)\s*\[(.+)\]$/) ?? [];
  return title === undefined || unit === undefined ? { title: key, align } : { title, unit, align };
}

function cellText(cell: FlatRecord[string]): string {
  if (cell === null || cell === undefined) return "";
  return typeof cell === "number" ? formatNumber(cell) : String(cell);
}
