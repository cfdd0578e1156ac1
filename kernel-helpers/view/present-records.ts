import { formatNumber } from "../quantity/format-number.js";
import { isQuantity, type UnitName, unitNamed } from "../quantity/index.js";
import type { Block, Presentation, TableColumn } from "./blocks.js";
import { isSingle, type Single, singleText } from "./results/index.js";

/** Longer arrays are cut to this many rows, with a sentence that says so. */
const mostRows = 500;
const rowsAtFirst = 20;

type Cell = string | number | boolean | null | undefined | Single;
type FlatRecord = Readonly<Record<string, Cell>>;

/** Whether a value is a list of records whose cells can be shown each in a line: words, numbers, values with units. */
export function isListOfRecords(value: unknown): value is readonly FlatRecord[] {
  return Array.isArray(value) && value.length > 0 && value.every(isFlatRecord);
}

/** Whether a value is one such record, and at least one value in it has a unit. */
export function isRecordOfSingles(value: unknown): value is FlatRecord {
  return isFlatRecord(value) && Object.values(value as FlatRecord).some(isSingle);
}

/** Rows and columns; a column whose values are all shown in one unit has it in its head. */
export function tableOfRecords(records: readonly FlatRecord[]): Presentation {
  const shown = records.slice(0, mostRows);
  const keys = [...new Set(shown.flatMap((record) => Object.keys(record)))];
  const columns = keys.map((key) => columnOf(key, shown));
  const rows = shown.map((record) => ({
    cells: columns.map(({ key, in: unit }) => cellText(record[key], unit)),
  }));
  const table: Block = {
    type: "table",
    columns: columns.map(({ head }) => head),
    rows,
    showRows: rowsAtFirst,
  };
  const cut: Block = {
    type: "text",
    text: `Only the first ${mostRows} of ${records.length} rows are shown.`,
  };
  return {
    title: `Table of ${records.length} ${records.length === 1 ? "row" : "rows"}`,
    blocks: records.length > mostRows ? [table, cut] : [table],
  };
}

/** One value a line, each with its unit. */
export function factsOfRecord(record: FlatRecord): Presentation {
  const facts = Object.entries(record).map(([label, value]) => ({ label, value: cellText(value) }));
  return {
    title: `${facts.length} ${facts.length === 1 ? "value" : "values"}`,
    blocks: [{ type: "facts", facts }],
  };
}

function isFlatRecord(value: unknown): boolean {
  if (typeof value !== "object" || value === null || Array.isArray(value) || isSingle(value)) return false;
  const cells = Object.values(value);
  return cells.length > 0 && cells.every((cell) => cell === null || isSingle(cell) || !isDeepOrCode(cell));
}

function isDeepOrCode(cell: unknown): boolean {
  return ["object", "function", "symbol", "bigint"].includes(typeof cell);
}

interface Column {
  readonly key: string;
  readonly head: TableColumn;
  /** The one unit all its values are shown in. */
  readonly in?: UnitName;
}

function columnOf(key: string, records: readonly FlatRecord[]): Column {
  const cells = records.map((record) => record[key]).filter((cell) => cell != null);
  const numeric = cells.every((cell) => typeof cell === "number" || isSingle(cell));
  const align = numeric ? "right" : "left";
  const [first] = cells;
  const unit = isQuantity(first) ? first.shownIn : undefined;
  if (unit !== undefined && cells.every((cell) => isQuantity(cell) && cell.shownIn === unit))
    return { key, head: { title: key, unit: unitNamed(unit).symbol, align }, in: unit };
  const [, title, inKey] = key.match(/^(.+?)\s*\[(.+)\]$/) ?? [];
  const named = title !== undefined && inKey !== undefined;
  return { key, head: named ? { title, unit: inKey, align } : { title: key, align } };
}

function cellText(cell: Cell, unit?: UnitName): string {
  if (cell === null || cell === undefined) return "";
  if (unit !== undefined && isQuantity(cell)) return formatNumber(Number(cell) / unitNamed(unit).si);
  if (isSingle(cell)) return singleText(cell);
  return typeof cell === "number" ? formatNumber(cell) : String(cell);
}
