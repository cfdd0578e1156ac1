import { textWidth } from "../picture/text-width.js";
import type { Drawing, Point, Shape } from "./drawing.js";
import { letterHeight } from "./text-size.js";

/** What a drawing covers [px]. */
export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Room for the width of a line and the halo of a text [px]. */
const margin = 4;

/** The sheet of a drawing, grown to hold every shape and text, so that nothing is cut off. */
export function drawingExtent({ width, height, shapes }: Drawing): Extent {
  const reached = shapes.flatMap(cornersOf);
  const [xs, ys] = [reached.map(([x]) => x), reached.map(([, y]) => y)];
  return {
    left: Math.floor(Math.min(0, ...xs.map((x) => x - margin))),
    top: Math.floor(Math.min(0, ...ys.map((y) => y - margin))),
    right: Math.ceil(Math.max(width, ...xs.map((x) => x + margin))),
    bottom: Math.ceil(Math.max(height, ...ys.map((y) => y + margin))),
  };
}

function cornersOf(shape: Shape): readonly Point[] {
  switch (shape.type) {
    case "line":
    case "arrow":
      return [shape.from, shape.to];
    case "polyline":
    case "polygon":
      return shape.points;
    case "circle":
    case "arc": {
      const [x, y] = shape.centre;
      return [
        [x - shape.radius, y - shape.radius],
        [x + shape.radius, y + shape.radius],
      ];
    }
    case "dimension":
      return dimensionCorners(shape);
    case "text":
      return textCorners(shape);
  }
}

/** The dimension line lies beside the two points, its text along it. */
function dimensionCorners(shape: Extract<Shape, { type: "dimension" }>): readonly Point[] {
  const { line, text } = dimensionParts(shape);
  return [shape.from, shape.to, ...line, ...textCorners(text)];
}

/** The ends of a dimension's line and the text that stands on it. */
export function dimensionParts({ from, to, offset, text }: Extract<Shape, { type: "dimension" }>): {
  readonly line: readonly [Point, Point];
  readonly text: Extract<Shape, { type: "text" }>;
} {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  const aside: Point = [(-dy / length) * offset, (dx / length) * offset];
  const line: readonly [Point, Point] = [
    [from[0] + aside[0], from[1] + aside[1]],
    [to[0] + aside[0], to[1] + aside[1]],
  ];
  // Read from below or from the right, never upside down.
  const angle = Math.atan2(-dy, dx);
  const turn =
    Math.cos(angle) < -1e-9 || (Math.abs(Math.cos(angle)) <= 1e-9 && dy > 0) ? angle + Math.PI : angle;
  const lift = 4;
  const at: Point = [
    (line[0][0] + line[1][0]) / 2 - lift * Math.sin(turn),
    (line[0][1] + line[1][1]) / 2 - lift * Math.cos(turn),
  ];
  return { line, text: { type: "text", at, text, anchor: "middle", turn: (turn * 180) / Math.PI } };
}

function textCorners({
  at,
  text,
  size = "normal",
  anchor = "start",
  turn = 0,
}: Extract<Shape, { type: "text" }>): readonly Point[] {
  const height = letterHeight[size];
  const width = textWidth(text, height, size === "large");
  const start = anchor === "start" ? 0 : anchor === "middle" ? -width / 2 : -width;
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const place = (along: number, up: number): Point => [
    at[0] + along * cos - up * sin,
    at[1] - along * sin - up * cos,
  ];
  const [above, below] = [0.8 * height, -0.25 * height];
  return [start, start + width].flatMap((along) => [place(along, above), place(along, below)]);
}
