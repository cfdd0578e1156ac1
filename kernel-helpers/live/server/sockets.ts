import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { type Access, originOf, showsToken, strangerRefusal } from "./access.js";
import type { EventHub } from "./event-hub.js";
import type { KernelRoom } from "./kernels/kernel-room.js";
import { kernelSubprotocol } from "./kernels/websocket-frame.js";
import { stepsOf } from "./router.js";

/** A message of a page may be so large [bytes]: code of a cell, not data. */
const largestMessage = 16 * 1024 * 1024;

/**
 * The WebSockets of the page: `/api/kernels/<id>/channels` to talk with a kernel, `/api/events` to be told events,
 * and `/api/events/subscribe`, to which JupyterLab's components listen and on which nothing is ever said.
 */
export class PageSockets {
  readonly #server = new WebSocketServer({
    noServer: true,
    maxPayload: largestMessage,
    handleProtocols: (offered) => (offered.has(kernelSubprotocol) ? kernelSubprotocol : false),
  });
  readonly #access: Access;
  readonly #kernels: KernelRoom;
  readonly #events: EventHub;

  constructor(access: Access, kernels: KernelRoom, events: EventHub) {
    this.#access = access;
    this.#kernels = kernels;
    this.#events = events;
  }

  /** Takes over a connection that asks to be a WebSocket, or turns it away. */
  readonly upgrade = (request: IncomingMessage, stream: Duplex, head: Buffer): void => {
    stream.on("error", () => stream.destroy());
    const taken = this.#taker(request);
    if (typeof taken === "string") {
      stream.end(`HTTP/1.1 ${taken}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
      return;
    }
    this.#server.handleUpgrade(request, stream, head, (socket) => {
      socket.on("error", () => socket.terminate());
      taken(socket);
    });
  };

  close(): void {
    for (const socket of this.#server.clients) socket.terminate();
    this.#server.close();
  }

  /** Who takes the connection, or the status with which it is turned away. */
  #taker(request: IncomingMessage): ((socket: WebSocket) => void) | string {
    const access = this.#access;
    // A WebSocket is not kept to its origin by the browser, so it must say its origin here.
    if (strangerRefusal(request, access) !== undefined || request.headers.origin !== originOf(access))
      return "403 Forbidden";
    if (!showsToken(request, access)) return "403 Forbidden";
    const path = this.#path(request);
    if (path === "api/events") return (socket) => this.#events.addSocket(socket);
    if (path === "api/events/subscribe") return () => {};
    const kernel = this.#kernels.find(/^api\/kernels\/([^/]+)\/channels$/.exec(path)?.[1] ?? "");
    if (kernel === undefined) return "404 Not Found";
    const offered = (request.headers["sec-websocket-protocol"] ?? "").split(",").map((each) => each.trim());
    if (!offered.includes(kernelSubprotocol)) return "400 Bad Request";
    const session = new URLSearchParams(request.url?.split("?")[1]).get("session_id") ?? "";
    return (socket) => kernel.addPage(socket, session);
  }

  #path(request: IncomingMessage): string {
    try {
      return stepsOf(request.url ?? "/").join("/");
    } catch {
      return "";
    }
  }
}
