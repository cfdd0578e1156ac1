import { plainLine } from "../characters.js";
import { escapeHtml } from "../escape.js";
import { alarm, ink, paper, pencil, seriesLook } from "../palette.js";
import type { Drawing, Fill, Pen, Point, Shape } from "./drawing.js";
import { dimensionParts, drawingExtent } from "./drawing-extent.js";
import { headPoints } from "./head-points.js";
import { letterHeight } from "./text-size.js";

const forceBlue = seriesLook(0).color;

const pens: Readonly<
  Record<Pen, { readonly color: string; readonly width: number; readonly dash?: string }>
> = {
  outline: { color: ink, width: 1.8 },
  thin: { color: pencil, width: 0.9 },
  hidden: { color: pencil, width: 1.1, dash: "6 3" },
  centre: { color: pencil, width: 0.9, dash: "14 3 2 3" },
  force: { color: forceBlue, width: 2.2 },
  warn: { color: alarm, width: 2.2 },
};

const inks = { ink, pencil, force: forceBlue, warn: alarm } as const;

const fills: Readonly<Record<Fill, string>> = {
  none: "none",
  metal: "#dfe5ea",
  iron: "url(#iron)",
  "white metal": "url(#white-metal)",
  oil: "url(#oil)",
  shade: "#f1f3f4",
  warn: "#f6e3e8",
  hatch: "url(#hatch)",
};

/** What a pattern is made of: its tile [px], its ground, and its lines. */
const patterns: Readonly<
  Record<string, { readonly tile: number; readonly ground: string; readonly path: string }>
> = {
  iron: { tile: 8, ground: "#e3e5e6", path: "M-2 2L2 -2M0 8L8 0M6 10L10 6" },
  "white-metal": { tile: 8, ground: "#f4f1e6", path: "M0 8L8 0M0 0L8 8" },
  oil: { tile: 8, ground: "#f6e6c3", path: "M0 2H4M4 6H8" },
  hatch: { tile: 8, ground: "none", path: "M-2 6L2 10M0 0L8 8M6 -2L10 2" },
};

/**
 * A drawing as an SVG document on white paper. The sheet grows to hold every shape and text.
 *
 * @throws RangeError  a size or a place is not a finite number, or a radius is not above 0; the shape is named
 */
export function drawingSvg(drawing: Drawing): string {
  drawing.shapes.forEach(checkShape);
  if (!(drawing.width > 0 && drawing.height > 0))
    throw new RangeError(
      `drawing: width and height must be above 0, got ${drawing.width} × ${drawing.height}`,
    );
  const { left, top, right, bottom } = drawingExtent(drawing);
  const [width, height] = [right - left, bottom - top];
  const shapes = drawing.shapes.map(shapeSvg);
  const used = Object.keys(patterns).filter((name) => shapes.some((svg) => svg.includes(`url(#${name})`)));
  const defs = used.length === 0 ? "" : `<defs>${used.map(patternSvg).join("")}</defs>`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${left} ${top} ${width} ${height}"` +
    ` font-family="Arial, Liberation Sans, sans-serif" fill="none" stroke-linejoin="round">${defs}` +
    `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${paper}"/>${shapes.join("")}</svg>`
  );
}

/** Width and height of the document `drawingSvg` makes [px]. */
export function drawingSize(drawing: Drawing): { readonly width: number; readonly height: number } {
  const { left, top, right, bottom } = drawingExtent(drawing);
  return { width: right - left, height: bottom - top };
}

function patternSvg(name: string): string {
  const { tile, ground, path } = patterns[name]!;
  const back = ground === "none" ? "" : `<rect width="${tile}" height="${tile}" fill="${ground}"/>`;
  return (
    `<pattern id="${name}" width="${tile}" height="${tile}" patternUnits="userSpaceOnUse">${back}` +
    `<path d="${path}" stroke="${pencil}" stroke-width="0.8"/></pattern>`
  );
}

function checkShape(shape: Shape, index: number): void {
  const numbers = Object.values(shape)
    .flat(2)
    .filter((value) => typeof value === "number");
  const wrong = numbers.find((value) => !Number.isFinite(value));
  if (wrong !== undefined)
    throw new RangeError(
      `drawing: shape ${index + 1}, a ${shape.type}: every place must be a number, got ${wrong}`,
    );
  if ("radius" in shape && !(shape.radius > 0))
    throw new RangeError(
      `drawing: shape ${index + 1}, a ${shape.type}: radius must be above 0, got ${shape.radius}`,
    );
}

