import type { ICell, INotebookContent } from "@jupyterlab/nbformat";
import { sourceOf } from "./sheet-text.js";

/** A cell that is not the same in two versions of a sheet; undefined where a version does not have it. */
export interface Difference {
  /** The place in the version that has it, counted from 1. */
  readonly place: number;
  readonly mine: string | undefined;
  readonly theirs: string | undefined;
}

/**
 * The cells in which two versions of a sheet differ. Cells belong together by their ids, which saving keeps; where
 * the order alone differs, that is no difference of a cell.
 */
export function compareSheets(mine: INotebookContent, theirs: INotebookContent): readonly Difference[] {
  const others = new Map(theirs.cells.map((cell) => [idOf(cell), cell]));
  const seen = new Set<string>();
  const differences: Difference[] = [];
  for (const [index, cell] of mine.cells.entries()) {
    const other = others.get(idOf(cell));
    if (other !== undefined) seen.add(idOf(cell));
    if (other !== undefined && look(other) === look(cell)) continue;
    differences.push({ place: index + 1, mine: look(cell), theirs: other && look(other) });
  }
  for (const [index, cell] of theirs.cells.entries())
    if (!seen.has(idOf(cell))) differences.push({ place: index + 1, mine: undefined, theirs: look(cell) });
  return differences.sort((a, b) => a.place - b.place);
}

/** A cell without an id stands for itself by its text. */
function idOf(cell: ICell): string {
  return typeof cell.id === "string" ? cell.id : look(cell);
}

function look(cell: ICell): string {
  return cell.cell_type === "code" ? sourceOf(cell) : `[text]\n${sourceOf(cell)}`;
}
