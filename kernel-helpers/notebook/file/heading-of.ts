import type { Cell } from "./notebook-format.js";

/** The first heading of a notebook's text, which is its title; undefined where it has none. */
export function headingOf(cells: readonly Cell[]): string | undefined {
  for (const { cell_type, source } of cells) {
    const heading = cell_type === "markdown" ? /^#\s+(.+?)\s*$/m.exec(source) : null;
    if (heading !== null) return heading[1];
  }
  return undefined;
}
