import { readFileSync } from "node:fs";
import { cellHashesKey, cellHashesOf } from "../../record/cell-hashes.js";
import { writeFile } from "../../record/write-file.js";
import { canonicalNotebook } from "./canonical-notebook.js";
import { checkNotebook, NotebookFormatError } from "./check-notebook.js";
import type { JsonObject, Notebook } from "./notebook-format.js";
import { notebookJson } from "./notebook-json.js";

/**
 * Reads a worksheet: any notebook of format 4 whose language is TypeScript, in its canonical form.
 *
 * @throws NotebookFormatError the file is no such notebook; the message names file, cell and fault
 * @throws Error the file cannot be read
 */
export function readNotebook(path: string): Notebook {
  const notebook = checkNotebook(parse(readFileSync(path, "utf8"), path), path);
  const language = languageOf(notebook.metadata);
  if (language !== undefined && !/^typescript$/i.test(language))
    throw new NotebookFormatError(`${path}: worksheets are written in TypeScript, this is in ${language}`);
  return canonicalNotebook(notebook);
}

/**
 * Writes a notebook in its canonical form, whole or not at all. What was valid is valid; what was read and not
 * changed is written to the same bytes.
 *
 * @throws NotebookFormatError the notebook would not be valid; nothing is written
 * @throws Error the file cannot be written
 */
export function writeNotebook(path: string, notebook: Notebook): void {
  const text = notebookJson(notebook);
  checkNotebook(JSON.parse(text), path);
  writeFile(path, text);
}

/**
 * Writes an executed notebook: the same, with the hash of each of its cells in its metadata.
 *
 * @throws NotebookFormatError the notebook would not be valid; nothing is written
 * @throws Error the file cannot be written
 */
export function writeExecuted(path: string, notebook: Notebook): void {
  const cells = cellHashesOf(notebookJson(notebook));
  writeNotebook(path, { ...notebook, metadata: { ...notebook.metadata, [cellHashesKey]: cells } });
}

function parse(text: string, path: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new NotebookFormatError(`${path}: not a notebook, for it is not JSON: ${why}`, { cause });
  }
}

/** The language a notebook says it is written in, where it says so. */
function languageOf(metadata: JsonObject): string | undefined {
  const { kernelspec, language_info } = metadata as {
    kernelspec?: { language?: unknown };
    language_info?: { name?: unknown };
  };
  const said = kernelspec?.language ?? language_info?.name;
  return typeof said === "string" ? said : undefined;
}
