import {
  type Cell,
  cellIdPattern,
  isJsonType,
  type JsonObject,
  type MimeBundle,
  type Notebook,
  type Output,
} from "./notebook-format.js";

/** Something wrong in a notebook file: the file, the cell, and what. */
export class NotebookFormatError extends Error {
  override readonly name = "NotebookFormatError";
}

/**
 * Checks that an object parsed from a file is a notebook of format 4, and gives it with each text as one string.
 * Cells of formats before 4.5 have no id; theirs is empty here.
 *
 * Beyond the format, which lets a text be a string or a list of strings, nothing is let pass: an unknown field
 * would be lost in silence when the notebook is written.
 *
 * @param value    what JSON.parse gave
 * @param fileName named in the message
 * @throws NotebookFormatError with the first fault found
 * @source Jupyter, "The Jupyter Notebook Format" (nbformat documentation), format 4.5
 */
export function checkNotebook(value: unknown, fileName: string): Notebook {
  const at = new Place(fileName, "");
  const notebook = at.object(value, ["metadata", "nbformat", "nbformat_minor", "cells"]);
  if (notebook.nbformat !== 4)
    at.fail(
      `nbformat must be 4, got ${notebook.nbformat}; open and save it in Jupyter to bring it up to date`,
    );
  const minor = at.wholeNumber(notebook, "nbformat_minor");
  const metadata = at.object(notebook.metadata ?? at.fail("metadata is missing"));
  const cells = at.list(notebook, "cells").map((cell, i) => checkCell(cell, at, i, minor >= 5));
  checkIds(cells, at);
  return { metadata, cells };
}

function checkCell(value: unknown, notebook: Place, index: number, withIds: boolean): Cell {
  const unnamed = notebook.inside(`cell ${index + 1}`);
  const cell = unnamed.object(value);
  const at = typeof cell.id === "string" ? notebook.inside(`cell ${index + 1} (${cell.id})`) : unnamed;
  const type = at.text(cell, "cell_type");
  const { id: own } = cell;
  if (withIds && own === undefined) at.fail("id is missing");
  if (own !== undefined && !(typeof own === "string" && cellIdPattern.test(own)))
    at.fail(`id must be 1 to 64 letters, digits, - or _, got ${JSON.stringify(own)}`);
  const common = {
    id: typeof own === "string" ? own : "",
    metadata: checkTags(at.object(cell.metadata ?? at.fail("metadata is missing")), at),
    source: at.lines(cell, "source"),
  };
  const fields = ["cell_type", "id", "metadata", "source"];
  if (type === "code") {
    at.object(cell, [...fields, "outputs", "execution_count"]);
    return {
      ...common,
      cell_type: type,
      outputs: at.list(cell, "outputs").map((output, i) => checkOutput(output, at.inside(`output ${i + 1}`))),
      execution_count: at.count(cell),
    };
  }
  if (type !== "markdown" && type !== "raw")
    return at.fail(`cell_type must be code, markdown or raw, got ${type}`);
  at.object(cell, [...fields, "attachments"]);
  if (cell.attachments === undefined) return { ...common, cell_type: type };
  const attachments = Object.entries(at.object(cell.attachments)).map(
    ([name, bundle]) => [name, checkBundle(bundle, at.inside(name))] as const,
  );
  return { ...common, cell_type: type, attachments: Object.fromEntries(attachments) };
}

function checkOutput(value: unknown, at: Place): Output {
  const output = at.object(value);
  const type = at.text(output, "output_type");
  switch (type) {
    case "stream":
      at.object(output, ["output_type", "name", "text"]);
      return { output_type: type, name: at.text(output, "name"), text: at.lines(output, "text") };
    case "display_data":
      at.object(output, ["output_type", "data", "metadata"]);
      return { output_type: type, ...checkData(output, at) };
    case "execute_result":
      at.object(output, ["output_type", "data", "metadata", "execution_count"]);
      return { output_type: type, ...checkData(output, at), execution_count: at.count(output) };
    case "error": {
      at.object(output, ["output_type", "ename", "evalue", "traceback"]);
      const traceback = at.list(output, "traceback").map((line) => {
        return typeof line === "string" ? line : at.fail("traceback must be a list of texts");
      });
      return {
        output_type: type,
        ename: at.text(output, "ename"),
        evalue: at.text(output, "evalue"),
        traceback,
      };
    }
    default:
      return at.fail(`output_type must be stream, display_data, execute_result or error, got ${type}`);
  }
}