function shapeSvg(shape: Shape): string {
  switch (shape.type) {
    case "line":
      return lineSvg([shape.from, shape.to], shape.pen);
    case "polyline":
      return lineSvg(shape.points, shape.pen);
    case "polygon":
      return `<polygon points="${pointsText(shape.points)}" ${stroke(shape.pen)} fill="${fills[shape.fill]}"/>`;
    case "circle": {
      const [x, y] = shape.centre;
      return `<circle cx="${n(x)}" cy="${n(y)}" r="${n(shape.radius)}" ${stroke(shape.pen)} fill="${fills[shape.fill]}"/>`;
    }
    case "arc":
      return arcSvg(shape);
    case "arrow":
      return arrowSvg(shape.from, shape.to, shape.pen, shape.both ?? false);
    case "dimension":
      return dimensionSvg(shape);
    case "text":
      return textSvg(shape);
  }
}

function lineSvg(points: readonly Point[], pen: Pen): string {
  return `<polyline points="${pointsText(points)}" ${stroke(pen)}/>`;
}

function arcSvg({ centre: [x, y], radius, from, to, pen, head }: Extract<Shape, { type: "arc" }>): string {
  // Short chords: a polyline needs no flags for large arcs and full turns, and looks the same.
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / 3));
  const points = Array.from({ length: steps + 1 }, (_, i): Point => {
    const angle = ((from + ((to - from) * i) / steps) * Math.PI) / 180;
    return [x + radius * Math.cos(angle), y - radius * Math.sin(angle)];
  });
  if (head !== true) return lineSvg(points, pen);
  const [end, sense] = [(to * Math.PI) / 180, to > from ? 1 : -1];
  // The head leans in by half the angle it covers, so that it lies on the arc.
  const lean = Math.min(0.4, 5 / radius);
  return lineSvg(points, pen) + headSvg(points.at(-1)!, end + sense * (Math.PI / 2 - lean), pen);
}

function arrowSvg(from: Point, to: Point, pen: Pen, both: boolean): string {
  const direction = Math.atan2(from[1] - to[1], to[0] - from[0]);
  const back = both ? headSvg(from, direction + Math.PI, pen) : "";
  return lineSvg([from, to], pen) + headSvg(to, direction, pen) + back;
}

function headSvg(tip: Point, direction: number, pen: Pen): string {
  return `<polygon points="${pointsText(headPoints(tip, direction))}" fill="${pens[pen].color}"/>`;
}

function dimensionSvg(shape: Extract<Shape, { type: "dimension" }>): string {
  const { line, text } = dimensionParts(shape);
  const helpers = [
    [shape.from, line[0]],
    [shape.to, line[1]],
  ] as const;
  return (
    helpers.map(([point, end]) => helperLineSvg(point, end)).join("") +
    arrowSvg(line[0], line[1], "thin", true) +
    textSvg(text)
  );
}

/** From a little off the body to a little past the dimension line. */
function helperLineSvg([x, y]: Point, [toX, toY]: Point): string {
  const length = Math.hypot(toX - x, toY - y);
  if (length < 3) return "";
  const [ux, uy] = [(toX - x) / length, (toY - y) / length];
  return lineSvg(
    [
      [x + 2 * ux, y + 2 * uy],
      [toX + 4 * ux, toY + 4 * uy],
    ],
    "thin",
  );
}

function textSvg({
  at: [x, y],
  text,
  size = "normal",
  anchor = "start",
  ink: of = "ink",
  turn = 0,
}: Extract<Shape, { type: "text" }>): string {
  const turned = turn === 0 ? "" : ` transform="rotate(${n(-turn)} ${n(x)} ${n(y)})"`;
  const bold = size === "large" ? ' font-weight="bold"' : "";
  return (
    `<text x="${n(x)}" y="${n(y)}" font-size="${letterHeight[size]}"${bold} text-anchor="${anchor}"${turned}` +
    ` fill="${inks[of]}" stroke="${paper}" stroke-width="3" paint-order="stroke">${escapeHtml(plainLine(text))}</text>`
  );
}

function stroke(pen: Pen): string {
  const { color, width, dash } = pens[pen];
  const dashes = dash === undefined ? "" : ` stroke-dasharray="${dash}"`;
  return `stroke="${color}" stroke-width="${width}"${dashes}`;
}

function pointsText(points: readonly Point[]): string {
  return points.map(([x, y]) => `${n(x)},${n(y)}`).join(" ");
}

/** A hundredth of a pixel is finer than any screen. */
function n(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}
