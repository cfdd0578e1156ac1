import type { ICell, ICodeCell, INotebookContent } from "@jupyterlab/nbformat";

/** The source of a cell in one piece. */
export function sourceOf({ source }: Pick<ICell, "source">): string {
  return typeof source === "string" ? source : source.join("");
}

/**
 * What a person wrote in a sheet, and nothing else: kinds, texts and pictures of the cells, in order. Two notebooks
 * with the same text are the same sheet, however often each was run.
 */
export function textOf({ cells }: Pick<INotebookContent, "cells">): string {
  return JSON.stringify(cells.map((cell) => [cell.cell_type, sourceOf(cell), cell.attachments ?? null]));
}

/** The notebook as it is saved: without results, and without what a front end notes for itself. */
export function withoutResults(notebook: INotebookContent): INotebookContent {
  return {
    ...notebook,
    cells: notebook.cells.map((cell) =>
      cell.cell_type === "code"
        ? { ...plainCell(cell), outputs: [], execution_count: null }
        : plainCell(cell),
    ),
  };
}

function plainCell(cell: ICell): ICell {
  const { trusted: _, ...metadata } = cell.metadata;
  return { ...cell, metadata };
}

/** The notebook with the results that another one has for the same code in a cell of the same id. */
export function withResultsOf(notebook: INotebookContent, executed: INotebookContent): INotebookContent {
  const known = new Map(executed.cells.filter(isCode).map((cell) => [cell.id, cell]));
  const cells = notebook.cells.map((cell) => {
    const ran = isCode(cell) ? known.get(cell.id) : undefined;
    if (ran === undefined || sourceOf(ran) !== sourceOf(cell)) return cell;
    return { ...cell, outputs: ran.outputs, execution_count: ran.execution_count };
  });
  return { ...notebook, cells };
}

function isCode(cell: ICell): cell is ICodeCell {
  return cell.cell_type === "code";
}

/** Whether any cell shows a result. */
export function hasResults({ cells }: INotebookContent): boolean {
  return cells.some((cell) => isCode(cell) && cell.outputs.length > 0);
}
