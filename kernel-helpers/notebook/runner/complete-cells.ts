import type { Painter } from "../../view/picture/painter.js";
import type { Cell, CodeCell, Output } from "../file/notebook-format.js";
import { completeOutput } from "./complete-output.js";
import type { CellsRun } from "./run-cells.js";
import type { SheetError } from "./sheet-result.js";

/** Has the pictures of some outputs drawn while other work goes on. What comes of it, {@link completeCells} tells. */
export function beginToDraw(outputs: readonly Output[], painter: Painter): void {
  for (const output of outputs) completeOutput(output, painter).catch(() => undefined);
}

/**
 * The cells of a notebook with the pictures in it that were left to be drawn. A cell whose picture cannot be drawn
 * shows the error, and has failed.
 */
export async function completeCells(run: CellsRun, painter: Painter): Promise<CellsRun> {
  let failure = run.failure;
  const cells: Cell[] = [];
  for (const [index, cell] of run.notebook.cells.entries()) {
    if (cell.cell_type !== "code") {
      cells.push(cell);
      continue;
    }
    const { outputs, error } = await completeOutputs(cell, painter);
    if (error !== undefined) failure ??= { cell: { id: cell.id, index, source: cell.source }, error };
    cells.push({ ...cell, outputs });
  }
  return { ...run, notebook: { ...run.notebook, cells }, ...(failure && { failure }) };
}

async function completeOutputs(
  { outputs }: CodeCell,
  painter: Painter,
): Promise<{ readonly outputs: readonly Output[]; readonly error?: SheetError }> {
  try {
    return { outputs: await Promise.all(outputs.map((output) => completeOutput(output, painter))) };
  } catch (thrown) {
    const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
    const traceback = [`${name}: ${message}`];
    const told: Output = { output_type: "error", ename: name, evalue: message, traceback };
    const shown = outputs.filter(({ output_type }) => output_type === "stream");
    return { outputs: [...shown, told], error: { name, message, traceback } };
  }
}
