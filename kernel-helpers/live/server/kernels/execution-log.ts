import type { Message } from "../../../notebook/wire/message.js";

/** A piece of code a page had run, and what came of it. */
export interface Execution {
  readonly code: string;
  /** The id of the cell it stood in, where the page told. */
  readonly cellId?: string;
  /** Undefined while it runs. */
  status?: "ok" | "error";
  /** The error's name and message. */
  message?: string;
}

/** All that was run in one kernel since it was started, in order: what its variables come from. */
export class ExecutionLog {
  readonly #all = new Map<string, Execution>();

  get executions(): readonly Execution[] {
    return [...this.#all.values()];
  }

  /** Notes a request on its way to the kernel. */
  asked({ header, content, metadata }: Message): void {
    if (header.msg_type !== "execute_request" || String(content.code).trim() === "") return;
    const cellId = metadata?.cellId;
    this.#all.set(header.msg_id, {
      code: String(content.code).trimEnd(),
      ...(typeof cellId === "string" && { cellId }),
    });
  }

  /** Notes a reply of the kernel; a cell that was given up has not been run. */
  replied({ header, parent, content }: Message): void {
    const id = String(parent.msg_id);
    const execution = this.#all.get(id);
    if (execution === undefined || header.msg_type !== "execute_reply") return;
    if (content.status === "ok" || content.status === "error") execution.status = content.status;
    else this.#all.delete(id);
    if (content.status === "error") execution.message = `${content.ename}: ${content.evalue}`;
  }

  clear(): void {
    this.#all.clear();
  }
}
