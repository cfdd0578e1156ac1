import type { ICell, INotebookContent, IOutput } from "@jupyterlab/nbformat";

/**
 * A notebook whose results have their texts in one piece. A file has them as lists of lines, and JupyterLab's
 * components show a list with commas between its lines.
 */
export function withJoinedLines(notebook: INotebookContent): INotebookContent {
  return { ...notebook, cells: notebook.cells.map(joinedCell) };
}

function joinedCell(cell: ICell): ICell {
  if (cell.cell_type !== "code") return cell;
  return { ...cell, outputs: (cell.outputs as IOutput[]).map(joinedOutput) };
}

function joinedOutput(output: IOutput): IOutput {
  if (typeof output.data !== "object" || output.data === null) return output;
  const data = Object.entries(output.data).map(([type, value]) => [
    type,
    isJson(type) ? value : joined(value),
  ]);
  return { ...output, data: Object.fromEntries(data) };
}

function isJson(type: string): boolean {
  return type === "application/json" || type.endsWith("+json");
}

function joined(value: unknown): unknown {
  return Array.isArray(value) ? (value as string[]).join("") : value;
}
