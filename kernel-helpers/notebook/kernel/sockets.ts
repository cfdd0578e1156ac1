import type { Publisher, Reply, Router } from "zeromq";
import { addressOf, type Channel, type Connection } from "../wire/connection.js";

/** The sockets of a kernel, but for the control channel: that has a thread of its own. */
export interface Sockets {
  readonly shell: Router;
  readonly stdin: Router;
  readonly iopub: Publisher;
  readonly hb: Reply;
}

/** Exit status of a kernel whose ports were taken by somebody else meanwhile: its starter may try others. */
export const portTaken = 98;

/** Tells the starter of a kernel that did not start whether it should try again. */
export function exitStatusOf(error: NodeJS.ErrnoException): number {
  return error.code === "EADDRINUSE" ? portTaken : 1;
}

/** A last reply may take this long to leave after its socket is closed [ms]. */
export const lastWords = 1000;

/**
 * Opens all sockets, bound to the addresses of the connection. Nothing may read before all are bound: a request
 * that comes early would otherwise be answered on a socket that is not there yet.
 */
export async function bindSockets(connection: Connection): Promise<Sockets> {
  const zeromq = await import("zeromq");
  const options = { linger: lastWords };
  const sockets: Sockets = {
    shell: new zeromq.Router(options),
    stdin: new zeromq.Router(options),
    // Without a limit: a front end that is slow to read must not lose output.
    iopub: new zeromq.Publisher({ ...options, sendHighWaterMark: 0 }),
    hb: new zeromq.Reply(options),
  };
  const channels = Object.keys(sockets) as (keyof Sockets & Channel)[];
  await Promise.all(channels.map((channel) => sockets[channel].bind(addressOf(connection, channel))));
  return sockets;
}

export function closeSockets(sockets: Sockets): void {
  for (const socket of Object.values(sockets)) socket.close();
}
