import { createHash } from "node:crypto";

/** Of a cell, what says what it computes. */
export interface CodeOfCell {
  readonly cell_type: string;
  readonly source: string;
}

/** The source of each code cell that says anything, in order. */
export function codeSources(cells: readonly CodeOfCell[]): readonly string[] {
  return cells
    .filter(({ cell_type, source }) => cell_type === "code" && source.trim() !== "")
    .map(({ source }) => source.trimEnd());
}

/**
 * SHA-256 of what a sheet computes: the sources of its code cells in order. Its text, its outputs and the ids of
 * its cells may change without changing this.
 */
export function codeHash(cells: readonly CodeOfCell[]): string {
  return createHash("sha256")
    .update(JSON.stringify(codeSources(cells)))
    .digest("hex");
}
