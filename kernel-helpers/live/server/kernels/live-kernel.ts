import { randomUUID } from "node:crypto";
import type { WebSocket } from "ws";
import { type Message, newHeader } from "../../../notebook/wire/message.js";
import { forgetReads } from "../../../record/index.js";
import type { KernelEvent } from "../live-event.js";
import { ExecutionLog } from "./execution-log.js";
import type { AskingChannel, KernelLink } from "./kernel-link.js";
import type { SpareKernels } from "./spare-kernels.js";
import { type ChannelMessage, decodeFrame, encodeFrame } from "./websocket-frame.js";

/** A kernel as Jupyter's REST interface shows it. */
export interface KernelModel {
  readonly id: string;
  readonly name: string;
  readonly last_activity: string;
  readonly execution_state: string;
  readonly connections: number;
}

/** A page that does not read, such as one on a tablet asleep, may have so much waiting for it [bytes]. */
const mostWaiting = 256 * 1024 * 1024;

interface Page {
  readonly socket: WebSocket;
  /** Replies go to the page that asked; it is known by the session in its messages. */
  session: string;
}

export interface LiveKernelOptions {
  readonly name: string;
  readonly directory: string;
  readonly sheet: string;
  readonly spares: SpareKernels;
  readonly tell: (event: KernelEvent) => void;
  /** So long a kernel waits for a page when none is there [ms]. */
  readonly patience: number;
  /** No page has come for so long, and nothing is being run: nobody needs the kernel. */
  readonly onForsaken: () => void;
}

/** The kernel of one sheet, through deaths and restarts, and the pages that talk with it. */
export class LiveKernel {
  readonly id: string = randomUUID();
  readonly log: ExecutionLog = new ExecutionLog();
  readonly #options: LiveKernelOptions;
  readonly #pages = new Set<Page>();
  #link: KernelLink | undefined;
  #starting: Promise<void>;
  #state = "starting";
  #lastActivity = new Date().toISOString();
  #ended = false;
  #patience: NodeJS.Timeout | undefined;

  constructor(options: LiveKernelOptions) {
    this.#options = options;
    this.#waitForPage();
    this.#starting = this.#begin("started");
  }

  get sheet(): string {
    return this.#options.sheet;
  }

  get pid(): number | undefined {
    return this.#link?.pid;
  }

  get isDead(): boolean {
    return this.#state === "dead";
  }

  get model(): KernelModel {
    return {
      id: this.id,
      name: this.#options.name,
      last_activity: this.#lastActivity,
      execution_state: this.#state,
      connections: this.#pages.size,
    };
  }

  /** Lets a page talk with the kernel; what it says before the kernel answers waits. */
  addPage(socket: WebSocket, session: string): void {
    const page: Page = { socket, session };
    this.#pages.add(page);
    clearTimeout(this.#patience);
    socket.once("close", () => {
      this.#pages.delete(page);
      if (this.#pages.size === 0) this.#waitForPage();
    });
    socket.on("message", (data, isBinary) => {
      if (!isBinary) return socket.close(1003, "frames must be binary");
      let message: ChannelMessage;
      try {
        message = decodeFrame(data as Buffer);
      } catch {
        return socket.close(1007, "the frame is no kernel message");
      }
      page.session = message.header.session;
      void this.#starting.then(() => this.#forward(message));
    });
    if (this.isDead) this.#show(page.socket, "dead");
  }

  interrupt(): void {
    this.#link?.interrupt();
  }

  /** Ends the kernel and starts another in its place, or revives a dead one. */
  restart(): Promise<void> {
    const before = this.#starting;
    this.#starting = before.then(() => this.#begin("restarted"));
    return this.#starting;
  }

  async close(): Promise<void> {
    this.#ended = true;
    clearTimeout(this.#patience);
    await this.#starting;
    const link = this.#link;
    this.#link = undefined;
    await link?.close();
    for (const { socket } of this.#pages) socket.close(1001, "the kernel has ended");
    this.#tell("ended");
  }

  /** What is being run is waited for, however long it takes. */
  #waitForPage(): void {
    clearTimeout(this.#patience);
    if (this.#ended) return;
    const { patience, onForsaken } = this.#options;
    this.#patience = setTimeout(() => {
      if (this.#pages.size > 0) return;
      if (this.#state === "idle" || this.#state === "dead") onForsaken();
      else this.#waitForPage();
    }, patience).unref();
  }

  async #begin(what: "started" | "restarted"): Promise<void> {
    if (this.#ended) return;
    const old = this.#link;
    this.#link = undefined;
    this.#setState("starting");
    this.log.clear();
    const { directory, sheet, spares } = this.#options;
    forgetReads(directory, sheet);
    const closing = old?.close();
    try {
      const link = await spares.take();
      await link.request("journalbox_reset_request", { directory, sheet });
      await closing;
      link.onMessage = (channel, message) => this.#take(channel, message);
      this.#link = link;
      void link.ended.then((reason) => this.#died(link, reason));
      this.#setState("idle");
      this.#tell(what);
    } catch (error) {
      await closing;
      this.#die(error instanceof Error ? error.message : String(error));
    }
  }

  #forward(message: ChannelMessage): void {
    const { channel, header, parent, metadata, content } = message;
    if (channel !== "shell" && channel !== "control") return; // nobody asks on stdin
    if (this.#link === undefined) return;
    const passed: Message = { identities: [], header, parent, metadata, content };
    this.log.asked(passed);
    this.#link.send(channel, passed);
  }

  #take(channel: AskingChannel | "iopub", message: Message): void {
    this.#lastActivity = new Date().toISOString();
    const { header, parent, metadata = {}, content } = message;
    if (channel === "shell") this.log.replied(message);
    if (channel === "iopub" && header.msg_type === "status") this.#state = String(content.execution_state);
    const frame = encodeFrame({ channel, header, parent, metadata, content });
    for (const { socket, session } of this.#pages)
      if (channel === "iopub" || session === parent.session) sendOrDrop(socket, frame);
  }

  #died(link: KernelLink, reason: Error): void {
    void link.close();
    if (this.#link !== link) return; // ended on purpose
    this.#link = undefined;
    this.#die(reason.message);
  }

  #die(why: string): void {
    this.#setState("dead");
    for (const { socket } of this.#pages) this.#show(socket, "dead");
    this.#tell("dead", why);
  }

  #setState(state: string): void {
    this.#state = state;
    this.#lastActivity = new Date().toISOString();
  }

  /** A status the kernel itself cannot tell any more. */
  #show(socket: WebSocket, state: string): void {
    const header = newHeader("status", this.id);
    const content = { execution_state: state };
    socket.send(encodeFrame({ channel: "iopub", header, parent: {}, metadata: {}, content }));
  }

  #tell(state: KernelEvent["state"], why?: string): void {
    const { tell, sheet } = this.#options;
    tell({ type: "kernel", id: this.id, sheet, state, ...(why !== undefined && { why }) });
  }
}

/** Sends to a page that reads; one that does not is let go, and may come again. */
function sendOrDrop(socket: WebSocket, frame: Buffer): void {
  if (socket.bufferedAmount > mostWaiting) socket.terminate();
  else socket.send(frame);
}
