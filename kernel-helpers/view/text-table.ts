import type { TableBlock, TableColumn, TableRow } from "./blocks.js";
import { pad, plainLine, widest } from "./characters.js";
import { lineLength, wrapText } from "./wrap-text.js";

const gap = "  ";
const signs = { warn: "! ", bad: "!!" } as const;

/** A table in columns of equal width; rows with a mark have "!" or "!!" before them. */
export function textTable(table: TableBlock): string {
  const shown = table.rows.slice(0, table.showRows ?? table.rows.length);
  const hidden = table.rows.length - shown.length;
  if (shown.length === 0 && hidden > 0)
    return [
      ...(table.caption === undefined ? [] : wrapText(table.caption, lineLength)),
      `… ${hidden} rows, not listed here`,
    ].join("\n");
  const widths = table.columns.map((column, index) => widthOf(column, index, shown));
  const marked = shown.some((row) => row.mark !== undefined);

  const line = (cells: readonly string[], sign = "  "): string => {
    const padded = table.columns.map((column, i) => pad(plainLine(cells[i] ?? ""), widths[i]!, column.align));
    return `${marked ? `${sign} ` : ""}${padded.join(gap)}`.trimEnd();
  };

  const lines = [line(table.columns.map((column) => column.title))];
  if (table.columns.some((column) => column.unit !== undefined))
    lines.push(line(table.columns.map((column) => unitOf(column))));
  lines.push(line(widths.map((width) => "─".repeat(width))));
  for (const row of shown) lines.push(line(row.cells, row.mark === undefined ? "  " : signs[row.mark]));
  if (hidden > 0) lines.push(`… ${hidden} more rows, ${table.rows.length} in all`);
  return table.caption === undefined
    ? lines.join("\n")
    : [...wrapText(table.caption, lineLength), ...lines].join("\n");
}

function unitOf(column: TableColumn): string {
  return column.unit === undefined ? "" : `[${column.unit}]`;
}

function widthOf(column: TableColumn, index: number, rows: readonly TableRow[]): number {
  const texts = [column.title, unitOf(column), ...rows.map((row) => row.cells[index] ?? "")];
  return widest(texts.map(plainLine));
}
