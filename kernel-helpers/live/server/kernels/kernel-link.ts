import { setTimeout as pause } from "node:timers/promises";
import type { Dealer, Subscriber } from "zeromq";
import { KernelDiedError } from "../../../notebook/client/client-errors.js";
import { KernelProcess, kernelProgram } from "../../../notebook/client/kernel-process.js";
import {
  dropQuickStart,
  quickStartOption,
  readyQuickStart,
} from "../../../notebook/kernel/quick-start/quick-start-file.js";
import { portTaken } from "../../../notebook/kernel/sockets.js";
import { addressOf } from "../../../notebook/wire/connection.js";
import { decode, encode, type Message, newHeader } from "../../../notebook/wire/message.js";
import { Outbox } from "../../../notebook/wire/outbox.js";

/** The channels a page may ask on. */
export type AskingChannel = "shell" | "control";

/** Called with every message of the kernel that is not the answer to the link's own requests. */
export type OnMessage = (channel: AskingChannel | "iopub", message: Message) => void;

const mostTries = 3;
/** So long a kernel may take to answer for the first time [ms]. */
const startTimeout = 60_000;
/** A kernel told to shut down may take this long [ms]. */
const restAfterShutdown = 2000;

interface Sockets {
  readonly shell: Dealer;
  readonly control: Dealer;
  readonly iopub: Subscriber;
}

/** One kernel process and the raw talk with it, for a page that speaks the protocol itself. */
export class KernelLink {
  /** Resolves with the reason when the process has ended. */
  readonly ended: Promise<Error>;
  onMessage: OnMessage = () => {};
  readonly #process: KernelProcess;
  readonly #sockets: Sockets;
  readonly #shellBox: Outbox;
  readonly #controlBox: Outbox;
  /** Names the link's own requests, whose answers are nobody else's business. */
  readonly #session: string = newHeader("", "").msg_id;
  readonly #waiting = new Map<string, (reply: Message) => void>();
  #heardIopub = false;
  #closed: Promise<void> | undefined;

  /**
   * Starts a kernel in a folder and waits until it answers and its output can be heard.
   *
   * @throws KernelDiedError the kernel ended instead
   * @throws Error the kernel did not answer in time
   */
  static async start(directory: string): Promise<KernelLink> {
    let quickStart = readyQuickStart();
    for (let tries = 1; ; tries += 1) {
      const { Dealer, Subscriber } = await import("zeromq");
      // The number of the process tells whose reads are whose: it must not look for a prepared start by itself, and
      // begin as another process.
      const environment = { ...process.env, JOURNALBOX_QUICK_START: "off" };
      const prepared = quickStart === undefined ? [] : quickStartOption(quickStart);
      const started = await KernelProcess.start(directory, environment, [...prepared, kernelProgram()]);
      const link = new KernelLink(started, {
        shell: new Dealer({ linger: 0 }),
        control: new Dealer({ linger: 0 }),
        iopub: new Subscriber({ linger: 0, receiveHighWaterMark: 0 }),
      });
      try {
        await link.#greet();
        return link;
      } catch (error) {
        await link.close();
        if (!(error instanceof KernelDiedError) || tries === mostTries) throw error;
        // Its ports were free a moment ago, and taken when it came to use them.
        if (error.exitCode === portTaken) continue;
        if (quickStart === undefined) throw error;
        dropQuickStart(quickStart);
        quickStart = undefined;
      }
    }
  }

  private constructor(started: KernelProcess, sockets: Sockets) {
    this.#process = started;
    this.#sockets = sockets;
    this.#shellBox = new Outbox(sockets.shell);
    this.#controlBox = new Outbox(sockets.control);
    this.ended = started.died.catch((error: unknown) =>
      error instanceof Error ? error : new Error(String(error)),
    );
    const { connection } = started;
    sockets.iopub.subscribe();
    for (const channel of ["shell", "control", "iopub"] as const) {
      sockets[channel].connect(addressOf(connection, channel));
      void this.#read(channel);
    }
  }

  get pid(): number | undefined {
    return this.#process.pid;
  }

  /** Passes a message of the page on to the kernel. */
  send(channel: AskingChannel, message: Message): void {
    const box = channel === "shell" ? this.#shellBox : this.#controlBox;
    box.put(encode(message, this.#process.connection.key));
  }

  /** Asks something of the link's own; resolves with the content of the reply, rejects where the kernel ends. */
  async request(type: string, content: Record<string, unknown>): Promise<Message["content"]> {
    const reply = await Promise.race([this.#ask("shell", type, content), this.#process.died]);
    return reply.content;
  }

  /** Interrupts the running cell. */
  interrupt(): void {
    void this.#ask("control", "interrupt_request", {});
  }

  /** Ends the kernel, by force where it does not listen. May be called twice. */
  close(): Promise<void> {
    this.#closed ??= this.#shutDown();
    return this.#closed;
  }

  async #shutDown(): Promise<void> {
    void this.#ask("control", "shutdown_request", { restart: false });
    await this.#process.end(restAfterShutdown);
    for (const socket of Object.values(this.#sockets)) socket.close();
    this.#process.forgetFile();
  }

  /** Output published before the subscription has reached the kernel is lost: ask until the answer comes both ways. */
  async #greet(): Promise<void> {
    const end = Date.now() + startTimeout;
    let answered = false;
    while (!answered || !this.#heardIopub) {
      if (Date.now() > end) throw new Error(`the kernel did not answer within ${startTimeout / 1000} s`);
      const answer = this.#ask("shell", "kernel_info_request", {}).then(() => {
        answered = true;
      });
      await Promise.race([answer.then(() => pause(5)), pause(50), this.#process.died]);
    }
    this.#process.forgetFile();
  }

  #ask(channel: AskingChannel, type: string, content: Record<string, unknown>): Promise<Message> {
    const header = newHeader(type, this.#session);
    return new Promise((resolve) => {
      this.#waiting.set(header.msg_id, resolve);
      this.send(channel, { identities: [], header, parent: {}, content });
    });
  }

  async #read(channel: keyof Sockets): Promise<void> {
    const socket = this.#sockets[channel];
    try {
      for await (const frames of socket) this.#take(channel, frames as Buffer[]);
    } catch {
      if (socket.closed) return;
      // A kernel that cannot be heard any more is as good as dead.
      this.#process.kill();
    }
  }

  #take(channel: keyof Sockets, frames: Buffer[]): void {
    let message: Message;
    try {
      message = decode(frames, this.#process.connection.key);
    } catch {
      return; // not from this kernel: unsigned, or no message at all
    }
    if (channel === "iopub") this.#heardIopub = true;
    if (message.parent.session !== this.#session) {
      this.onMessage(channel, message);
      return;
    }
    if (channel === "iopub") return;
    const id = String(message.parent.msg_id);
    this.#waiting.get(id)?.(message);
    this.#waiting.delete(id);
  }
}
