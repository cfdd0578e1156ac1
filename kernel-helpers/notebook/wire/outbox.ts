import type { MessageLike } from "zeromq";

/** A socket that can send; several frames make one message. */
interface Sending {
  send(frames: MessageLike[]): Promise<void>;
  /** It would take a message at once; undefined where the socket cannot tell. */
  readonly writable?: boolean;
}

/** Sends messages in the order given, one at a time: a socket refuses a second while the first is under way. */
export class Outbox {
  readonly #socket: Sending;
  #last: Promise<void> = Promise.resolve();
  #inLine = 0;

  constructor(socket: Sending) {
    this.#socket = socket;
  }

  /**
   * Puts a message in line; sends it at once where none is before it and the socket takes it, so that what a cell prints
   * is seen while it works, though it never waits. A socket closed meanwhile swallows it: nobody is left to be told.
   */
  put(frames: Buffer[]): void {
    if (this.#inLine === 0 && this.#socket.writable === true) {
      try {
        this.#follow(this.#socket.send(frames));
        return;
      } catch {
        // After some hundred messages without a pause it says that it is busy; and it may be closed.
      }
    }
    this.#inLine += 1;
    this.#follow(
      this.#last
        .then(() => this.#socket.send(frames))
        .finally(() => {
          this.#inLine -= 1;
        }),
    );
  }

  /** Resolves when everything in line has been handed to the socket. */
  async emptied(): Promise<void> {
    await this.#last;
  }

  #follow(sent: Promise<void>): void {
    const before = this.#last;
    this.#last = sent.then(
      () => before,
      () => before,
    );
  }
}
