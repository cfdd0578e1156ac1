import { StringDecoder } from "node:string_decoder";
import { type CellContext, currentCell, outsideCells } from "./cell-context.js";

/** Publishes a message on behalf of a cell. */
export type Publish = (cell: CellContext, type: string, content: Record<string, unknown>) => void;

type StreamName = "stdout" | "stderr";

/** Text written within this time goes out as one message [ms]. */
const together = 50;

/**
 * Sends what cells print to the cell that printed it, also when it prints late. Text is gathered for a moment,
 * so that a loop that prints a thousand lines does not flood the front end with a thousand messages.
 */
export class Output {
  readonly #publish: Publish;
  readonly #waiting: { cell: CellContext; name: StreamName; text: string }[] = [];
  #lastSent = 0;
  #timer: NodeJS.Timeout | undefined;
  /** The cell that ran last: what comes from nowhere is shown there. */
  #lastCell: CellContext | undefined;

  constructor(publish: Publish) {
    this.#publish = publish;
    for (const name of ["stdout", "stderr"] as const) this.#take(process[name], name);
  }

  /** From now on, what comes from nowhere belongs to this cell. */
  begin(cell: CellContext): void {
    this.#lastCell = cell;
  }

  /** Shows a text under a cell. */
  write(cell: CellContext, name: StreamName, text: string): void {
    const last = this.#waiting.at(-1);
    if (last?.cell === cell && last.name === name) last.text += text;
    else this.#waiting.push({ cell, name, text });
    if (Date.now() - this.#lastSent > together) this.flush();
    else this.#timer ??= outsideCells(() => setTimeout(() => this.flush(), together));
  }

  /** Sends what has been gathered; any other message of a cell goes out after this. */
  flush(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#lastSent = Date.now();
    for (const { cell, name, text } of this.#waiting.splice(0)) this.#publish(cell, "stream", { name, text });
  }

  #take(stream: NodeJS.WriteStream, name: StreamName): void {
    const original = stream.write.bind(stream) as NodeJS.WriteStream["write"];
    const decoder = new StringDecoder("utf8");
    const write = (
      chunk: string | Uint8Array,
      encoding?: BufferEncoding | (() => void),
      done?: () => void,
    ): boolean => {
      const cell = currentCell() ?? this.#lastCell;
      if (cell === undefined) return original(chunk as string, encoding as BufferEncoding, done);
      const bytes =
        typeof chunk === "string"
          ? Buffer.from(chunk, typeof encoding === "string" ? encoding : "utf8")
          : Buffer.from(chunk);
      const text = decoder.write(bytes);
      if (text !== "") this.write(cell, name, text);
      const finished = typeof encoding === "function" ? encoding : done;
      if (finished !== undefined) process.nextTick(finished);
      return true;
    };
    stream.write = write as NodeJS.WriteStream["write"];
  }
}
