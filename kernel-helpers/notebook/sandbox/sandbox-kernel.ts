import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, realpathSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { packageRoot } from "../../record/package-root.js";
import { blocksMimeType } from "../../view/blocks.js";
import { CellTimeoutError, KernelDiedError } from "../client/client-errors.js";
import { executeCell, failureOf } from "../client/execute-cell.js";
import type { CellOptions, CellReply, KernelOutput, RunningKernel } from "../client/running-kernel.js";
import { checkDrawable } from "../report/check-drawable.js";
import { checkPresentation } from "../report/check-presentation.js";
import { processMemory } from "./process-memory.js";
import type { FromSandbox, ToSandbox } from "./sandbox-messages.js";
import { type SandboxOffer, unshareCommand } from "./sandbox-offer.js";

/** Limits of what runs in a sandbox. */
export interface SandboxLimits {
  /** Memory in use [bytes]. */
  readonly memory: number;
  /** What one cell may show [bytes]. */
  readonly output: number;
  /** Time until it answers for the first time [ms]. */
  readonly start: number;
}

export const usualLimits: SandboxLimits = { memory: 2e9, output: 100e6, start: 60_000 };

/** How often memory is looked at [ms]. */
const lookEvery = 100;
const lastWordsKept = 4000;

interface Pending {
  readonly onOutput: (output: KernelOutput) => void;
  readonly finish: (content: FromSandbox["content"]) => void;
  shown: number;
}

/**
 * A kernel in the strictest sandbox a machine offers, and the talk with it: its code reads one folder, and writes what
 * lies in its out/ and record/. It has no way to be interrupted: what takes
 * too long is ended.
 */
export class SandboxKernel implements RunningKernel {
  readonly #child: ChildProcess;
  readonly #limits: SandboxLimits;
  readonly #died: Promise<never>;
  readonly #ended: Promise<void>;
  readonly #pending = new Map<number, Pending>();
  readonly #watch: NodeJS.Timeout;
  #ready = (): void => {};
  #last = 0;
  #why = "";
  #lastWords = "";

  /**
   * Starts a kernel that sees one folder.
   *
   * @param folder  the folder; no link may lie in it
   * @throws KernelDiedError  it ended instead of answering
   * @throws RangeError  this Node offers no permission model
   */
  static async start(
    folder: string,
    offer: SandboxOffer,
    limits: SandboxLimits = usualLimits,
  ): Promise<SandboxKernel> {
    const kernel = new SandboxKernel(realpathSync(folder), offer, limits);
    const ready = new Promise<"ready">((resolve) => {
      kernel.#ready = () => resolve("ready");
    });
    const late = pause(limits.start, "late" as const, { ref: false });
    if ((await Promise.race([ready, late, kernel.#died])) === "late") {
      await kernel.close();
      throw new Error(`the sandbox did not answer within ${limits.start / 1000} s`);
    }
    return kernel;
  }

  private constructor(folder: string, offer: SandboxOffer, limits: SandboxLimits) {
    if (offer.permission === undefined)
      throw new RangeError("SandboxKernel: Node must have a permission model, got one without");
    this.#limits = limits;
    for (const name of writable) mkdirSync(join(folder, name), { recursive: true });
    const command = [process.execPath, ...nodeArguments(folder, offer.permission, limits)];
    const [program, ...args] = offer.apart ? [...unshareCommand(folder), ...command] : command;
    this.#child = spawn(program!, args, {
      cwd: folder,
      env: plainEnvironment(folder),
      stdio: ["ignore", "ignore", "pipe", "ipc"],
    });
    this.#child.stderr?.on("data", (bytes: Buffer) => {
      this.#lastWords = (this.#lastWords + bytes.toString("utf8")).slice(-lastWordsKept);
    });
    this.#child.on("message", (message) => this.#take(message));
    process.once("exit", this.#kill);
    this.#died = new Promise((_, reject) => {
      this.#child.once("error", reject);
      this.#child.once("close", (code, signal) => {
        process.removeListener("exit", this.#kill);
        clearInterval(this.#watch);
        reject(new KernelDiedError(code, signal, this.#why || this.#lastWords.trim()));
      });
    });
    this.#ended = this.#died.catch(() => undefined);
    this.#watch = setInterval(() => this.#lookAtMemory(), lookEvery).unref();
  }

  async execute(code: string, options: CellOptions = {}): Promise<CellReply> {
    return executeCell(code, options, (asked, onOutput) => {
      const answer = this.#ask("execute_request", { ...asked }, onOutput, options.cellId);
      return options.timeout === undefined ? answer : this.#inTime(answer, options.timeout);
    });
  }

