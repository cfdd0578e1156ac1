import { CellError } from "./client-errors.js";
import type { CellOptions, CellReply, KernelOutput } from "./running-kernel.js";

/** What a kernel is asked when a cell is to be run, by the names of the protocol. */
export interface AskedOfCell {
  readonly code: string;
  readonly silent: boolean;
  readonly store_history: boolean;
  readonly stop_on_error: boolean;
}

type ReplyContent = Readonly<Record<string, unknown>>;

/**
 * Runs one cell on a kernel, wherever it is: gathers what it shows, and turns a reply that is no "ok" into an error.
 *
 * @param ask  hands the request to the kernel, and resolves with the content of its reply when all outputs have come
 * @throws CellError  the cell failed
 */
export async function executeCell(
  code: string,
  { onOutput, silent = false, stopOnError = true }: CellOptions,
  ask: (asked: AskedOfCell, onOutput: (output: KernelOutput) => void) => Promise<ReplyContent>,
): Promise<CellReply> {
  const outputs: KernelOutput[] = [];
  const asked = { code, silent, store_history: !silent, stop_on_error: stopOnError };
  const content = await ask(asked, (output) => {
    outputs.push(output);
    onOutput?.(output);
  });
  if (content.status !== "ok") throw failureOf(content);
  return { executionCount: Number(content.execution_count), outputs };
}

/** The error that a reply tells of. */
export function failureOf(content: ReplyContent): CellError {
  if (content.status === "aborted")
    return new CellError({
      ename: "Aborted",
      evalue: "an earlier cell failed, so this one was not run",
      traceback: [],
    });
  const { ename, evalue, traceback } = content;
  return new CellError({
    ename: String(ename ?? "Error"),
    evalue: String(evalue ?? ""),
    traceback: Array.isArray(traceback) ? traceback.map(String) : [],
  });
}
