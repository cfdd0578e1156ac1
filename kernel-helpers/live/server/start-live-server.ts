import { randomUUID } from "node:crypto";
import { realpathSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { type Access, newToken, originOf } from "./access.js";
import { EventHub } from "./event-hub.js";
import { handleRequest } from "./handle-request.js";
import { KernelRoom } from "./kernels/kernel-room.js";
import { listenOnLoopback } from "./listen.js";
import { outputRoutes } from "./outputs-api.js";
import { pageRoutes } from "./pages.js";
import { rebuildRoute } from "./rebuild-api.js";
import type { Route } from "./router.js";
import { RunJob } from "./run-job.js";
import { sheetRoutes } from "./sheets-api.js";
import { PageSockets } from "./sockets.js";
import { staticRoutes } from "./static-files.js";
import { tableRoutes } from "./tables-api.js";
import { Tickets } from "./tickets.js";
import { RebuildWatch } from "./watch-rebuild.js";

export interface LiveServerOptions {
  /** The folder that holds rebuild.json. */
  readonly directory: string;
  /** Something the overview should say first, such as that this is the demo. */
  readonly notice?: string;
  /** The port, 0 for any; where not given, the first free one of a few, so that an address outlives a restart. */
  readonly port?: number;
  /** Whether a kernel is started before one is asked for; true where not given. */
  readonly warmKernel?: boolean;
  /** So long the kernel of a sheet is kept that no tab shows and in which nothing runs; an hour where not given [ms]. */
  readonly kernelPatience?: number;
}

const anHour = 3_600_000;

/** A server that shows one rebuild to the browsers of this machine. */
export interface LiveServer {
  /** The address that lets a browser in: it holds the token. */
  readonly address: string;
  readonly access: Access;
  /** An address that lets one browser in once: for others to see, as in a list of processes. */
  addressWithTicket(): string;
  /** Ends server, kernels and runs; resolves when none is left. */
  close(): Promise<void>;
}

/**
 * Serves a rebuild on 127.0.0.1.
 *
 * @throws Error the port is taken, or the folder is not there
 */
export async function startLiveServer(options: LiveServerOptions): Promise<LiveServer> {
  const directory = realpathSync(options.directory);
  const events = new EventHub(randomUUID());
  const server: Server = createServer();
  const port = await listenOnLoopback(server, options.port);
  const access: Access = { token: newToken(), port };
  const tickets = new Tickets();

  const kernels = new KernelRoom({
    directory,
    warm: options.warmKernel ?? true,
    tell: (event) => events.tell(event),
    patience: options.kernelPatience ?? anHour,
  });
  const watch = new RebuildWatch(directory, (event) => events.tell(event));
  const changed = (): void => watch.look();
  const job = new RunJob(directory, (event) => events.tell(event), changed);
  const routes: readonly Route[] = [
    ...pageRoutes(directory),
    ...staticRoutes(),
    rebuildRoute(directory, options.notice ?? ""),
    ...sheetRoutes(directory, changed),
    ...outputRoutes(directory, kernels, changed),
    ...tableRoutes(directory, changed),
    ...job.routes(),
    ...kernels.routes(),
  ];
  const sockets = new PageSockets(access, kernels, events);
  server.on("request", (request: IncomingMessage, response: ServerResponse) => {
    void handleRequest(request, response, { access, tickets, routes, events });
  });
  server.on("upgrade", sockets.upgrade);

  const close = async (): Promise<void> => {
    watch.close();
    events.close();
    job.cancel();
    await kernels.close();
    sockets.close();
    server.closeAllConnections();
    await new Promise((closed) => server.close(closed));
  };
  return {
    address: `${originOf(access)}/?token=${access.token}`,
    access,
    addressWithTicket: () => `${originOf(access)}/?ticket=${tickets.issue()}`,
    close,
  };
}
