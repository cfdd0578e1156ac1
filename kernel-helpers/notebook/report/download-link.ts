import { gzipSync } from "node:zlib";
import { escapeHtml } from "../../view/escape.js";
import { textDataUri } from "./data-uri.js";

/** Longer texts are packed, which makes them a fifth as long: records and worksheets, but no ordinary table [characters]. */
const longText = 8_000;

/**
 * A link that hands over a file from inside the page, offline too. A long text is packed: where scripts run, the page
 * unpacks it as it is taken (`downloadScript`); where none do, the file comes as `name.gz`.
 */
export function downloadLink(file: string, mediaType: string, text: string): string {
  const name = escapeHtml(file);
  const plain = textDataUri(mediaType, text);
  if (plain.length < longText) return `<a class="download" download="${name}" href='${plain}'>${name}</a>`;
  return (
    `<a class="download" download="${name}.gz" data-type="${escapeHtml(mediaType)}" ` +
    `href="data:application/gzip;base64,${packed(text)}">${name}</a>`
  );
}

/** Whether HTML made here holds packed files: no text and no foreign HTML can have this attribute. */
export function holdsPackedFiles(html: string): boolean {
  return html.includes('.gz" data-type="');
}

/** Gzip names the operating system it was made on: "unknown" is written, so that all give the same bytes. */
function packed(text: string): string {
  const bytes = gzipSync(text, { level: 9 });
  bytes[9] = 255;
  return bytes.toString("base64");
}
