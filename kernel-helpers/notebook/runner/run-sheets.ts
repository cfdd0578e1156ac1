import { join } from "node:path";
import type { Painter } from "../../view/picture/painter.js";
import { ThreadPainter } from "../../view/picture/thread-painter.js";
import { KernelClient } from "../client/kernel-client.js";
import type { RunningKernel } from "../client/running-kernel.js";
import { readNotebook, writeExecuted } from "../file/notebook-file.js";
import type { Notebook } from "../file/notebook-format.js";
import { beginToDraw, completeCells } from "./complete-cells.js";
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
  /** Called when a sheet's cells have been run, before its pictures are drawn and the next sheet begins. */
  readonly onCellsRun?: (result: SheetResult) => void;
  /** Asked when a sheet's turn has come: whether it is passed over. */
  readonly skip?: (sheet: Sheet) => boolean;
  /** How long one cell may take [ms]; ten minutes where not given. */
  readonly cellTimeout?: number;
  /** A kernel that is being started already; it is closed with the run, whether it was needed or not. */
  readonly kernel?: Promise<RunningKernel>;
  /** Starts a kernel where one is needed; that of this package, without a sandbox, where not given. */
  readonly startKernel?: () => Promise<RunningKernel>;
  /** Who draws the pictures; a thread started for this run, without PNG, where not given. */
  readonly painter?: Painter;
}

/** How far the run has come. */
export type Progress =
  | { readonly type: "kernel-started"; readonly duration: number }
  | { readonly type: "sheet-started"; readonly sheet: string; readonly cells: number }
  | { readonly type: "cell-started"; readonly sheet: string; readonly index: number; readonly cells: number }
  | { readonly type: "sheet-ended"; readonly result: SheetResult };

const tenMinutes = 600_000;

type RunOptions = RunSheetsOptions & { readonly painter: Painter };

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
  const { painter } = options;
  if (painter !== undefined) return runEach({ ...options, painter });
  const thread = new ThreadPainter({ png: false });
  try {
    return await runEach({ ...options, painter: thread });
  } finally {
    await thread.close();
  }
}

/** The pictures of a sheet may still be drawn, and its notebook written, while the kernel runs the next one. */
async function runEach(options: RunOptions): Promise<readonly SheetResult[]> {
  const kernel = new WarmKernel(options);
  const results: Promise<SheetResult>[] = [];
  try {
    for (const sheet of options.sheets) {
      if (options.skip?.(sheet)) continue;
      const run = await runSheet(sheet, kernel, options);
      const result = endSheet(run, results.at(-1), options);
      result.catch(() => undefined); // told below, when the sheets have been run
      results.push(result);
    }
    const [done] = await Promise.all([Promise.all(results), kernel.close()]);
    return Object.freeze(done);
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

/** How the cells of a sheet went, its pictures still lacking; or why it could not be read. */
interface SheetRun extends Pick<SheetResult, "sheet" | "newKernel" | "duration"> {
  readonly run: CellsRun | undefined;
  readonly unreadable?: SheetError;
}

async function runSheet({ name, path }: Sheet, kernel: WarmKernel, options: RunOptions): Promise<SheetRun> {
  const began = Date.now();
  let notebook: Notebook;
  try {
    notebook = readNotebook(path);
  } catch (thrown) {
    return { sheet: name, run: undefined, unreadable: errorOf(thrown), duration: Date.now() - began };
  }
  const { client, newKernel } = await kernel.clean(name);
  const cells = notebook.cells.length;
  options.onProgress?.({ type: "sheet-started", sheet: name, cells });
  const run = await runCells(client, notebook, {
    timeout: options.cellTimeout ?? tenMinutes,
    onCell: (index) => options.onProgress?.({ type: "cell-started", sheet: name, index, cells }),
    onOutputs: (outputs) => beginToDraw(outputs, options.painter),
    settle: () => kernel.settle(),
  });
  return { sheet: name, run, duration: Date.now() - began, ...(newKernel !== undefined && { newKernel }) };
}

/** Waits for the pictures of a sheet, writes its notebook and tells its result, in the order of the sheets. */
async function endSheet(
  ran: SheetRun,
  before: Promise<SheetResult> | undefined,
  options: RunOptions,
): Promise<SheetResult> {
  options.onCellsRun?.(resultOf(ran, ran.run));
  const complete = ran.run && (await completeCells(ran.run, options.painter));
  await before;
  const told = resultOf(ran, complete);
  const result =
    complete === undefined ? told : { ...told, path: write(complete.notebook, ran.sheet, options) };
  options.onProgress?.({ type: "sheet-ended", result });
  return result;
}

function resultOf(
  { sheet, newKernel, duration, unreadable }: SheetRun,
  run: CellsRun | undefined,
): SheetResult {
  const common = {
    kind: "sheet-result",
    sheet,
    duration,
    ...(newKernel !== undefined && { newKernel }),
  } as const;
  return run === undefined
    ? { ...common, status: "failed", error: unreadable, stderr: "", notRun: [] }
    : { ...common, ...verdict(run), notebook: run.notebook };
}

function write(notebook: Notebook, sheet: string, { outputDirectory }: RunOptions): string {
  const path = join(outputDirectory, `${sheet}.ipynb`);
  writeExecuted(path, notebook);
  return path;
}

function verdict({ failure, stderr, notRun }: CellsRun): Pick<SheetResult, "status" | "stderr" | "notRun"> {
  if (failure === undefined) return { status: "ok", stderr, notRun };
  const { cell: failedCell, error } = failure;
  return { status: "failed", stderr, notRun, ...{ failedCell, error } };
}

function errorOf(thrown: unknown): SheetError {
  const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  return { name, message, traceback: [`${name}: ${message}`] };
}

/** One kernel for all sheets, as long as it lives. */
class WarmKernel {
  readonly #options: RunSheetsOptions;
  #started: Promise<RunningKernel> | undefined;
  #client: RunningKernel | undefined;
  /** Why there is no kernel any more; not given before the first one. */
  #lost: string | undefined;

  constructor(options: RunSheetsOptions) {
    this.#options = options;
    this.#started = options.kernel;
    this.#started?.catch(() => undefined); // told to the sheet that needs it
  }

  /** A kernel in clean state, and why it is a new one, where it is not the first. */
  async clean(sheet: string): Promise<{ readonly client: RunningKernel; readonly newKernel?: string }> {
    const { directory } = this.#options;
    const newKernel = this.#client === undefined ? this.#lost : undefined;
    const client = this.#client ?? (await this.#start());
    await client.reset({ directory, sheet, pictures: "owed" });
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
    const client = this.#client ?? (await this.#started?.catch(() => undefined));
    this.#started = undefined;
    this.#client = undefined;
    await client?.close();
  }

  async #start(): Promise<RunningKernel> {
    const began = Date.now();
    const { directory, startKernel = () => KernelClient.start({ directory, tooltips: false }) } =
      this.#options;
    this.#client = await (this.#started ?? startKernel());
    this.#started = undefined;
    this.#options.onProgress?.({ type: "kernel-started", duration: Date.now() - began });
    return this.#client;
  }
}
