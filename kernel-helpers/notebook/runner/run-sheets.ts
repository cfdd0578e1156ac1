import { join } from "node:path";
import { KernelClient } from "../client/kernel-client.js";
import { readNotebook, writeNotebook } from "../file/notebook-file.js";
import type { Notebook } from "../file/notebook-format.js";
import { type CellsRun, runCells } from "./run-cells.js";
import type { Sheet, SheetError, SheetResult } from "./sheet-result.js";

/** What to run, where, and whom to tell. */
export interface RunSheetsOptions {
  /** In the order in which they are to be run; names are file names without `.ipynb`, each once. */
  readonly sheets: readonly Sheet[];
  /** The rebuild folder, in which the cells run. */
  readonly directory: string;
  /** Where the executed notebooks are written. */
  readonly outputDirectory: string;
  readonly onProgress?: (progress: Progress) => void;
  /** Asked when a sheet's turn has come: whether it is passed over. */
  readonly skip?: (sheet: Sheet) => boolean;
  /** How long one cell may take [ms]; ten minutes where not given. */
  readonly cellTimeout?: number;
}

/** How far the run has come. */
export type Progress =
  | { readonly type: "kernel-started"; readonly duration: number }
  | { readonly type: "sheet-started"; readonly sheet: string; readonly cells: number }
  | { readonly type: "cell-started"; readonly sheet: string; readonly index: number; readonly cells: number }
  | { readonly type: "sheet-ended"; readonly result: SheetResult };

const tenMinutes = 600_000;

/**
 * Runs worksheets one after the other in one warm kernel, each in a clean state, and writes each executed
 * notebook, also when it failed. A sheet that fails does not keep the next ones from being run. Where the kernel
 * dies, a new one is started for the next sheet, and its result says so.
 *
 * @returns one result a sheet that was run, in the order given
 * @throws RangeError a sheet's name is used twice, or is no file name
 * @throws Error a kernel cannot be started, or a notebook cannot be written
 */
export async function runSheets(options: RunSheetsOptions): Promise<readonly SheetResult[]> {
  checkNames(options.sheets);
  const kernel = new WarmKernel(options);
  try {
    const results: SheetResult[] = [];
    for (const sheet of options.sheets) {
      if (options.skip?.(sheet)) continue;
      const result = await runSheet(sheet, kernel, options);
      options.onProgress?.({ type: "sheet-ended", result });
      results.push(result);
    }
    return Object.freeze(results);
  } finally {
    await kernel.close();
  }
}

function checkNames(sheets: readonly Sheet[]): void {
  const names = new Set<string>();
  for (const { name } of sheets) {
    if (!/^[^/\\]+$/.test(name) || name.startsWith("."))
      throw new RangeError(`runSheets: a sheet's name must be a file name without its ending, got ${name}`);
    if (names.has(name))
      throw new RangeError(`runSheets: each sheet must have a name of its own, got ${name} twice`);
    names.add(name);
  }
}

async function runSheet(sheet: Sheet, kernel: WarmKernel, options: RunSheetsOptions): Promise<SheetResult> {
  const began = Date.now();
  const common = { kind: "sheet-result", sheet: sheet.name } as const;
  let notebook: Notebook;
  try {
    notebook = readNotebook(sheet.path);
  } catch (thrown) {
    const error = unreadable(thrown);
    return { ...common, status: "failed", error, stderr: "", notRun: [], duration: Date.now() - began };
  }
  const { client, newKernel } = await kernel.clean(sheet.name);
  const cells = notebook.cells.length;
  options.onProgress?.({ type: "sheet-started", sheet: sheet.name, cells });
  const run = await runCells(client, notebook, {
    timeout: options.cellTimeout ?? tenMinutes,
    onCell: (index) => options.onProgress?.({ type: "cell-started", sheet: sheet.name, index, cells }),
    settle: () => kernel.settle(),
  });
  const path = join(options.outputDirectory, `${sheet.name}.ipynb`);
  writeNotebook(path, run.notebook);
  return {
    ...common,
    ...verdict(run),
    ...(newKernel !== undefined && { newKernel }),
    notebook: run.notebook,
    path,
    duration: Date.now() - began,
  };
}

function verdict({ failure, stderr, notRun }: CellsRun): Pick<SheetResult, "status" | "stderr" | "notRun"> {
  if (failure === undefined) return { status: "ok", stderr, notRun };
  const { cell: failedCell, error } = failure;
  return { status: "failed", stderr, notRun, ...{ failedCell, error } };
}

function unreadable(thrown: unknown): SheetError {
  const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  return { name, message, traceback: [`${name}: ${message}`] };
}

/** One kernel for all sheets, as long as it lives. */
class WarmKernel {
  readonly #options: RunSheetsOptions;
  #client: KernelClient | undefined;
  /** Why there is no kernel any more; not given before the first one. */
  #lost: string | undefined;

  constructor(options: RunSheetsOptions) {
    this.#options = options;
  }

  /** A kernel in clean state, and why it is a new one, where it is not the first. */
  async clean(sheet: string): Promise<{ readonly client: KernelClient; readonly newKernel?: string }> {
    const { directory } = this.#options;
    const newKernel = this.#client === undefined ? this.#lost : undefined;
    const client = this.#client ?? (await this.#start());
    await client.reset({ directory, sheet });
    return newKernel === undefined ? { client } : { client, newKernel };
  }

  /** Ends what a sheet left running; what it still had to say has come when this resolves. */
  async settle(): Promise<void> {
    try {
      await this.#client?.reset({ directory: this.#options.directory });
    } catch (error) {
      this.#lost = error instanceof Error ? error.message : String(error);
      await this.close();
    }
  }

  async close(): Promise<void> {
    await this.#client?.close();
    this.#client = undefined;
  }

  async #start(): Promise<KernelClient> {
    const began = Date.now();
    this.#client = await KernelClient.start({ directory: this.#options.directory });
    this.#options.onProgress?.({ type: "kernel-started", duration: Date.now() - began });
    return this.#client;
  }
}