  async reset({ directory, ...rest }: Parameters<RunningKernel["reset"]>[0]): Promise<void> {
    const content = await this.#ask("journalbox_reset_request", {
      directory: realpathSync(directory),
      ...rest,
    });
    if (content.status !== "ok") throw failureOf(content);
  }

  async close(): Promise<void> {
    this.#kill();
    await this.#ended;
  }

  readonly #kill = (): void => {
    this.#child.kill("SIGKILL");
  };

  #end(why: string): void {
    this.#why = why;
    this.#kill();
  }

  #lookAtMemory(): void {
    const { pid } = this.#child;
    if (pid !== undefined && processMemory(pid) > this.#limits.memory)
      this.#end(`it took more than ${this.#limits.memory / 1e9} GB of memory`);
  }

  async #inTime(
    answer: Promise<FromSandbox["content"]>,
    milliseconds: number,
  ): Promise<FromSandbox["content"]> {
    const first = await Promise.race([answer, pause(milliseconds, "late" as const, { ref: false })]);
    if (first !== "late") return first;
    answer.catch(() => undefined);
    await this.close();
    throw new CellTimeoutError(milliseconds, false);
  }

  #ask(
    type: ToSandbox["type"],
    content: ToSandbox["content"],
    onOutput: Pending["onOutput"] = () => {},
    cellId?: string,
  ): Promise<FromSandbox["content"]> {
    this.#last += 1;
    const id = this.#last;
    const answered = new Promise<FromSandbox["content"]>((finish) => {
      this.#pending.set(id, { onOutput, finish, shown: 0 });
    });
    const message: ToSandbox = { id, type, content, ...(cellId !== undefined && { cellId }) };
    this.#child.send(message, () => {}); // where it has ended, that is told by #died
    return Promise.race([answered, this.#died]);
  }

  /** Takes a message out of the sandbox, as data only. */
  #take(message: unknown): void {
    const { id, type, content } = (message ?? {}) as Partial<Record<keyof FromSandbox, unknown>>;
    if (type === "ready") this.#ready();
    const pending = typeof id === "number" ? this.#pending.get(id) : undefined;
    if (pending === undefined || typeof type !== "string" || typeof content !== "object" || content === null)
      return;
    const fields = content as FromSandbox["content"];
    pending.shown += JSON.stringify(fields).length;
    if (pending.shown > this.#limits.output)
      this.#end(`a cell showed more than ${this.#limits.output / 1e6} MB`);
    else if (type === "reply")
      pending.finish(fields.status === "error" ? { ...fields, ...errorFields(fields) } : fields);
    else
      pending.onOutput({ type, content: type === "error" ? errorFields(fields) : withoutBadMarks(fields) });
  }
}

/** Folders within its folder that the code may write: where results go. They are made where they are not there. */
const writable: readonly string[] = ["out", "record"];

/** Node's switches: reading of the program and of the folder, writing of results, nothing else. */
function nodeArguments(folder: string, permission: string, { memory }: SandboxLimits): readonly string[] {
  const root = realpathSync(packageRoot());
  const beside = dirname(root);
  const reads = [root, folder, ...(basename(beside) === "node_modules" ? [beside] : [])];
  return [
    permission,
    "--no-warnings",
    `--max-old-space-size=${Math.round(memory / 2 ** 20)}`,
    // A folder stands for all in it. The network of Node 25 has a switch too: without it, it is closed.
    ...reads.map((path) => `--allow-fs-read=${path}`),
    ...writable.map((name) => `--allow-fs-write=${join(folder, name)}`),
    join(root, "dist", "notebook", "sandbox", "sandbox-program.js"),
  ];
}

/** Nothing of the user's environment goes along. */
function plainEnvironment(home: string): NodeJS.ProcessEnv {
  return { PATH: "/usr/bin:/bin", HOME: home, LANG: "C.UTF-8", NO_COLOR: "1", JOURNALBOX_QUICK_START: "off" };
}

/**
 * Pictures that the kernel leaves to be drawn outside are drawn where the figure is plain data of the kind the report
 * draws; marks that ask for another are made harmless.
 */
function withoutBadMarks(content: FromSandbox["content"]): FromSandbox["content"] {
  const data = content.data as Readonly<Record<string, unknown>> | undefined;
  const html = data?.["text/html"];
  if (typeof html !== "string" || !html.includes("<!--journalbox:") || isDrawable(data?.[blocksMimeType]))
    return content;
  return { ...content, data: { ...data, "text/html": html.replaceAll("<!--journalbox:", "<!--") } };
}

function isDrawable(given: unknown): boolean {
  const presentation = checkPresentation(given);
  if (presentation === undefined) return false;
  try {
    for (const block of presentation.blocks) if (block.type === "figure") checkDrawable(block.figure);
    return true;
  } catch {
    return false;
  }
}

function errorFields({ ename, evalue, traceback }: FromSandbox["content"]): {
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: readonly string[];
} {
  return {
    ename: String(ename ?? "Error"),
    evalue: inPlainWords(String(evalue ?? "")),
    traceback: Array.isArray(traceback) ? traceback.map((line) => inPlainWords(String(line))) : [],
  };
}

/** What Node says where its permission model refuses something; it speaks of switches that nobody can set here. */
const refusals: readonly RegExp[] = [
  /Access to this API has been restricted\.?(?: Use --allow-[\w-]+ to manage permissions\.?)?/g,
  /fs\.\w+ API requires full fs\.read and fs\.write permissions\.?/g,
  /\w+ API is disabled when Permission Model is enabled\.?/g,
  /Cannot load native addon because loading addons is disabled\.?/g,
];

function inPlainWords(text: string): string {
  return refusals.reduce((said, refusal) => said.replace(refusal, notAllowed), text);
}

const notAllowed =
  "the sandbox does not allow this: files outside its folder, links, other programs, threads and native modules are kept from it";
