import { canonicalNotebook } from "./canonical-notebook.js";
import { type Cell, isLineType, type MimeBundle, type Notebook, type Output } from "./notebook-format.js";

/**
 * The text of a notebook file, in one form only: format 4.5, keys sorted, one space of indent, texts as lists of
 * lines, letters of all languages as they are, a newline at the end. A diff shows the change of thought.
 */
export function notebookJson(notebook: Notebook): string {
  const { cells, metadata } = canonicalNotebook(notebook);
  const file = { cells: cells.map(cellInLines), metadata, nbformat: 4, nbformat_minor: 5 };
  return `${sortedJson(file)}\n`;
}

function cellInLines(cell: Cell): Record<string, unknown> {
  const lines = { ...cell, source: linesOf(cell.source) };
  if (cell.cell_type === "code") return { ...lines, outputs: cell.outputs.map(outputInLines) };
  if (cell.attachments === undefined) return lines;
  const attachments = Object.entries(cell.attachments).map(([name, bundle]) => [name, bundleInLines(bundle)]);
  return { ...lines, attachments: Object.fromEntries(attachments) };
}

function outputInLines(output: Output): Record<string, unknown> {
  if (output.output_type === "stream") return { ...output, text: linesOf(output.text) };
  if (output.output_type === "error") return { ...output };
  return { ...output, data: bundleInLines(output.data) };
}

function bundleInLines(bundle: MimeBundle): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(bundle).map(([type, value]) => [
      type,
      typeof value === "string" && isLineType(type) ? linesOf(value) : value,
    ]),
  );
}

/** Lines with their line break; none for an empty text. */
function linesOf(text: string): readonly string[] {
  return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

/** JSON.stringify with sorted keys; it cannot do that itself for keys that look like numbers. */
function sortedJson(value: unknown, indent = ""): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const inner = `${indent} `;
  const isList = Array.isArray(value);
  const parts = isList
    ? value.map((item) => inner + sortedJson(item, inner))
    : Object.entries(value)
        .filter(([, item]) => item !== undefined)
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([key, item]) => `${inner}${JSON.stringify(key)}: ${sortedJson(item, inner)}`);
  const [open, close] = isList ? ["[", "]"] : ["{", "}"];
  return parts.length === 0 ? open + close : `${open}\n${parts.join(",\n")}\n${indent}${close}`;
}
