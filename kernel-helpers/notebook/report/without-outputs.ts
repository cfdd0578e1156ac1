import type { Notebook } from "../file/notebook-format.js";
import { notebookJson } from "../file/notebook-json.js";

/** A notebook file without results and counts: what somebody needs to run it again. */
export function withoutOutputs(notebook: Notebook): string {
  const cells = notebook.cells.map((cell) =>
    cell.cell_type === "code" ? { ...cell, outputs: [], execution_count: null } : cell,
  );
  return notebookJson({ ...notebook, cells });
}
