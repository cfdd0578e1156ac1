import { createHash } from "node:crypto";
import { escapeHtml } from "../../view/escape.js";
import { htmlTable } from "../../view/html-table.js";
import { downloadLink } from "./download-link.js";
import { readingsTable } from "./readings-table.js";
import type { ReportTable } from "./report-input.js";

/** Every table of readings, to read and to take away. */
export function readingsSection(tables: readonly ReportTable[]): string {
  const parts = tables.length === 0 ? "<p>No tables were read.</p>" : tables.map(tableHtml).join("\n");
  return `<section id="readings" aria-labelledby="readings-title">
<header><h2 id="readings-title">Readings</h2></header>
${parts}
</section>`;
}

function tableHtml(table: ReportTable): string {
  const { name, file, text, sha256 } = table;
  return `<article class="readings">
<h3>${escapeHtml(name)}</h3>
<p class="file">${downloadLink(file, "text/csv", text)} <span class="hash">SHA-256 ${escapeHtml(sha256)}</span>${hashRemark(table)}</p>
${contentHtml(table)}
</article>`;
}

/** The hash is of the file as stored, which may have been in another encoding than this page. */
function hashRemark({ text, sha256 }: ReportTable): string {
  const ofDownload = createHash("sha256").update(text, "utf8").digest("hex");
  if (ofDownload === sha256.toLowerCase()) return "";
  return '<br><span class="remark">The hash is that of the file as stored; the copy here is in UTF-8 and has another.</span>';
}

function contentHtml({ name, text }: ReportTable): string {
  const table = readingsTable(name, text);
  if (table === undefined) return `<pre class="plain scroll" tabindex="0">${escapeHtml(text)}</pre>`;
  const { remarks, block, rows } = table;
  const notes = remarks.map((remark) => `<li>${escapeHtml(remark)}</li>`).join("");
  const cut =
    rows > block.rows.length
      ? `<p class="remark">The first ${block.rows.length} of ${rows} rows; all are in the file.</p>`
      : "";
  const remarkList = notes === "" ? "" : `<ul class="remarks">${notes}</ul>\n`;
  return `${remarkList}<div class="jb">${htmlTable(block)}</div>${cut}`;
}
