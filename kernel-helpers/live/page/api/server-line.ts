import { Signal } from "@lumino/signaling";
import type { LiveEvent } from "../../server/live-event.js";
import { Refused, request } from "./request.js";

/**
 * How the server stands: it talks to us, it does not answer, or it answers and does not know us any more (it was
 * started anew with another key).
 */
export type Line = "open" | "away" | "locked";

/** How long to wait before the next try [ms]. */
const pause = 700;

/**
 * The line on which the server tells what happens. It comes back by itself: while the server is away it is tried
 * again about every second, and `changed` says when it is there.
 */
export class ServerLine {
  /** What the server tells. */
  readonly told: Signal<this, LiveEvent> = new Signal(this);
  readonly changed: Signal<this, Line> = new Signal(this);
  /** Another run of the server than the one before answers: kernels of the old one are gone. */
  readonly renewed: Signal<this, void> = new Signal(this);
  #line: Line = "open";
  #server: string | undefined;

  get line(): Line {
    return this.#line;
  }

  open(): void {
    const socket = new WebSocket(`${location.origin.replace(/^http/, "ws")}/api/events`);
    socket.addEventListener("message", ({ data }) => this.#take(JSON.parse(String(data)) as LiveEvent));
    socket.addEventListener("close", () => void this.#tryAgain(), { once: true });
  }

  #take(event: LiveEvent): void {
    if (event.type === "hello") {
      const renewed = this.#server !== undefined && this.#server !== event.server;
      this.#server = event.server;
      this.#set("open");
      if (renewed) this.renewed.emit();
    }
    this.told.emit(event);
  }

  async #tryAgain(): Promise<void> {
    for (;;) {
      try {
        await request("GET", "/api/rebuild");
        this.open();
        return;
      } catch (error) {
        const unknown = error instanceof Refused && (error.status === 401 || error.status === 403);
        this.#set(unknown ? "locked" : "away");
      }
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  }

  #set(line: Line): void {
    if (line === this.#line) return;
    this.#line = line;
    this.changed.emit(line);
  }
}
