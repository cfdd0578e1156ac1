import type { Figure } from "./blocks.js";
import { figureStyle } from "./figure-style.js";

/** The traces that the plotly bundle of a page and of the static pictures can draw. */
export const traceTypes: readonly string[] = Object.freeze([
  "bar",
  "box",
  "contour",
  "heatmap",
  "histogram",
  "histogram2d",
  "histogram2dcontour",
  "image",
  "pie",
  "scatter",
  "scatterternary",
  "violin",
]);

/** Classic Notebook cuts off an SVG wider than about 770 px. */
export const widestFigure = 720;

/**
 * A figure ready to draw: checked, and with the house's fonts, colours and axes as plotly template, so that
 * anything set in the figure itself comes first. Static picture and live plot are both made from this.
 *
 * @param figure traces and layout; plain JSON; layout.width from 100 to 720 and layout.height from 100 to 2000 [px]
 * @returns a copy with layout.template filled in
 * @throws TypeError   the figure is not plain JSON, has a trace of a type that the page cannot draw, or a picture
 *   that lies outside it
 * @throws RangeError  its width or height is missing or out of range
 */
export function finishFigure(figure: Figure): Figure {
  checkSize("width", figure.layout.width, widestFigure);
  checkSize("height", figure.layout.height, 2000);
  for (const [index, trace] of figure.data.entries()) checkTrace(index, trace.type);
  checkPlainJson(figure.data, "data");
  checkPlainJson(figure.layout, "layout");
  return { data: figure.data, layout: { template: figureStyle, ...figure.layout } };
}

function checkSize(name: string, value: unknown, most: number): void {
  if (typeof value === "number" && value >= 100 && value <= most) return;
  throw new RangeError(`figure: layout.${name} must be a number of pixels from 100 to ${most}, got ${value}`);
}

function checkTrace(index: number, type: unknown): void {
  // plotly takes a trace without a type for a scatter plot.
  if (type === undefined || (typeof type === "string" && traceTypes.includes(type))) return;
  throw new TypeError(
    `figure: data[${index}].type must be one that the page can draw (${traceTypes.join(", ")}), got ${type}`,
  );
}

function checkPlainJson(value: unknown, path: string): void {
  if (value === null || value === undefined || typeof value === "string" || typeof value === "boolean")
    return;
  if (typeof value === "number" && Number.isFinite(value)) return;
  if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) checkPlainJson(item, `${path}[${index}]`);
    return;
  }
  if (typeof value === "object" && isPlainObject(value)) {
    for (const [key, item] of Object.entries(value)) {
      if (key === "source") checkSource(item, `${path}.source`);
      checkPlainJson(item, `${path}.${key}`);
    }
    return;
  }
  const got = typeof value === "object" ? `an object of ${value.constructor?.name}` : String(value);
  throw new TypeError(`figure: ${path} must be plain JSON (null for a gap), got ${got}`);
}

/**
 * In plotly every address of a picture has this name, save in the fields that are the figure's own. Without a
 * browser none is fetched: the drawing would wait for it without end, and for the one of a trace in any case.
 */
function checkSource(source: unknown, path: string): void {
  // plotly takes a number for text here, and passes over anything else.
  const isAddress = typeof source === "number" || (typeof source === "string" && source !== "");
  if (!isAddress || /\.(customdata|meta)\b/.test(path)) return;
  const address = String(source);
  const got = address.length > 80 ? `${address.slice(0, 80)}…` : address;
  if (/^data\[|\.template\.data\./.test(path))
    throw new TypeError(
      `figure: ${path} must be left out: give the pixels as z, or the picture in layout.images, got ${got}`,
    );
  // In small letters: in others plotly does not know it for a picture that is here already.
  if (!address.startsWith("data:image/"))
    throw new TypeError(`figure: ${path} must hold the picture itself as a data: address, got ${got}`);
}

/** Looks one step up only, for objects made in a notebook cell have an Object.prototype of their own. */
function isPlainObject(value: object): boolean {
  const prototype: object | null = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}
