import { escapeHtml } from "../../view/escape.js";
import { decidedSection } from "./decided-section.js";
import type { ReportInput } from "./report-input.js";
import { statusStamp } from "./status-stamp.js";
import { titleBlock } from "./title-block.js";

/** The id of a sheet's section, which the contents list leads to. */
export function sheetId(index: number): string {
  return `sheet-${index + 1}`;
}

/** What comes first: name of the machine, its facts, what was decided, how the run went, where everything is. */
export function reportHead(input: ReportInput): string {
  const { title, facts, invented, notices = [], sheets } = input;
  const banner = invented ? '<p class="banner" role="note">Invented readings, for demonstration</p>\n' : "";
  const entries = sheets.map(
    (sheet, index) =>
      `<li><a href="#${sheetId(index)}">${escapeHtml(sheet.title)}</a> ${statusStamp(sheet.status)}</li>`,
  );
  return `<header class="head">
${banner}<p class="kind">Rebuild report</p>
<h1>${escapeHtml(title)}</h1>
${noticesHtml(notices)}${titleBlock(facts)}
</header>
${decidedSection(input, sheetId)}<nav id="contents" aria-labelledby="contents-title">
<h2 id="contents-title">Contents</h2>
<p class="outcome">${outcome(sheets)}</p>
<ol>
${entries.join("\n")}
</ol>
<ul>
<li><a href="#readings">Readings</a></li>
<li><a href="#files">Worksheets and records</a></li>
<li><a href="#provenance">Provenance</a></li>
</ul>
</nav>
<input type="checkbox" id="with-code" checked>
<label for="with-code">with code</label>`;
}

function noticesHtml(notices: readonly string[]): string {
  if (notices.length === 0) return "";
  const items = notices.map((notice) => `<li>${escapeHtml(notice)}</li>`);
  return `<div class="notices" role="note"><strong>Of this copy</strong><ul>${items.join("\n")}</ul></div>\n`;
}

function outcome(sheets: ReportInput["sheets"]): string {
  const stopped = sheets.filter(({ status }) => status === "failed").length;
  if (sheets.length === 0) return "No worksheets were run.";
  if (stopped > 0) return `<strong>${stopped} of ${counted(sheets.length)} stopped.</strong>`;
  return sheets.length === 1 ? "The worksheet ran through." : `All ${counted(sheets.length)} ran through.`;
}

function counted(count: number): string {
  return count === 1 ? "1 worksheet" : `${count} worksheets`;
}
