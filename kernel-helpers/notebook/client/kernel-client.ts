import { setTimeout as pause } from "node:timers/promises";
import { Dealer, Subscriber } from "zeromq";
import { dropQuickStart, quickStartOption, readyQuickStart } from "../kernel/quick-start/quick-start-file.js";
import { portTaken } from "../kernel/sockets.js";
import { addressOf } from "../wire/connection.js";
import { decode, encode, type Message, newHeader } from "../wire/message.js";
import { Outbox } from "../wire/outbox.js";
import { CellTimeoutError, KernelDiedError } from "./client-errors.js";
import { executeCell, failureOf } from "./execute-cell.js";
import { KernelProcess, kernelProgram } from "./kernel-process.js";
import type { CellOptions, CellReply, KernelOutput, RunningKernel } from "./running-kernel.js";

/** A kernel to be started. */
export interface KernelOptions {
  /** The folder the kernel runs in. */
  readonly directory: string;
  /** Environment of the kernel; that of this process where not given. */
  readonly environment?: NodeJS.ProcessEnv;
  /** How long it may take until it answers [ms]. */
  readonly startTimeout?: number;
  /** False where nobody will ask for tooltips: the kernel then starts sooner. */
  readonly tooltips?: boolean;
  /** Called when the kernel's process has been started, long before it answers. */
  readonly onSpawned?: () => void;
  /** The program and its arguments, for another kernel run by Node; this package's own where not given. */
  readonly program?: readonly string[];
}

interface Pending {
  reply?: Message;
  idle: boolean;
  readonly onOutput: (output: KernelOutput) => void;
  readonly finish: (reply: Message) => void;
  finished: boolean;
}

const mostTries = 3;
const fiveSeconds = 5000;
/** A kernel told to shut down may take this long [ms]. */
const restAfterShutdown = 2000;

/**
 * A kernel in a process of its own, and the talk with it. Close it in a `finally`: then neither a process nor a
 * file is left, whatever happened.
 */
export class KernelClient implements RunningKernel {
  readonly #process: KernelProcess;
  readonly #shell: Dealer = new Dealer({ linger: 0 });
  readonly #control: Dealer = new Dealer({ linger: 0 });
  readonly #iopub: Subscriber = new Subscriber({ linger: 0, receiveHighWaterMark: 0 });
  readonly #shellBox: Outbox = new Outbox(this.#shell);
  readonly #controlBox: Outbox = new Outbox(this.#control);
  readonly #pending: Map<string, Pending> = new Map();
  readonly #session: string = newHeader("session", "").msg_id;
  #closed: Promise<void> | undefined;

  /**
   * Starts a kernel and waits until it answers.
   *
   * @throws KernelDiedError the kernel ended instead
   * @throws Error the kernel did not answer in time
   */
  static async start(options: KernelOptions): Promise<KernelClient> {
    let quickStart = options.program === undefined ? readyQuickStart(options.environment) : undefined;
    for (let tries = 1; ; tries += 1) {
      try {
        return await KernelClient.#startOnce(options, quickStart);
      } catch (error) {
        if (!(error instanceof KernelDiedError) || tries === mostTries) throw error;
        // Its ports were free a moment ago, and taken when it came to use them.
        if (error.exitCode === portTaken) continue;
        if (quickStart === undefined) throw error;
        dropQuickStart(quickStart);
        quickStart = undefined;
      }
    }
  }

