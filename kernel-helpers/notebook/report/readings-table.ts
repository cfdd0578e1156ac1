import { parse } from "csv-parse/sync";
import type { TableBlock, TableColumn } from "../../view/blocks.js";

/** A table of readings as a person reads it, or why it cannot be read as one. */
export interface ReadingsTable {
  /** The remarks over the table, without their "#". */
  readonly remarks: readonly string[];
  readonly block: TableBlock;
  /** Rows in the file; the block holds the first of them only where there are more than it can show. */
  readonly rows: number;
}

/** More rows than this are a download, not something to read. */
const mostRows = 500;
/** Rows shown before the rest is folded. */
const openRows = 30;

/**
 * A CSV as written, taken apart for showing: nothing is checked or converted here, and rows of any length are
 * shown as they are. `undefined` where no table can be made of it, e.g. for a quote left open or an empty file.
 */
export function readingsTable(name: string, text: string): ReadingsTable | undefined {
  const lines = text.replace(/^\ufeff/, "").split(/\r\n|\n|\r/);
  const remarks = lines.filter((line) => line.startsWith("#")).map((line) => line.replace(/^#\s*/, ""));
  const [heads, ...rows] = records(lines.filter((line) => !line.startsWith("#")).join("\n"));
  if (heads === undefined) return undefined;
  const first = rows.slice(0, mostRows);
  const width = Math.max(heads.length, ...first.map((row) => row.length));
  const shown = first.map((row) => Array.from({ length: width }, (_, at) => row[at] ?? ""));
  const columns = Array.from({ length: width }, (_, at) =>
    columnOf(
      heads[at] ?? "",
      shown.map((row) => row[at]!),
    ),
  );
  const caption = `${name}, ${rows.length} ${rows.length === 1 ? "row" : "rows"}`;
  const block: TableBlock = {
    type: "table",
    caption,
    columns,
    rows: shown.map((cells) => ({ cells })),
    showRows: openRows,
  };
  return { remarks, block, rows: rows.length };
}

function records(text: string): string[][] {
  try {
    return parse(text, { relaxColumnCount: true, skipEmptyLines: true, trim: true });
  } catch {
    return [];
  }
}

/** "diameter [in]" is the column "diameter" with the unit "in". */
function columnOf(head: string, cells: readonly string[]): TableColumn {
  const [, title = head, unit] = /^(.*?)\s*\[([^\]]*)\]$/.exec(head) ?? [];
  const filled = cells.filter((cell) => cell !== "");
  const align = filled.length > 0 && filled.every(isNumber) ? "right" : "left";
  return { title, align, ...(unit === undefined ? {} : { unit }) };
}

function isNumber(cell: string): boolean {
  return Number.isFinite(Number(cell));
}
