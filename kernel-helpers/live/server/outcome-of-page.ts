import type { CodeCell, Notebook } from "../../notebook/index.js";
import type { SheetOutcome } from "../../record/index.js";
import type { Execution } from "./kernels/execution-log.js";

/**
 * How a sheet's run ended that was driven from the page, or undefined where it was no run from top to bottom.
 *
 * It failed where a cell, as it stands, failed when it was run last. It went well where the last things that were run
 * are the code cells, as they stand, all of them in order and without error, and where no other code was run in this
 * kernel before: code that has since been changed or taken out may have left behind what a cell now stands on.
 */
export function outcomeOfPage(
  { cells }: Notebook,
  executions: readonly Execution[],
): Pick<SheetOutcome, "status" | "failure"> | undefined {
  const code = cells.filter(
    (cell): cell is CodeCell => cell.cell_type === "code" && cell.source.trim() !== "",
  );
  for (const cell of code) {
    const last = executions.findLast((execution) => isOf(execution, cell));
    const message = last && (last.message ?? errorIn(cell));
    if (message !== undefined)
      return {
        status: "failed",
        failure: { cell: { id: cell.id, number: cells.indexOf(cell) + 1 }, message },
      };
  }
  const pass = executions.slice(executions.length - code.length);
  const isWhole = pass.length === code.length && pass.every((execution, i) => isOf(execution, code[i]!));
  const nothingElse = executions.every((execution) => code.some((cell) => isOf(execution, cell)));
  const allWell = pass.every(({ status }) => status === "ok");
  return isWhole && nothingElse && allWell ? { status: "ok" } : undefined;
}

/** Whether this is a run of the cell as it stands. */
function isOf({ code, cellId }: Execution, cell: CodeCell): boolean {
  return code === cell.source.trimEnd() && (cellId === undefined || cellId === cell.id);
}

/** An error that came after its cell had ended, or was only written to the error output. */
function errorIn({ outputs }: CodeCell): string | undefined {
  for (const output of outputs) {
    if (output.output_type === "error") return `${output.ename}: ${output.evalue}`;
    if (output.output_type === "stream" && output.name === "stderr")
      return `the cell wrote to its error output: ${output.text.split("\n")[0]}`;
  }
  return undefined;
}