  static async #startOnce(options: KernelOptions, quickStart: string | undefined): Promise<KernelClient> {
    const { directory, environment = process.env, startTimeout = 60_000, tooltips = true } = options;
    const prepared = quickStart === undefined ? [] : quickStartOption(quickStart);
    const program = options.program ?? [...prepared, kernelProgram(), ...(tooltips ? [] : ["--no-tooltips"])];
    const client = new KernelClient(await KernelProcess.start(directory, environment, program));
    options.onSpawned?.();
    try {
      await client.#greet(startTimeout);
    } catch (error) {
      await client.close();
      throw error;
    }
    return client;
  }

  private constructor(kernel: KernelProcess) {
    this.#process = kernel;
    this.#shell.connect(addressOf(kernel.connection, "shell"));
    this.#control.connect(addressOf(kernel.connection, "control"));
    this.#iopub.connect(addressOf(kernel.connection, "iopub"));
    this.#iopub.subscribe();
    for (const socket of [this.#shell, this.#control, this.#iopub]) void this.#read(socket);
  }

  /** The kernel's process, for those who look after it from outside. */
  get pid(): number | undefined {
    return this.#process.pid;
  }

  /**
   * Runs one cell and waits until all it shows has come.
   *
   * @throws CellError the cell failed
   * @throws CellTimeoutError the cell took longer than allowed
   * @throws KernelDiedError the kernel ended
   */
  async execute(code: string, options: CellOptions = {}): Promise<CellReply> {
    return executeCell(code, options, async (asked, onOutput) => {
      const content = { ...asked, user_expressions: {}, allow_stdin: false };
      const answer = this.#ask("execute_request", content, onOutput, { cellId: options.cellId });
      const { timeout, interruptTimeout = fiveSeconds } = options;
      return (await (timeout === undefined ? answer : this.#inTime(answer, timeout, interruptTimeout)))
        .content;
    });
  }

  /** Any other request of the protocol; resolves with the content of its reply. */
  async request(type: string, content: Record<string, unknown>): Promise<Message["content"]> {
    return (await this.#ask(type, content)).content;
  }

  /**
   * Makes the kernel as good as new, for a sheet that runs in a folder. Where pictures are owed, what cells show
   * comes without them, and whoever asked draws them: see withPictures. In a folder that is thrown away afterwards
   * nothing waits for the disk.
   *
   * @throws CellError the folder is not there
   */
  async reset(sheet: {
    readonly directory: string;
    readonly sheet?: string;
    readonly pictures?: "drawn" | "owed";
    readonly thrownAway?: boolean;
  }): Promise<void> {
    const content = await this.request("journalbox_reset_request", { ...sheet });
    if (content.status !== "ok") throw failureOf(content);
    for (const [id, pending] of this.#pending) if (pending.finished) this.#pending.delete(id);
  }

  /**
   * Interrupts the running cell. Code of a package that computes without end after an `await` does not notice;
   * loops written in cells do.
   */
  interrupt(): void {
    this.#controlBox.put(this.#encode(this.#newRequest("interrupt_request", {})));
  }

  /** Shuts the kernel down, by force where it does not listen. May be called twice. */
  close(): Promise<void> {
    this.#closed ??= this.#shutDown();
    return this.#closed;
  }

  async #shutDown(): Promise<void> {
    this.#controlBox.put(this.#encode(this.#newRequest("shutdown_request", { restart: false })));
    await this.#process.end(restAfterShutdown);
    for (const socket of [this.#shell, this.#control, this.#iopub]) socket.close();
    this.#process.forgetFile();
  }

  /**
   * What the kernel publishes before the subscription has reached it is lost. So the client asks again and again
   * until the answer comes on both ways.
   */
  async #greet(milliseconds: number): Promise<void> {
    const end = Date.now() + milliseconds;
    let answered = false;
    const died = this.#process.died.catch((error: unknown) => {
      if (!answered) throw error;
    });
    while (!answered) {
      if (Date.now() > end) throw new Error(`the kernel did not answer within ${milliseconds / 1000} s`);
      const answer = this.#ask("kernel_info_request", {}).then(() => {
        answered = true;
      });
      await Promise.race([answer, pause(20), died]);
    }
    this.#pending.clear();
    this.#process.forgetFile();
  }

  async #inTime(answer: Promise<Message>, milliseconds: number, rest: number): Promise<Message> {
    const late = (after: number): Promise<"late"> => pause(after, "late" as const, { ref: false });
    const first = await Promise.race([answer, late(milliseconds)]);
    if (first !== "late") return first;
    this.interrupt();
    const second = await Promise.race([answer, late(rest)]);
    if (second === "late") {
      this.#process.kill();
      await answer.catch(() => undefined); // ends with the kernel
    }
    throw new CellTimeoutError(milliseconds, second !== "late");
  }

  /** Resolves with the reply when both it and the closing `idle` have come. */
  #ask(
    type: string,
    content: Record<string, unknown>,
    onOutput: (output: KernelOutput) => void = () => {},
    metadata: Record<string, unknown> = {},
  ): Promise<Message> {
    const request = { ...this.#newRequest(type, content), metadata };
    const answered = new Promise<Message>((finish) => {
      this.#pending.set(request.header.msg_id, { idle: false, finished: false, onOutput, finish });
    });
    this.#shellBox.put(this.#encode(request));
    return Promise.race([answered, this.#process.died]);
  }

  async #read(socket: Dealer | Subscriber): Promise<void> {
    try {
      for await (const frames of socket) this.#take(decode(frames as Buffer[], this.#process.connection.key));
    } catch (error) {
      if (!socket.closed) throw error;
    }
  }

  #take(message: Message): void {
    const pending = this.#pending.get(String(message.parent.msg_id));
    if (pending === undefined) return;
    const type = message.header.msg_type;
    if (type.endsWith("_reply")) pending.reply = message;
    else if (type === "status") pending.idle ||= message.content.execution_state === "idle";
    else pending.onOutput({ type, content: message.content });
    if (pending.reply === undefined || !pending.idle || pending.finished) return;
    pending.finished = true;
    pending.finish(pending.reply);
  }

  #newRequest(type: string, content: Record<string, unknown>): Message {
    return { identities: [], header: newHeader(type, this.#session), parent: {}, content };
  }

  #encode(message: Message): Buffer[] {
    return encode(message, this.#process.connection.key);
  }
}
