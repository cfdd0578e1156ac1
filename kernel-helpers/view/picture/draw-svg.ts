import { crc32 } from "node:zlib";
import type { Figure } from "../blocks.js";
import { finishFigure } from "../finish-figure.js";
import { type Engine, loadEngine } from "./engine.js";

/** Drawings wait for each other: plotly's random names are seeded for one at a time. */
let last: Promise<unknown> = Promise.resolve();

/**
 * A static picture of a plotly figure, drawn by plotly.js itself without a browser.
 * The same figure gives the same bytes, whatever was drawn before or is being drawn.
 *
 * Valid when: the figure passes {@link finishFigure}; thin out readings past some thousands, for each becomes
 * an element of the picture (10 000 markers: about 2 s and 2 MB).
 *
 * @param figure a plotly figure, layout.width and layout.height in [px]
 * @returns an SVG document
 * @throws TypeError, RangeError  the figure is not plain JSON, has no size, or has a trace the page cannot draw
 */
export async function drawSvg(figure: Figure): Promise<string> {
  const finished = finishFigure(figure);
  const engine = await loadEngine();
  const drawing = last.then(() => draw(engine, finished));
  last = drawing.catch(() => undefined);
  return drawing;
}

async function draw({ plotly, document, seed }: Engine, figure: Figure): Promise<string> {
  const text = JSON.stringify(figure);
  seed(crc32(text));
  const { data, layout } = JSON.parse(text) as { data: unknown; layout: { width: number; height: number } };
  const { width, height } = layout;
  const figureToDraw = { data, layout, config: { staticPlot: true } };
  const url = await plotly.toImage(figureToDraw, { format: "svg", width, height });
  // The document notes each selector search until it changes itself: make it forget, or it grows without end.
  document.removeChild(document.appendChild(document.createComment("")));
  return decodeURIComponent(url.slice(url.indexOf(",") + 1));
}