function checkData(output: JsonObject, at: Place): { data: MimeBundle; metadata: JsonObject } {
  const metadata = at.object(output.metadata ?? at.fail("metadata is missing"));
  return { data: checkBundle(output.data, at), metadata };
}

function checkBundle(value: unknown, at: Place): MimeBundle {
  const bundle = at.object(value);
  return Object.fromEntries(
    Object.keys(bundle).map((type) => [type, isJsonType(type) ? bundle[type] : at.lines(bundle, type)]),
  );
}

function checkTags(metadata: JsonObject, at: Place): JsonObject {
  const { tags } = metadata;
  if (tags === undefined) return metadata;
  const good =
    Array.isArray(tags) &&
    tags.every((tag) => typeof tag === "string" && /^[^,]+$/.test(tag)) &&
    new Set(tags).size === tags.length;
  if (!good) at.fail(`tags must be a list of different texts without commas, got ${JSON.stringify(tags)}`);
  return metadata;
}

function checkIds(cells: readonly Cell[], at: Place): void {
  const seen = new Map<string, number>();
  for (const [i, { id }] of cells.entries()) {
    const first = seen.get(id);
    if (id !== "" && first !== undefined) at.fail(`cells ${first + 1} and ${i + 1} have the same id, ${id}`);
    seen.set(id, i);
  }
}

/** Where in a notebook the check stands, and the checks of single fields there. */
class Place {
  readonly #file: string;
  readonly #path: string;

  constructor(file: string, path: string) {
    this.#file = file;
    this.#path = path;
  }

  inside(part: string): Place {
    return new Place(this.#file, this.#path === "" ? part : `${this.#path}, ${part}`);
  }

  fail(what: string): never {
    throw new NotebookFormatError([this.#file, this.#path, what].filter(Boolean).join(": "));
  }

  /** An object, with no fields but those allowed, where they are given. */
  object(value: unknown, allowed?: readonly string[]): JsonObject {
    if (typeof value !== "object" || value === null || Array.isArray(value))
      return this.fail(`an object was expected, got ${JSON.stringify(value)?.slice(0, 40)}`);
    const stranger = allowed && Object.keys(value).find((key) => !allowed.includes(key));
    if (stranger !== undefined) this.fail(`${stranger} is no field of format 4.5 here`);
    return value as JsonObject;
  }

  list(object: JsonObject, field: string): readonly unknown[] {
    const value = object[field];
    return Array.isArray(value) ? value : this.fail(`${field} must be a list, got ${typeof value}`);
  }

  text(object: JsonObject, field: string): string {
    const value = object[field];
    return typeof value === "string" ? value : this.fail(`${field} must be a text, got ${typeof value}`);
  }

  /** A text, or a list of texts that make one. */
  lines(object: JsonObject, field: string): string {
    const value = object[field];
    if (Array.isArray(value) && value.every((line) => typeof line === "string")) return value.join("");
    return typeof value === "string"
      ? value
      : this.fail(`${field} must be a text or a list of texts, got ${typeof value}`);
  }

  wholeNumber(object: JsonObject, field: string): number {
    const value = object[field];
    return Number.isInteger(value) && Number(value) >= 0
      ? Number(value)
      : this.fail(`${field} must be a whole number from 0, got ${JSON.stringify(value)}`);
  }

  count(object: JsonObject): number | null {
    return object.execution_count === null ? null : this.wholeNumber(object, "execution_count");
  }
}
