import { createHash } from "node:crypto";
import { escapeHtml } from "../../view/escape.js";

/**
 * The policy by which the browser itself keeps the page closed: nothing is fetched or sent, pictures and fonts
 * come from inside the page, and of scripts only those run whose text is exactly one of the given.
 *
 * @returns meta elements, to stand before anything that could load
 */
export function contentSecurity(scripts: readonly string[]): string {
  const hashes = scripts.map(
    (script) => `'sha256-${createHash("sha256").update(script, "utf8").digest("base64")}'`,
  );
  const policy = [
    "default-src 'none'",
    "img-src data: blob:", // blob: is a picture made in the page, for plotly's button that saves one
    "font-src data:",
    "style-src 'unsafe-inline'",
    `script-src ${hashes.length === 0 ? "'none'" : hashes.join(" ")}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return `<meta http-equiv="Content-Security-Policy" content="${escapeHtml(policy)}">
<meta http-equiv="x-dns-prefetch-control" content="off">
<meta name="referrer" content="no-referrer">`;
}
