import { setImmediate as nextTurn } from "node:timers/promises";
import { parentPort, workerData } from "node:worker_threads";
import { addressOf } from "../wire/connection.js";
import { decode } from "../wire/message.js";
import { Outbox } from "../wire/outbox.js";
import type { ControlData, FromControl, ToControl } from "./control.js";
import { PackageWatch } from "./package-watch.js";
import { watchParent } from "./parent-watch.js";
import { lastWords } from "./sockets.js";
import { StopFlag } from "./stop-flag.js";

// The program of the thread that reads the control channel, started by control.ts.

/** A loop that looks at the flag has stopped by then; other code is stopped by a signal [ms]. */
const patience = 100;

const { connection, memory, closed }: ControlData = workerData;
const flag = new StopFlag(memory);
const port = parentPort!;
const tell = (message: FromControl): void => port.postMessage(message);

// A kernel whose cell loops for ever cannot see that its front end is gone: this thread can, and ends it.
watchParent(process.env, () => process.kill(process.pid, "SIGKILL"));

async function serve(): Promise<void> {
  const { Router } = await import("zeromq");
  const socket = new Router({ linger: lastWords });
  const outbox = new Outbox(socket);
  const close = async (): Promise<void> => {
    await outbox.emptied();
    socket.close();
    await nextTurn(); // in which zeromq lets go of what waited for a message
    port.close();
    Atomics.store(closed, 0, 1);
    Atomics.notify(closed, 0);
  };
  await socket.bind(addressOf(connection, "control"));
  const watch = watchPackage();
  const lookForUpdate = (): void => {
    const installed = watch?.look(Date.now());
    if (installed !== undefined) tell({ type: "updated", installed });
  };
  port.on("message", (message: ToControl) => {
    if (message.type === "send") outbox.put(message.frames.map((frame) => Buffer.from(frame)));
    else if (message.type === "close") void close();
    else lookForUpdate();
  });
  for await (const frames of socket) {
    if (isInterrupt(frames)) interrupt();
    tell({ type: "request", frames });
  }
}

/** Not while the files are being replaced: then nobody is told of an update. */
function watchPackage(): PackageWatch | undefined {
  try {
    return new PackageWatch();
  } catch {
    return undefined;
  }
}

function isInterrupt(frames: Buffer[]): boolean {
  try {
    return decode(frames, connection.key).header.msg_type === "interrupt_request";
  } catch {
    return false; // the kernel says what is wrong with it
  }
}

/** Asks the cell to stop; where its thread does not come free, breaks into code that has not awaited yet. */
function interrupt(): void {
  flag.ask();
  if (process.platform === "win32") return; // there a signal to oneself ends the process
  setTimeout(() => {
    if (flag.isNoticed) return;
    flag.signal();
    process.kill(process.pid, "SIGINT");
  }, patience);
}

serve().catch((error: NodeJS.ErrnoException) => {
  tell({ type: "failed", code: error.code, message: String(error) });
  setTimeout(() => process.kill(process.pid, "SIGKILL"), lastWords); // a kernel too busy to end by itself
});
