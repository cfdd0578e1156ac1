import type { Connection } from "../wire/connection.js";
import { encode, type Message, newHeader } from "../wire/message.js";
import { Outbox } from "../wire/outbox.js";
import type { Control } from "./control.js";
import type { Sockets } from "./sockets.js";

/** The channel a request came on, and its reply goes back on. */
export type RequestChannel = "shell" | "control";

/** Everything the kernel says to whoever sits at the notebook. */
export class FrontEnd {
  readonly #key: string;
  readonly #outboxes: { readonly [C in RequestChannel | "iopub"]: Outbox };

  constructor(connection: Connection, sockets: Sockets, control: Control) {
    this.#key = connection.key;
    this.#outboxes = {
      shell: new Outbox(sockets.shell),
      control: new Outbox(control),
      iopub: new Outbox(sockets.iopub),
    };
  }

  /** Answers a request, to the one who asked. */
  reply(channel: RequestChannel, request: Message, content: Record<string, unknown>): void {
    const type = request.header.msg_type.replace(/_request$/, "_reply");
    this.#send(channel, { ...answer(request, type, content), identities: request.identities });
  }

  /** Tells everybody what came of a request. */
  publish(request: Message, type: string, content: Record<string, unknown>): void {
    const topic = Buffer.from(type);
    this.#send("iopub", { ...answer(request, type, content), identities: [topic] });
  }

  status(request: Message, state: "busy" | "idle"): void {
    this.publish(request, "status", { execution_state: state });
  }

  /** Resolves when all has been handed to the sockets. */
  async emptied(): Promise<void> {
    await Promise.all(Object.values(this.#outboxes).map((outbox) => outbox.emptied()));
  }

  #send(channel: RequestChannel | "iopub", message: Message): void {
    this.#outboxes[channel].put(encode(message, this.#key));
  }
}

function answer(request: Message, type: string, content: Record<string, unknown>): Message {
  return { identities: [], header: newHeader(type, request.header.session), parent: request.header, content };
}
