import { crc32 } from "node:zlib";
import type { Figure } from "../blocks.js";
import { finishFigure } from "../finish-figure.js";
import { type Engine, forgetEngine, loadEngine } from "./engine.js";
import { figureText } from "./figure-text.js";

/** A drawing that waits for something that never comes is given up after this time [s]. */
const longest = 60;

/** Drawings wait for each other: plotly's random names are seeded for one at a time. */
let last: Promise<unknown> = Promise.resolve();

/**
 * A static picture of a plotly figure, drawn by plotly.js itself without a browser.
 * The same figure gives the same bytes, whatever was drawn before or is being drawn, and in whatever order its fields
 * were written.
 *
 * Valid when: the figure passes {@link finishFigure}; thin out readings past some thousands, for each becomes
 * an element of the picture (10 000 markers: about 2 s and 2 MB).
 *
 * @param figure a plotly figure, layout.width and layout.height in [px]
 * @returns an SVG document
 * @throws TypeError, RangeError  the figure is not plain JSON, has no size, has a trace the page cannot draw, or a
 *   picture that lies outside it
 * @throws Error  the drawing is not ready after 60 s
 */
export async function drawSvg(figure: Figure): Promise<string> {
  const finished = finishFigure(figure);
  const drawing = last.then(() => drawInTime(finished));
  last = drawing.catch(() => undefined);
  return drawing;
}

async function drawInTime(figure: Figure): Promise<string> {
  const engine = await loadEngine();
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      // The stuck drawing keeps its engine for itself: were it to go on, it must not get into a later one.
      forgetEngine();
      reject(new Error(`drawSvg: a drawing must be ready within ${longest} s; this one was given up`));
    }, longest * 1000);
  });
  try {
    return await Promise.race([drawOn(engine, figure), tooLong]);
  } finally {
    clearTimeout(timer);
  }
}

/** Draws a finished figure on an engine that is drawing nothing else. */
export async function drawOn({ plotly, document, seed }: Engine, figure: Figure): Promise<string> {
  const text = figureText(figure);
  seed(crc32(text));
  const { data, layout } = JSON.parse(text) as { data: unknown; layout: { width: number; height: number } };
  const { width, height } = layout;
  const figureToDraw = { data, layout, config: { staticPlot: true } };
  const url = await plotly.toImage(figureToDraw, { format: "svg", width, height });
  // The document notes each selector search until it changes itself: make it forget, or it grows without end.
  document.removeChild(document.appendChild(document.createComment("")));
  return decodeURIComponent(url.slice(url.indexOf(",") + 1));
}
