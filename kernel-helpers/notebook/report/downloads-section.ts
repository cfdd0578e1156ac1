import { escapeHtml } from "../../view/escape.js";
import { downloadLink } from "./download-link.js";
import type { ReportRecord, ReportSheet } from "./report-input.js";
import { withoutOutputs } from "./without-outputs.js";

/** The worksheets, ready to run again, and what they put on record. */
export function downloadsSection(sheets: readonly ReportSheet[], records: readonly ReportRecord[]): string {
  const worksheets = sheets.flatMap(({ name, notebook }) =>
    notebook === undefined ? [] : [{ name: `${name}.ipynb`, text: withoutOutputs(notebook) }],
  );
  return `<section id="files" aria-labelledby="files-title">
<header><h2 id="files-title">Worksheets and records</h2></header>
<p>These files are inside this page. The worksheets carry no results: running them again computes everything afresh.
A worksheet is a program; run only those of people you trust. Where this page's scripts do not run, long files come
packed, as <code>.gz</code>.</p>
${listHtml("Worksheets", "application/x-ipynb+json", worksheets)}
${listHtml("Records", "application/json", records)}
</section>`;
}

function listHtml(title: string, mediaType: string, files: readonly ReportRecord[]): string {
  if (files.length === 0) return "";
  const items = files.map(
    ({ name, text }) => `<li>${downloadLink(name, mediaType, text)} ${sizeOf(text)}</li>`,
  );
  return `<h3>${escapeHtml(title)}</h3>\n<ul class="files">${items.join("\n")}</ul>`;
}

function sizeOf(text: string): string {
  const bytes = Buffer.byteLength(text, "utf8");
  const size = bytes < 1000 ? `${bytes} bytes` : `${(bytes / 1000).toFixed(bytes < 10_000 ? 1 : 0)} kB`;
  return `<span class="remark">${size}</span>`;
}
