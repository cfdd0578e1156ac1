import { CellError } from "../client/client-errors.js";
import type { RunningKernel } from "../client/running-kernel.js";
import type { Cell, CodeCell, Notebook, Output } from "../file/notebook-format.js";
import { OutputCollector } from "./collect-outputs.js";
import type { FailedCell, SheetError } from "./sheet-result.js";

/** What came of the cells of one notebook. */
export interface CellsRun {
  readonly notebook: Notebook;
  readonly failure?: { readonly cell: FailedCell; readonly error: SheetError };
  readonly stderr: string;
  readonly notRun: readonly string[];
}

/** How to run the cells of a notebook. */
export interface RunCellsOptions {
  /** How long one cell may take [ms]. */
  readonly timeout: number;
  /** Called before each code cell that is run, with its place among all cells. */
  readonly onCell: (index: number) => void;
  /** Called after each code cell that was run, with what it has shown so far. */
  readonly onOutputs: (outputs: readonly Output[]) => void;
  /** Called when all cells have been run, to wait for what still comes of them. */
  readonly settle: () => Promise<void>;
}

/**
 * Runs the code cells of a notebook from first to last, and stops at the first that fails. A cell fails when the
 * kernel says so, or when it wrote to its error output, even after it had ended.
 */
export async function runCells(
  client: RunningKernel,
  notebook: Notebook,
  options: RunCellsOptions,
): Promise<CellsRun> {
  const runs = new Map<CodeCell, CellRun>();
  for (const [index, cell] of notebook.cells.entries()) {
    if (cell.cell_type !== "code" || cell.source.trim() === "") continue;
    options.onCell(index);
    const run = await runCell(client, cell, options.timeout);
    runs.set(cell, run);
    options.onOutputs(run.outputs.outputs);
    if (run.error !== undefined || run.outputs.stderr !== "") break;
  }
  await options.settle();
  const failed = [...runs].find(([, { error, outputs }]) => error !== undefined || outputs.stderr !== "");
  const notRun = notebook.cells.filter(
    (cell) => isCode(cell) && cell.source.trim() !== "" && !runs.has(cell),
  );
  return {
    notebook: {
      ...notebook,
      cells: notebook.cells.map((cell) =>
        isCode(cell) ? executed(cell, runs.get(cell), failed?.[0].id) : cell,
      ),
    },
    ...(failed && { failure: failureOf(...failed, notebook.cells.indexOf(failed[0])) }),
    stderr: [...runs.values()].map(({ outputs }) => outputs.stderr).join(""),
    notRun: notRun.map(({ id }) => id),
  };
}

interface CellRun {
  readonly outputs: OutputCollector;
  readonly executionCount: number | null;
  readonly error?: SheetError;
}

async function runCell(client: RunningKernel, cell: CodeCell, timeout: number): Promise<CellRun> {
  const outputs = new OutputCollector();
  let executionCount: number | null = null;
  const onOutput: typeof outputs.take = (output) => {
    if (output.type === "execute_input") executionCount = Number(output.content.execution_count);
    else outputs.take(output);
  };
  try {
    await client.execute(cell.source, { cellId: cell.id, timeout, onOutput });
    return { outputs, executionCount };
  } catch (thrown) {
    const error = errorOf(thrown);
    const told = outputs.outputs.some((output) => output.output_type === "error");
    // A kernel that died, or was stopped, could not say so in the notebook.
    if (!told) outputs.add({ ename: error.name, evalue: error.message, traceback: error.traceback });
    return { outputs, executionCount, error };
  }
}

function errorOf(thrown: unknown): SheetError {
  if (thrown instanceof CellError)
    return { name: thrown.ename, message: thrown.evalue, traceback: thrown.traceback };
  const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  return { name, message, traceback: [`${name}: ${message}`] };
}

function failureOf(cell: CodeCell, run: CellRun, index: number): NonNullable<CellsRun["failure"]> {
  const { stderr } = run.outputs;
  const error = run.error ?? {
    name: "ErrorOutput",
    message: `the cell wrote to its error output: ${stderr.split("\n")[0]}`,
    traceback: stderr.trimEnd().split("\n"),
  };
  return { cell: { id: cell.id, index, source: cell.source }, error };
}

function executed(cell: CodeCell, run: CellRun | undefined, failedId: string | undefined): CodeCell {
  if (run !== undefined)
    return { ...cell, outputs: run.outputs.outputs, execution_count: run.executionCount };
  if (failedId === undefined || cell.source.trim() === "")
    return { ...cell, outputs: [], execution_count: null };
  const data = { "text/plain": `Not run, because cell ${failedId} failed.` };
  return { ...cell, outputs: [{ output_type: "display_data", data, metadata: {} }], execution_count: null };
}

function isCode(cell: Cell): cell is CodeCell {
  return cell.cell_type === "code";
}
