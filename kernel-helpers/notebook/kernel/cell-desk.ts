import { setImmediate as nextTurn } from "node:timers/promises";
import { inspect } from "node:util";
import { blocksMimeType, type Presentation } from "../../view/blocks.js";
import type { Bundle } from "../../view/bundle-type.js";
import type { Message } from "../wire/message.js";
import { type CellContext, insideCell } from "./cell-context.js";
import type { CellOutcome, CellRunner } from "./cell-runner.js";
import { cancelTimers } from "./cell-timers.js";
import type { ErrorContent } from "./error-content.js";
import { faint } from "./ink.js";
import type { Output, Publish } from "./output.js";
import type { PlacesOf } from "./stack-places.js";
import { Interrupted } from "./stop-flag.js";
import { thrownError } from "./thrown-error.js";
import { typeError } from "./type-error.js";

/** The content of an execute_reply. */
export type ExecuteReply =
  | { status: "ok"; execution_count: number; payload: []; user_expressions: Record<string, unknown> }
  | ({ status: "error"; execution_count: number } & ErrorContent);

/** Takes a request to run a cell through all its steps, and shows what came of it. */
export class CellDesk {
  readonly #runner: CellRunner;
  readonly #output: Output;
  readonly #publish: Publish;
  readonly #placesOf: PlacesOf;
  #count = 0;
  #forgetPage = (): void => {};
  #note: Presentation | undefined;
  /** Whether the client draws the pictures of what cells show. */
  #owesPictures = false;

  constructor(runner: CellRunner, output: Output, publish: Publish, placesOf: PlacesOf) {
    this.#runner = runner;
    this.#output = output;
    this.#publish = publish;
    this.#placesOf = placesOf;
  }

  /** Numbers begin anew. From now on pictures are drawn here, or owed to the client. */
  reset(pictures: "drawn" | "owed"): void {
    this.#count = 0;
    this.#owesPictures = pictures === "owed";
    this.#forgetPage();
  }

  /** Shows something of the kernel's own under the next cell. */
  noteNext(note: Presentation): void {
    this.#note = note;
  }

  /** Runs a cell; one that was interrupted before it began is shown so, and not run. */
  async run(request: Message, isStruck: boolean): Promise<ExecuteReply> {
    const code = String(request.content.code ?? "");
    const silent = request.content.silent === true;
    if (!silent && request.content.store_history !== false) this.#count += 1;
    const cell: CellContext = {
      request,
      number: this.#count,
      running: true,
      shown: false,
      strays: new Map(),
    };
    this.#output.begin(cell);
    if (!silent) this.#publish(cell, "execute_input", { code, execution_count: cell.number });
    const error = await this.#runAndShow(cell, code, silent, isStruck);
    this.#output.flush();
    if (!silent) await this.#showNote(cell);
    if (error === undefined)
      return {
        status: "ok",
        execution_count: cell.number,
        payload: [],
        user_expressions: refused(request.content.user_expressions),
      };
    this.#publish(cell, "error", { ...error });
    return { status: "error", execution_count: cell.number, ...error };
  }

  /** Shows an error that came after its cell had ended, under that cell. */
  tellLate(cell: CellContext, reason: unknown): void {
    const { traceback } = thrownError(reason, this.#placesOf);
    this.#output.write(cell, "stderr", [...traceback, lateHint, ""].join("\n"));
  }

  async #runAndShow(
    cell: CellContext,
    code: string,
    silent: boolean,
    isStruck: boolean,
  ): Promise<ErrorContent | undefined> {
    try {
      if (isStruck) return this.#errorOf({ status: "interrupted" }, cell, code);
      const outcome = await insideCell(cell, () => this.#runner.run(code, cell.number));
      // Node tells of a rejected promise at the end of this turn of its event loop.
      await nextTurn();
      if (outcome.status !== "ok") return this.#errorOf(outcome, cell, code);
      if (!silent) await this.#showValue(cell, outcome.value);
      return this.#errorOfStrays(cell);
    } catch (thrown) {
      return thrownError(thrown, this.#placesOf); // the value could not be shown
    } finally {
      cell.running = false;
    }
  }

  async #showValue(cell: CellContext, value: unknown): Promise<void> {
    if (value === undefined || value === null) return;
    const result = (bundle: Bundle): void => {
      this.#output.flush();
      this.#publish(cell, "execute_result", { execution_count: cell.number, ...bundle });
    };
    if (typeof value === "function" && value.name === lastValueName) hideName(value);
    if (typeof value !== "object" && typeof value !== "function")
      return result({ data: { "text/plain": inspect(value) }, metadata: {} });
    // Loaded with the first value that may have a look of its own, so that the kernel starts without it.
    const { bundleOf, owingBundleOf, resetLoader } = await import("../../view/bundle.js");
    this.#forgetPage = resetLoader;
    const show = this.#owesPictures ? owingBundleOf : bundleOf;
    const bundle = await insideCell(cell, async () => show(value, cellId(cell.request)));
    const { noteShown } = await import("../../record/note-sheet.js");
    noteShown(value, blocksIn(bundle));
    if (bundle !== undefined) result(bundle);
  }

  async #showNote(cell: CellContext): Promise<void> {
    const note = this.#note;
    if (note === undefined) return;
    this.#note = undefined;
    const { bundleOf } = await import("../../view/bundle.js");
    this.#publish(cell, "display_data", { ...(await bundleOf(note)), transient: {} });
  }

  #errorOf(outcome: Exclude<CellOutcome, { status: "ok" }>, cell: CellContext, code: string): ErrorContent {
    if (outcome.status === "type-error") return typeError(outcome.diagnostics, code);
    if (outcome.status === "thrown") return thrownError(outcome.thrown, this.#placesOf);
    cancelTimers(cell);
    return thrownError(outcome.stopped ?? new Interrupted(), this.#placesOf);
  }

  #errorOfStrays(cell: CellContext): ErrorContent | undefined {
    if (cell.strays.size === 0) return undefined;
    const [first] = cell.strays.values();
    const error = thrownError(first, this.#placesOf);
    return { ...error, traceback: [...error.traceback, strayHint] };
  }
}

/** What tslab calls the value of a cell's last line; a function without a name of its own takes it. */
const lastValueName = "tsLastExpr";

function hideName(nameless: object): void {
  Object.defineProperty(nameless, "name", { value: "", configurable: true });
}

/** What a value looks like, as the executed notebook carries it. */
function blocksIn(bundle: Bundle | undefined): readonly unknown[] | undefined {
  return (bundle?.data[blocksMimeType] as Presentation | undefined)?.blocks;
}

/** Expressions to be computed beside the cell: front ends of today send none, and whoever does is told. */
function refused(expressions: unknown): Record<string, unknown> {
  const no = {
    status: "error",
    ename: "NotSupported",
    evalue: "this kernel computes no expressions beside the cell",
    traceback: [],
  };
  return Object.fromEntries(Object.keys(expressions ?? {}).map((name) => [name, no]));
}

/** Front ends of today say which cell they run. */
function cellId(request: Message): string | undefined {
  const id = request.metadata?.cellId;
  return typeof id === "string" ? id : undefined;
}

const strayHint = faint("Nothing waited for this: put await before the call it comes from.");
const lateHint = faint("This came after its cell had ended: put await before the call it comes from.");
