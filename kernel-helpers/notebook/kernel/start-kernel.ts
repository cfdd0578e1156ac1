import type { Reply, Router } from "zeromq";
import { setSession } from "../../record/session.js";
import type { Connection } from "../wire/connection.js";
import { decode } from "../wire/message.js";
import { Control } from "./control.js";
import { FrontEnd, type RequestChannel } from "./front-end.js";
import { frontEndSession } from "./front-end-session.js";
import { Kernel } from "./kernel.js";
import { loadTslab } from "./load-tslab.js";
import { tellLauncher } from "./quick-start/launch.js";
import type { Unread } from "./quick-types.js";
import { bindSockets, closeSockets, exitStatusOf } from "./sockets.js";
import { StopFlag } from "./stop-flag.js";

/** Starts a kernel in this process and folder, and keeps it until it is told to shut down. */
export async function startKernel(connection: Connection, unread?: Unread): Promise<void> {
  setSession(frontEndSession(process.env, process.cwd()));
  const stopFlag = new StopFlag();
  stopFlag.showToLoops();
  const sockets = await bindSockets(connection);
  // Its thread starts while this one loads the rest, which then is there before any message of it.
  const control = new Control(connection, stopFlag, {
    take: (frames) => receive("control", frames),
    updated: (installed) => kernel.noteUpdate(installed),
    failed: fail,
  });
  const frontEnd = new FrontEnd(connection, sockets, control);
  const kernel = new Kernel(loadTslab(unread), frontEnd, stopFlag, {
    cellEnded: () => control.lookForUpdate(),
    shutDown: () => void end(),
  });

  const end = async (): Promise<void> => {
    await frontEnd.emptied();
    kernel.close();
    closeSockets(sockets);
    process.exit(0);
  };

  const receive = (channel: RequestChannel, frames: readonly Buffer[]): void => {
    try {
      kernel.receive(channel, decode(frames, connection.key));
    } catch (error) {
      process.stderr.write(`a message was dropped: ${error}\n`);
    }
  };
  void read(sockets.shell, (frames) => receive("shell", frames));
  void echo(sockets.hb);
  tellLauncher();
}

async function read(socket: Router, take: (frames: Buffer[]) => void): Promise<void> {
  for await (const frames of socket) take(frames);
}

/** The heartbeat: whatever comes goes back. */
async function echo(socket: Reply): Promise<void> {
  for await (const frames of socket) await socket.send(frames);
}

/** Ends a kernel that cannot start. */
export function fail(error: NodeJS.ErrnoException): never {
  process.stderr.write(`the kernel did not start: ${error.stack}\n`);
  process.exit(exitStatusOf(error));
}
