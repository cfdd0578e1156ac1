import { escapeHtml } from "../../view/escape.js";
import type { Labelled } from "./report-input.js";

/** Labels and values in a frame of fields, as in the corner of a drawing. */
export function titleBlock(fields: readonly Labelled[]): string {
  if (fields.length === 0) return "";
  return `<dl class="title-block">\n${fields.map(field).join("\n")}\n</dl>`;
}

function field({ label, value }: Labelled): string {
  // A hash or a path must be allowed to break anywhere.
  const long = value.split(/\s/).some((word) => word.length > 24) ? ' class="long"' : "";
  return `<div${long}><dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd></div>`;
}
