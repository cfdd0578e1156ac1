import { newToken } from "./access.js";

/** A browser that is only now started may take its time [ms]. */
const life = 300_000;

/**
 * Tickets that let a browser in once, instead of the token. The address a browser is started with can be read by
 * other users of the machine in the list of processes; a ticket is worth nothing once it has been used.
 */
export class Tickets {
  readonly #now: () => number;
  /** Each with the time at which it ends. */
  readonly #open = new Map<string, number>();

  /** `now` is the clock [ms]. */
  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  issue(): string {
    const ticket = newToken();
    this.#open.set(ticket, this.#now() + life);
    return ticket;
  }

  /** Whether the ticket is good; it is not any more afterwards. */
  use(ticket: string): boolean {
    const end = this.#open.get(ticket);
    this.#open.delete(ticket);
    return end !== undefined && this.#now() <= end;
  }
}
