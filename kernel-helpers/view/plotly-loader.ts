import { gzipSync } from "node:zlib";
import { pageScript } from "./page-script.js";
import { readPlotly } from "./plotly-file.js";

let loader: string | undefined;

/**
 * The script that brings plotly.js to a page: the library itself, packed (about 0.7 MB), and the few lines that
 * draw the waiting figures. One a page is enough; further ones do nothing. Marked, so that a report which
 * brings its own can take it out.
 *
 * @returns an HTML fragment: one script element
 */
export function plotlyLoaderHtml(): string {
  loader ??= loaderFor(readPlotly());
  return loader;
}

/** The loader with a library of one's choice, which must set window.Plotly. */
export function loaderFor(library: string): string {
  const packed = gzipSync(library, { level: 9 }).toString("base64");
  return `<script data-journalbox="plotly">(function (packed) {${pageScript}})("${packed}");</script>`;
}

/** HTML without the loaders of {@link plotlyLoaderHtml} in it. */
export function withoutPlotlyLoader(html: string): string {
  return html.replace(/<script data-journalbox="plotly">[^<]*<\/script>/g, "");
}
