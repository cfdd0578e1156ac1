import type { Server } from "node:http";
import type { AddressInfo } from "node:net";

/** Tried in this order, so that a page left open finds the next run of the server at the same address. */
const usualPorts = Array.from({ length: 20 }, (_, i) => 8470 + i);

/**
 * Lets a server listen on 127.0.0.1 and nowhere else: on the port given, else on the first of a few usual ones that
 * is free, else on any.
 *
 * @returns the port
 * @throws Error the port given is taken
 */
export async function listenOnLoopback(server: Server, port?: number): Promise<number> {
  for (const wanted of port === undefined ? [...usualPorts, 0] : [port]) {
    try {
      return await listen(server, wanted);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== "EADDRINUSE" && code !== "EACCES") throw error;
      if (port !== undefined)
        throw new Error(`port ${port} is taken by another program; give another, or none`, { cause: error });
    }
  }
  throw new Error("no port of 127.0.0.1 is free");
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}
