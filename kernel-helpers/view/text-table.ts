import type { TableBlock, TableColumn, TableRow } from "./blocks.js";
import { pad, plainLine, widest } from "./characters.js";
import { columnHead, needsHead } from "./column-head.js";
import { lineLength, wrapText } from "./wrap-text.js";

const gap = "  ";
const signs = { warn: "! ", bad: "!!" } as const;

/** A table in columns of equal width, or row under row where it is too wide; a marked row has "!" or "!!" before it. */
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
  const wide = widths.reduce((sum, width) => sum + width + gap.length, 0);
  if (table.stacked && wide > lineLength) return stackedRows(table, shown);

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

/** Each row by itself: its first cell as a heading, every other cell that says anything after its column's title. */
function stackedRows({ caption, columns, rows }: TableBlock, shown: readonly TableRow[]): string {
  const lines = caption === undefined ? [] : [...wrapText(caption, lineLength)];
  for (const { cells, mark } of shown) {
    const [first] = columns;
    const head = first !== undefined && needsHead(first, cells[0] ?? "") ? columnHead(first) : "";
    lines.push(`${mark === undefined ? "" : signs[mark]}${head}${plainLine(cells[0] ?? "")}`);
    columns.slice(1).forEach((column, index) => {
      const cell = cells[index + 1] ?? "";
      if (cell === "") return;
      const wrapped = wrapText(`${columnHead(column)}${cell}`, lineLength - 4);
      lines.push(...wrapped.map((line, i) => `${i === 0 ? "  " : "    "}${line}`));
    });
  }
  if (shown.length < rows.length)
    lines.push(`… ${rows.length - shown.length} more rows, ${rows.length} in all`);
  return lines.join("\n");
}

function unitOf(column: TableColumn): string {
  return column.unit === undefined ? "" : `[${column.unit}]`;
}

function widthOf(column: TableColumn, index: number, rows: readonly TableRow[]): number {
  const texts = [column.title, unitOf(column), ...rows.map((row) => row.cells[index] ?? "")];
  return widest(texts.map(plainLine));
}
