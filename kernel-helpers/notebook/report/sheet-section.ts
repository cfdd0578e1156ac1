import { escapeHtml } from "../../view/escape.js";
import type { Painter } from "../../view/picture/painter.js";
import type { Cell, CodeCell } from "../file/notebook-format.js";
import { highlightCode } from "./highlight-code.js";
import { Outline } from "./outline.js";
import { renderMarkdown } from "./render-markdown.js";
import { type OutputPlace, renderOutput } from "./render-output.js";
import type { ReportSheet } from "./report-input.js";
import { statusStamp } from "./status-stamp.js";

/** One worksheet as a section: its text, its code small and quiet, its results. */
export async function sheetSection(sheet: ReportSheet, id: string, painter: Painter): Promise<string> {
  const place = { outline: new Outline(2), painter };
  const cells = sheet.notebook?.cells ?? [];
  const parts: string[] = [];
  for (const [index, cell] of cells.entries())
    parts.push(await cellHtml(cell, place, index === 0 ? sheet.title : undefined));
  if (cells.length === 0) parts.push('<p class="left-out">[this sheet has no cells to show]</p>');
  return `<section class="sheet" id="${id}" aria-labelledby="${id}-title">
<header><p class="number">${escapeHtml(sheet.name)}</p>
<h2 id="${id}-title">${escapeHtml(sheet.title)}</h2>
${statusStamp(sheet.status)}</header>
${failureHtml(sheet)}${parts.join("\n")}
</section>`;
}

/** A raw cell is meant for other converters, and shows nothing here. */
async function cellHtml(cell: Cell, place: OutputPlace, titleAbove: string | undefined): Promise<string> {
  switch (cell.cell_type) {
    case "code":
      return codeHtml(cell, place);
    case "markdown":
      return `<div class="text">\n${renderMarkdown(cell.source, { ...cell, outline: place.outline, titleAbove })}</div>`;
    case "raw":
      return "";
  }
}

async function codeHtml({ source, outputs }: CodeCell, place: OutputPlace): Promise<string> {
  const parts = source.trim() === "" ? [] : [codeBlock(source)];
  for (const output of outputs) parts.push(await renderOutput(output, place));
  const failed = outputs.some((output) => output.output_type === "error") ? " failed" : "";
  return `<div class="cell${failed}">\n${parts.filter((html) => html !== "").join("\n")}\n</div>`;
}

function codeBlock(source: string): string {
  return `<pre class="code" tabindex="0"><code>${highlightCode(source, "typescript")}</code></pre>`;
}

function failureHtml({ status, failure }: ReportSheet): string {
  if (status === "ok") return "";
  const why = failure ?? "the reason was not recorded";
  return `<div class="failure" role="note"><strong>This sheet did not finish.</strong> The cells after
the fault were not run.<pre>${escapeHtml(why)}</pre></div>\n`;
}
