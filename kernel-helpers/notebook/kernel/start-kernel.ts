import type { Reply, Router } from "zeromq";
import { setSession } from "../../record/session.js";
import type { Connection } from "../wire/connection.js";
import { decode } from "../wire/message.js";
import { FrontEnd, type RequestChannel } from "./front-end.js";
import { frontEndSession } from "./front-end-session.js";
import { Kernel } from "./kernel.js";
import { loadTslab } from "./load-tslab.js";
import { watchParent } from "./parent-watch.js";
import { bindSockets, closeSockets } from "./sockets.js";

/** Starts a kernel in this process and folder, and keeps it until it is told to shut down. */
export async function startKernel(connection: Connection): Promise<void> {
  watchParent(process.env);
  setSession(frontEndSession(process.env, process.cwd()));
  const sockets = await bindSockets(connection);
  const frontEnd = new FrontEnd(connection, sockets);
  const kernel = new Kernel(loadTslab(), frontEnd, () => void end());

  const end = async (): Promise<void> => {
    await frontEnd.emptied();
    kernel.close();
    closeSockets(sockets);
    process.exit(0);
  };

  const read = async (channel: RequestChannel, socket: Router): Promise<void> => {
    for await (const frames of socket) {
      try {
        kernel.receive(channel, decode(frames, connection.key));
      } catch (error) {
        process.stderr.write(`a message was dropped: ${error}\n`);
      }
    }
  };
  void read("shell", sockets.shell);
  void read("control", sockets.control);
  void echo(sockets.hb);
}

/** The heartbeat: whatever comes goes back. */
async function echo(socket: Reply): Promise<void> {
  for await (const frames of socket) await socket.send(frames);
}
