import { setImmediate as nextTurn } from "node:timers/promises";
import type { Message } from "../wire/message.js";

/** Handles one request; true asks that the requests already waiting be aborted. */
export type Handler = (request: Message) => Promise<{ readonly abortWaiting: boolean; reply(): void }>;

/**
 * Requests in the order received, one at a time.
 *
 * When a cell fails, the requests received before its reply was sent are aborted, each with a reply that says
 * so; what comes after the reply is run. A client that waits for replies is so never skipped over.
 */
export class RequestQueue {
  readonly #handle: Handler;
  readonly #abort: (request: Message) => void;
  readonly #waiting: Message[] = [];
  #running: Message | undefined;
  #working = false;

  constructor(handle: Handler, abort: (request: Message) => void) {
    this.#handle = handle;
    this.#abort = abort;
  }

  /** Whether nothing runs, and so nothing waits. */
  get isFree(): boolean {
    return !this.#working;
  }

  /** What was received and is not answered yet, the one that runs first. */
  get unanswered(): readonly Message[] {
    return this.#running === undefined ? this.#waiting : [this.#running, ...this.#waiting];
  }

  add(request: Message): void {
    this.#waiting.push(request);
    if (!this.#working) void this.#work();
  }

  async #work(): Promise<void> {
    this.#working = true;
    for (let request = this.#waiting.shift(); request !== undefined; request = this.#waiting.shift()) {
      this.#running = request;
      const { abortWaiting, reply } = await this.#handle(request);
      const aborted = abortWaiting ? await this.#takeWaiting() : [];
      reply();
      this.#running = undefined;
      for (const late of aborted) this.#abort(late);
    }
    this.#working = false;
  }

  /** The cells in line, including those still being read: a cell that never waited kept the kernel from reading. */
  async #takeWaiting(): Promise<Message[]> {
    for (let before = -1; before !== this.#waiting.length; ) {
      before = this.#waiting.length;
      await nextTurn(); // in which the sockets are read
    }
    const cells = this.#waiting.filter((request) => request.header.msg_type === "execute_request");
    const others = this.#waiting.filter((request) => request.header.msg_type !== "execute_request");
    this.#waiting.splice(0, this.#waiting.length, ...others);
    return cells;
  }
}
