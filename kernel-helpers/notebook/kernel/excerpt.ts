/** A place in a cell, counted from 1 as editors do. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/**
 * The line of a place in a source, with two lines about it and carets under what is meant.
 *
 * @param source the whole text of the cell
 * @param at     where; a line outside the source gives no lines
 * @param length how many characters are meant, at least one, cut at the end of the line [-]
 * @returns lines ready to print
 * @example excerpt("const a = 1;\na.b;", { line: 2, column: 3 }) // ["  1 | const a = 1;", "> 2 | a.b;", "    |   ^"]
 */
export function excerpt(source: string, at: Position, length = 1): readonly string[] {
  const lines = source.split(/\r?\n/);
  const meant = lines[at.line - 1];
  if (meant === undefined) return Object.freeze([]);
  const width = String(Math.min(lines.length, at.line + 2)).length;
  const shown: string[] = [];
  for (let n = Math.max(1, at.line - 2); n <= Math.min(lines.length, at.line + 2); n += 1) {
    const mark = n === at.line ? ">" : " ";
    shown.push(`${mark} ${String(n).padStart(width)} | ${lines[n - 1]}`.trimEnd());
    if (n === at.line) shown.push(`  ${" ".repeat(width)} | ${carets(meant, at.column, length)}`);
  }
  return Object.freeze(shown);
}

/** Tabs are repeated under tabs, so that the carets stand where the eye expects them. */
function carets(line: string, column: number, length: number): string {
  const before = line.slice(0, column - 1).replace(/[^\t]/g, " ");
  const room = Math.max(1, line.length - column + 1);
  return before + "^".repeat(Math.min(Math.max(1, length), room));
}
