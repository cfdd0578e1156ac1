/** Of a cell, what is kept of its code. */
export interface CellToKeep {
  readonly cell_type: string;
  readonly id: string;
  readonly source: string;
}

/** A code cell: its id and its source. */
export interface CellCode {
  readonly id: string;
  readonly source: string;
}

const mark = "// %% ";

/**
 * The code of a sheet as one text to be kept: each code cell under a line `// %% <id>`, as editors mark cells in a
 * plain file. Cells that say nothing are left out.
 *
 * @example codeText([{ cell_type: "code", id: "open", source: "1 + 1" }]) // "// %% open\n1 + 1\n"
 */
export function codeText(cells: readonly CellToKeep[]): string {
  return cells
    .filter(({ cell_type, source }) => cell_type === "code" && source.trim() !== "")
    .map(({ id, source }) => `${mark}${id}\n${source.trimEnd()}\n`)
    .join("\n");
}

/**
 * The cells of a code text.
 *
 * @example cellsOfCodeText("// %% open\n1 + 1\n") // [{ id: "open", source: "1 + 1" }]
 */
export function cellsOfCodeText(text: string): readonly CellCode[] {
  return text
    .split(/^\/\/ %% /m)
    .slice(1)
    .map((part) => {
      const end = part.indexOf("\n");
      return { id: part.slice(0, end), source: part.slice(end + 1).trimEnd() };
    });
}
