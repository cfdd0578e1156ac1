import { scanCell } from "./scan-cell.js";

/**
 * Cells from text on the clipboard: rows of a spreadsheet (parted by tabs), or of a CSV file (commas, in every
 * line as many). Undefined where the text is one cell.
 *
 * Commas that may be decimal commas part nothing: `2,4373` goes into one cell, where the table reader says what
 * is wrong with it. In a column of words one line with commas is words.
 *
 * @param text   as pasted
 * @param holds  what the column it is pasted into holds
 * @example pastedBlock("1\t2.4373\n4\t2.4371\n", "numbers") // [["1", "2.4373"], ["4", "2.4371"]]
 */
export function pastedBlock(
  text: string,
  holds: "words" | "numbers",
): readonly (readonly string[])[] | undefined {
  const body = text.replace(/^\uFEFF/, "").replace(/(\r\n?|\n)$/, "");
  if (body.includes("\t")) return rowsOf(body, "\t");
  const lines = body.split(/\r\n?|\n/);
  if (lines.length === 1 && (holds === "words" || !body.includes(","))) return undefined;
  if (lines.every((line) => /^\s*[+-]?\d+,\d+\s*$/.test(line)))
    return lines.length === 1 ? undefined : lines.map((line) => [line.trim()]);
  const rows = rowsOf(body, ",");
  const width = rows[0]!.length;
  if (rows.every((row) => row.length === width)) return rows.length === 1 && width === 1 ? undefined : rows;
  return lines.length === 1 ? undefined : lines.map((line) => [line.trim()]);
}

function rowsOf(text: string, delimiter: string): string[][] {
  const rows: string[][] = [[]];
  for (let at = 0; ; ) {
    const cell = scanCell(text, at, delimiter);
    rows.at(-1)!.push(cell.value.trim());
    at = cell.end;
    if (at >= text.length) return rows;
    if (text[at] !== delimiter) {
      if (text[at] === "\r" && text[at + 1] === "\n") at++;
      rows.push([]);
    }
    at++;
  }
}
