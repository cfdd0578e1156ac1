import type { MessageLike } from "zeromq";

/** A socket that can send; several frames make one message. */
interface Sending {
  send(frames: MessageLike[]): Promise<void>;
}

/** Sends messages in the order given, one at a time: a socket refuses a second while the first is under way. */
export class Outbox {
  readonly #socket: Sending;
  #last: Promise<void> = Promise.resolve();

  constructor(socket: Sending) {
    this.#socket = socket;
  }

  /** Puts a message in line. A socket closed meanwhile swallows it: nobody is left to be told. */
  put(frames: Buffer[]): void {
    this.#last = this.#last.then(() => this.#socket.send(frames)).catch(() => undefined);
  }

  /** Resolves when everything in line has been handed to the socket. */
  async emptied(): Promise<void> {
    await this.#last;
  }
}
