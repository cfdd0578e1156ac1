import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type { Connection } from "../wire/connection.js";
import type { StopFlag } from "./stop-flag.js";

/** What the control thread tells the kernel. */
export type FromControl =
  | { readonly type: "request"; readonly frames: readonly Uint8Array[] }
  | { readonly type: "updated"; readonly installed: string }
  | { readonly type: "failed"; readonly code: string | undefined; readonly message: string };

/** What the kernel tells the control thread. */
export type ToControl =
  | { readonly type: "send"; readonly frames: readonly Uint8Array[] }
  | { readonly type: "look for update" }
  | { readonly type: "close" };

/** What the control thread is given. */
export interface ControlData {
  readonly connection: Connection;
  /** That of the stop flag. */
  readonly memory: SharedArrayBuffer;
  readonly closed: Int32Array;
}

/** Closing the channel takes a millisecond or two; a thread that hangs is not waited for longer [ms]. */
const mostToClose = 500;

/** What the control thread's news are handed to. */
export interface ControlListener {
  /** A request came on the control channel. */
  readonly take: (frames: Buffer[]) => void;
  /** This installation's files have changed; `installed` is the version there now. */
  readonly updated: (installed: string) => void;
  /** The channel could not be opened. */
  readonly failed: (error: NodeJS.ErrnoException) => void;
}

/**
 * The control channel, read by a thread of its own: an interrupt is so heard while a cell keeps the kernel busy,
 * on every platform. Whatever comes is handed to the kernel, which answers when it is free.
 */
export class Control {
  readonly #thread: Worker;
  /** One number in shared memory: 1 once the thread has closed its socket. */
  readonly #closed: Int32Array = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));

  constructor(connection: Connection, flag: StopFlag, listener: ControlListener) {
    this.#thread = new Worker(join(__dirname, "control-thread.js"), {
      workerData: { connection, memory: flag.memory, closed: this.#closed } satisfies ControlData,
      execArgv: [],
    });
    this.#thread.on("error", listener.failed);
    this.#thread.on("message", (message: FromControl) => tell(message, listener));
    process.on("exit", () => this.#close());
  }

  /** Sends one message, as a socket does. */
  async send(frames: readonly unknown[]): Promise<void> {
    this.#post({ type: "send", frames: frames as readonly Uint8Array[] });
  }

  /** Has the thread look whether this installation was updated meanwhile. */
  lookForUpdate(): void {
    this.#post({ type: "look for update" });
  }

  /**
   * Has the thread send what is left and close its socket, and waits for it: Node ends its threads with the
   * process, whatever they do, and zeromq breaks down where it is ended in the middle of a wait.
   */
  #close(): void {
    this.#post({ type: "close" });
    Atomics.wait(this.#closed, 0, 0, mostToClose);
  }

  #post(message: ToControl): void {
    this.#thread.postMessage(message);
  }
}

function tell(message: FromControl, listener: ControlListener): void {
  if (message.type === "request") listener.take(message.frames.map((frame) => Buffer.from(frame)));
  else if (message.type === "updated") listener.updated(message.installed);
  else listener.failed(Object.assign(new Error(message.message), { code: message.code }));
}
