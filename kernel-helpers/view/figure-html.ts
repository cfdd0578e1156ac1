import { createHash } from "node:crypto";
import type { Figure } from "./blocks.js";
import { escapeHtml, scriptJson } from "./escape.js";
import { finishFigure } from "./finish-figure.js";

/** A figure with its static picture. */
export interface FigureWithPicture {
  readonly figure: Figure;
  /** The picture drawn by drawSvg. */
  readonly svg: string;
  /** What the figure shows, for those who cannot see it. */
  readonly alt: string;
}

/**
 * A figure as HTML: its static picture, and a script that hands the figure to the page's plotly, which puts a
 * live plot in the picture's place (see plotlyLoaderHtml). Where scripts are stripped, or the library never
 * comes, the picture stays. The order of figure and loader in the page does not matter.
 *
 * @returns an HTML fragment; the same figure gives the same bytes
 */
export function figureHtml({ figure, svg, alt }: FigureWithPicture): string {
  const { data, layout } = finishFigure(figure);
  const name = createHash("sha256")
    .update(JSON.stringify([data, layout]))
    .digest("hex")
    .slice(0, 12);
  const source = `data:image/svg+xml;base64,${Buffer.from(svg).toString("base64")}`;
  const { width, height } = layout;
  const picture =
    `<img src="${source}" alt="${escapeHtml(alt)}" width="${width}" height="${height}"` +
    ` style="max-width:100%;height:auto">`;
  const handOver = `(window.journalboxFigures=window.journalboxFigures||[]).push(${scriptJson({ name, data, layout })})`;
  return `<div data-journalbox-figure="${name}">${picture}</div><script>${handOver}</script>`;
}
