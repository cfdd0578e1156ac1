import type { KernelOutput } from "../client/running-kernel.js";
import { joinStreams } from "../file/join-streams.js";
import type { DataOutput, JsonObject, MimeBundle, Output } from "../file/notebook-format.js";

/** Turns what a kernel publishes for one cell into the outputs of that cell, as a front end would show them. */
export class OutputCollector {
  #outputs: Output[] = [];
  /** Where an output stands that the kernel may replace later. */
  readonly #byDisplayId = new Map<string, number>();

  /** The outputs so far. */
  get outputs(): readonly Output[] {
    return joinStreams(this.#outputs);
  }

  /** All the cell wrote to its error output. */
  get stderr(): string {
    return this.#outputs
      .map((output) => (output.output_type === "stream" && output.name === "stderr" ? output.text : ""))
      .join("");
  }

  readonly take = ({ type, content }: KernelOutput): void => {
    switch (type) {
      case "stream":
        this.#outputs.push({ output_type: type, name: String(content.name), text: String(content.text) });
        break;
      case "execute_result":
        this.#outputs.push({
          ...dataOf(content),
          output_type: type,
          execution_count: Number(content.execution_count),
        });
        break;
      case "display_data":
        this.#remember(content);
        this.#outputs.push({ ...dataOf(content), output_type: type });
        break;
      case "update_display_data":
        this.#replace(content);
        break;
      case "error":
        this.add({
          ename: String(content.ename),
          evalue: String(content.evalue),
          traceback: Array.isArray(content.traceback) ? content.traceback.map(String) : [],
        });
        break;
      case "clear_output":
        this.#outputs = [];
        this.#byDisplayId.clear();
        break;
    }
  };

  /** An error the kernel could not tell of itself. */
  add(error: {
    readonly ename: string;
    readonly evalue: string;
    readonly traceback: readonly string[];
  }): void {
    this.#outputs.push({ output_type: "error", ...error });
  }

  #remember(content: JsonObject): void {
    const id = displayIdOf(content);
    if (id !== undefined) this.#byDisplayId.set(id, this.#outputs.length);
  }

  #replace(content: JsonObject): void {
    const at = this.#byDisplayId.get(displayIdOf(content) ?? "");
    if (at !== undefined) this.#outputs[at] = { ...dataOf(content), output_type: "display_data" };
  }
}

function dataOf({ data, metadata }: JsonObject): Pick<DataOutput, "data" | "metadata"> {
  return { data: (data ?? {}) as MimeBundle, metadata: (metadata ?? {}) as JsonObject };
}

function displayIdOf({ transient }: JsonObject): string | undefined {
  const id = (transient as { display_id?: unknown } | undefined)?.display_id;
  return typeof id === "string" ? id : undefined;
}
