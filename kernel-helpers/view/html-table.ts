import type { TableBlock, TableColumn, TableRow } from "./blocks.js";
import { widest } from "./characters.js";
import { columnHead, needsHead } from "./column-head.js";
import { escapeHtml } from "./escape.js";
import { keepTogether } from "./keep-together.js";

/** A column whose cells are no longer than this keeps each on one line, so that rows stay low. */
const mostOnOneLine = 16;
/** What a telephone has room for [ch], of a page of 390 px and its letters. */
const telephone = 45;
/** What `style.ts` leaves beside each column [ch]. */
const beside = 2.6;
/** A column of words is not pressed below this [ch], or a name stands on five lines. */
const leastOfWords = 14;
/** With more rows than this, rows one under the other are longer to go through than a table is to scroll. */
const mostStacked = 14;

/** A table as HTML; the rows past showRows are folded, under the same heads and in the same widths. */
export function htmlTable(given: TableBlock): string {
  const table = { ...given, stacked: given.stacked ?? stacksOnTelephone(given) };
  const { rows, showRows = rows.length } = table;
  if (showRows === 0 && rows.length > 0) return allFolded(table);
  const caption = table.caption === undefined ? "" : `<caption>${escapeHtml(table.caption)}</caption>\n`;
  const first = tableOf(table, rows.slice(0, showRows), caption);
  const rest = rows.slice(showRows);
  const folded =
    rest.length === 0
      ? ""
      : `\n<details><summary>${rest.length} more rows, ${rows.length} in all</summary>\n${tableOf(table, rest, "")}\n</details>`;
  const label = escapeHtml(table.caption ?? "table");
  const scroll = table.stacked ? "jb-scroll jb-stack" : "jb-scroll";
  return `<div class="${scroll}" role="region" aria-label="${label}" tabindex="0">\n${first}${folded}\n</div>`;
}

/** Whether a table of few rows is wider than a telephone, so that its rows stand one under the other there. */
function stacksOnTelephone(table: TableBlock): boolean {
  const { columns, rows, showRows = rows.length } = table;
  if (showRows === 0 || Math.min(rows.length, showRows) > mostStacked) return false;
  const longest = longestCells(table);
  const widths = columns.map(({ title, align }, index) => {
    const cell = longest[index]!;
    const whole = align === "right" || cell <= mostOnOneLine;
    return Math.max(whole ? cell : leastOfWords, widest(title.split(" "))) + beside;
  });
  return widths.reduce((sum, width) => sum + width, 0) > telephone;
}

/** A head over no rows would only puzzle: the caption is what is unfolded. */
function allFolded(table: TableBlock): string {
  const caption = escapeHtml(table.caption ?? `${table.rows.length} rows`);
  return `<details class="jb-folded"><summary>${caption}</summary>\n<div class="jb-scroll" role="region" aria-label="${caption}" tabindex="0">\n${tableOf(table, table.rows, "")}\n</div>\n</details>`;
}

function tableOf(table: TableBlock, rows: readonly TableRow[], caption: string): string {
  const { columns } = table;
  const longest = longestCells(table);
  const body = rows.map((row) => rowHtml(row, table, longest)).join("\n");
  return `<table>\n${caption}${columnWidths(table, longest)}\n${headHtml(columns)}\n<tbody>\n${body}\n</tbody>\n</table>`;
}

/** Characters in the longest cell of each column, of all the rows, so that the folded part is as the first. */
function longestCells({ columns, rows }: TableBlock): readonly number[] {
  return columns.map((_, index) => widest(rows.map((row) => row.cells[index] ?? "")));
}

/** Room for the longest cell, and for the title on two lines. */
function columnWidths({ columns }: TableBlock, longest: readonly number[]): string {
  const widths = columns.map(({ title }, index) => {
    const room = Math.max(longest[index]!, widest([title]) / 2, widest(title.split(" ")));
    return `<col style="width:${Math.min(room, 36) + 3}ch">`;
  });
  return `<colgroup>${widths.join("")}</colgroup>`;
}

function headHtml(columns: readonly TableColumn[]): string {
  const titles = columns.map(
    (column) => `<th scope="col"${classOf(column)}>${escapeHtml(column.title)}</th>`,
  );
  const units = columns.map(
    (column) => `<td${classOf(column, "jb-unit")}>${escapeHtml(column.unit ?? "")}</td>`,
  );
  const unitRow = columns.some((column) => column.unit !== undefined) ? `\n<tr>${units.join("")}</tr>` : "";
  return `<thead>\n<tr>${titles.join("")}</tr>${unitRow}\n</thead>`;
}

function rowHtml(row: TableRow, { columns, stacked }: TableBlock, longest: readonly number[]): string {
  const mark = row.mark === undefined ? "" : ` class="jb-${row.mark}"`;
  const cells = columns.map((column, index) => {
    const words = longest[index]! <= mostOnOneLine ? "jb-w" : undefined;
    const name =
      stacked && (index > 0 || needsHead(column, row.cells[0] ?? ""))
        ? ` data-h="${escapeHtml(columnHead(column))}"`
        : "";
    return `<td${classOf(column, words)}${name}>${escapeHtml(keepTogether(row.cells[index] ?? ""))}</td>`;
  });
  return `<tr${mark}>${cells.join("")}</tr>`;
}

function classOf({ align }: TableColumn, other?: string): string {
  const names = [align === "right" ? "jb-r" : undefined, other].filter((name) => name !== undefined);
  return names.length === 0 ? "" : ` class="${names.join(" ")}"`;
}
