import type { ServerResponse } from "node:http";
import type { WebSocket } from "ws";
import type { LiveEvent } from "./live-event.js";

/** A line of nothing, so often that no one in between takes a connection for dead [ms]. */
const heartbeat = 20_000;

/** Tells events to all pages that listen. */
export class EventHub {
  readonly #hello: LiveEvent;
  readonly #streams = new Set<ServerResponse>();
  readonly #sockets = new Set<WebSocket>();
  readonly #beat: NodeJS.Timeout;

  /** `server` is the name of this run of the server, new each time. */
  constructor(server: string) {
    this.#hello = { type: "hello", server };
    this.#beat = setInterval(() => this.#keepAlive(), heartbeat).unref();
  }

  tell(event: LiveEvent): void {
    for (const stream of this.#streams) stream.write(asServerSent(event));
    for (const socket of this.#sockets) socket.send(JSON.stringify(event));
  }

  /** Takes over an answer as a stream of events, until the page goes. */
  addStream(response: ServerResponse, headers: Readonly<Record<string, string>>): void {
    response.writeHead(200, { ...headers, "Content-Type": "text/event-stream", "Cache-Control": "no-store" });
    response.write(asServerSent(this.#hello));
    this.#streams.add(response);
    response.once("close", () => this.#streams.delete(response));
  }

  addSocket(socket: WebSocket): void {
    socket.send(JSON.stringify(this.#hello));
    this.#sockets.add(socket);
    socket.once("close", () => this.#sockets.delete(socket));
  }

  close(): void {
    clearInterval(this.#beat);
    for (const stream of this.#streams) stream.end();
    for (const socket of this.#sockets) socket.terminate();
  }

  #keepAlive(): void {
    for (const stream of this.#streams) stream.write(":\n\n");
    for (const socket of this.#sockets) socket.ping();
  }
}

function asServerSent(event: LiveEvent): string {
  return `data: ${JSON.stringify(event)}\n\n`;
}
