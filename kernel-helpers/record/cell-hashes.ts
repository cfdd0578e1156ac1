import { createHash } from "node:crypto";

/** The hash of each cell of an executed notebook, by id: which of them was altered can so be told later. */
export type CellHashes = Readonly<Record<string, string>>;

/** Under this name an executed notebook carries the hashes of its cells in its metadata. */
export const cellHashesKey = "journalbox_cells";

/**
 * The hashes of the cells of a notebook file.
 *
 * @param text  the file; undefined is given for one that is no notebook
 */
export function cellHashesOf(text: string): CellHashes | undefined {
  try {
    const { cells } = JSON.parse(text) as { readonly cells: readonly { readonly id?: string }[] };
    return Object.fromEntries(cells.map((cell, i) => [cell.id ?? `${i + 1}`, hashOf(cell)]));
  } catch {
    return undefined;
  }
}

/** What the notebook itself carries of the run that wrote it; undefined where it carries nothing. */
export function carriedCellHashes(text: string): CellHashes | undefined {
  try {
    const { metadata } = JSON.parse(text) as { readonly metadata?: Readonly<Record<string, unknown>> };
    const carried = metadata?.[cellHashesKey];
    return typeof carried === "object" && carried !== null ? (carried as CellHashes) : undefined;
  } catch {
    return undefined;
  }
}

/** Of the cell as it stands in the file; long enough to tell cells apart, short enough to be read. */
function hashOf(cell: unknown): string {
  return createHash("sha256").update(JSON.stringify(cell)).digest("hex").slice(0, 16);
}
