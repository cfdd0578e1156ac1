import type { FigureBlock, Presentation } from "../../view/blocks.js";
import { escapeHtml, scriptJson } from "../../view/escape.js";
import { finishFigure } from "../../view/finish-figure.js";
import type { Painter } from "../../view/picture/painter.js";
import { checkDrawable } from "./check-drawable.js";
import { svgDataUri } from "./data-uri.js";
import { lightSvg } from "./light-svg.js";

/**
 * The pictures of a presentation's figures, made from the figures alone: a static one that stays where scripts do
 * not run and on paper, and beside it the figure as data, from which the page's own script makes the live one.
 * A figure that cannot be drawn is said to be so, with the reason and what it would have shown.
 */
export async function figurePictures(
  presentation: Presentation,
  painter: Painter,
): Promise<ReadonlyMap<FigureBlock, string>> {
  const pictures = new Map<FigureBlock, string>();
  for (const block of presentation.blocks)
    if (block.type === "figure") pictures.set(block, await pictureOf(block, painter));
  return pictures;
}

/** Whether HTML made here holds figures: no text and no foreign HTML can have this class. */
export function holdsFigures(html: string): boolean {
  return html.includes('<div class="paper"');
}

async function pictureOf({ figure, alt }: FigureBlock, painter: Painter): Promise<string> {
  try {
    checkDrawable(figure);
    const svg = await painter.svg(figure);
    const { data, layout } = finishFigure(figure);
    const { width, height } = layout;
    return (
      `<div class="paper" data-figure style="--width:${width}px;--height:${height}px">` +
      `<img src="${svgDataUri(lightSvg(svg))}" alt="${escapeHtml(alt)}" width="${width}" height="${height}">` +
      `<script type="application/json">${scriptJson({ data, layout })}</script></div>`
    );
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return `<p class="left-out">[figure not drawn: ${escapeHtml(alt)}. ${escapeHtml(reason)}]</p>`;
  }
}
