import { escapeHtml } from "../../view/escape.js";
import { PainterHere } from "../../view/picture/painter.js";
import { viewStyle } from "../../view/style.js";
import { contentSecurity } from "./content-security.js";
import { holdsPackedFiles } from "./download-link.js";
import { downloadScript } from "./download-script.js";
import { downloadsSection } from "./downloads-section.js";
import { holdsFigures } from "./figure-picture.js";
import { mathStyle } from "./math-style.js";
import { pageScript } from "./page-script.js";
import { pageStyle } from "./page-style.js";
import { plotlyLibrary } from "./plotly-library.js";
import { readingsSection } from "./readings-section.js";
import { holdsMath } from "./render-markdown.js";
import { reportHead } from "./report-head.js";
import type { ReportInput } from "./report-input.js";
import { ReportSections } from "./report-sections.js";
import { titleBlock } from "./title-block.js";

/**
 * A whole rebuild as one HTML file that needs nothing else: it opens without a network and sends nothing, whatever
 * the worksheets hold. Only the report's own few lines of script and plotly.js run in it; without scripts it shows
 * static pictures.
 *
 * Valid when: figures have some thousands of points at most (each is drawn from its data); tables of any length, of which
 * the first 500 rows are shown and all can be taken away.
 *
 * @param input  what to show; a function of it alone are the bytes returned, with the same releases of
 *               journalbox, its packages and Node
 * @param made  where some of its sections have been made already
 * @returns an HTML document
 */
export async function buildReport(
  input: ReportInput,
  made: ReportSections = new ReportSections(new PainterHere()),
): Promise<string> {
  const tables = [...input.tables].sort(byName);
  const records = [...input.records].sort(byName);
  const sections: string[] = [];
  for (const [index, sheet] of input.sheets.entries()) sections.push(await made.of(sheet, index));

  const body = `${reportHead(input)}
<main>
${sections.join("\n\n")}

${readingsSection(tables)}

${downloadsSection(input.sheets, records)}
</main>
<footer id="provenance" aria-labelledby="provenance-title">
<h2 id="provenance-title">Provenance</h2>
${titleBlock(input.provenance)}
</footer>`;
  return page(input.title, body);
}

/** The bare page round its content; only what the content needs is put in. */
function page(title: string, body: string): string {
  const library = holdsFigures(body) ? plotlyLibrary() : undefined;
  const own = [...(holdsPackedFiles(body) ? [downloadScript] : []), ...(library ? [pageScript] : [])];
  const scripts = library === undefined ? own : [...own, library.source];
  const ownElements = own.map((script) => `<script>${script}</script>\n`).join("");
  const scriptElements = library === undefined ? ownElements : `${library.element}\n${ownElements}`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
${contentSecurity(scripts)}
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(title)}</title>
<style>${holdsMath(body) ? mathStyle(body) : ""}${viewStyle}${pageStyle}</style>
</head>
<body>
${body}
${scriptElements}</body>
</html>
`;
}

function byName(a: { readonly name: string }, b: { readonly name: string }): number {
  return a.name < b.name ? -1 : a.name > b.name ? 1 : 0;
}
