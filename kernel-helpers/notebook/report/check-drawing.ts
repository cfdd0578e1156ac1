import type { Drawing, Fill, Pen, Point, Shape, TextSize } from "../../view/drawing/drawing.js";
import {
  type Fields,
  list,
  number,
  object,
  oneOf,
  optional,
  present,
  text,
  truth,
  WrongShape,
} from "./check-fields.js";

/** More shapes than any drawing of a machine has: what holds more is meant to break something. */
const mostShapes = 5000;
/** Beyond this no sheet reaches [px]. */
const farthest = 20_000;

/**
 * The drawing in a piece of JSON of which nothing is known, built anew from the known fields.
 *
 * @throws WrongShape  any part of it has not exactly the shape of {@link Drawing}
 */
export function checkDrawing(value: unknown): Drawing {
  const { width, height, shapes } = object(value);
  const given = list(shapes);
  if (given.length > mostShapes) throw new WrongShape();
  return { width: positive(width), height: positive(height), shapes: given.map((one) => shape(object(one))) };
}

const pens: readonly Pen[] = ["outline", "thin", "hidden", "centre", "force", "warn"];
const fills: readonly Fill[] = ["none", "metal", "iron", "white metal", "oil", "shade", "warn", "hatch"];
const sizes: readonly TextSize[] = ["small", "normal", "large"];

function shape(given: Fields): Shape {
  const pen = (): Pen => oneOf(given.pen, pens);
  const fill = (): Fill => oneOf(given.fill, fills);
  switch (given.type) {
    case "line":
      return { type: "line", from: point(given.from), to: point(given.to), pen: pen() };
    case "arrow": {
      const both = optional(given.both, truth);
      return {
        type: "arrow",
        from: point(given.from),
        to: point(given.to),
        pen: pen(),
        ...present({ both }),
      };
    }
    case "polyline":
      return { type: "polyline", points: points(given.points), pen: pen() };
    case "polygon":
      return { type: "polygon", points: points(given.points), pen: pen(), fill: fill() };
    case "circle": {
      const radius = positive(given.radius);
      return { type: "circle", centre: point(given.centre), radius, pen: pen(), fill: fill() };
    }
    case "arc": {
      const [radius, head] = [positive(given.radius), optional(given.head, truth)];
      const [from, to] = [turn(given.from), turn(given.to)];
      return { type: "arc", centre: point(given.centre), radius, from, to, pen: pen(), ...present({ head }) };
    }
    case "dimension": {
      const [from, to] = [point(given.from), point(given.to)];
      return { type: "dimension", from, to, offset: place(given.offset), text: text(given.text) };
    }
    case "text": {
      const size = optional(given.size, (value) => oneOf(value, sizes));
      const anchor = optional(given.anchor, (value) => oneOf(value, ["start", "middle", "end"] as const));
      const ink = optional(given.ink, (value) => oneOf(value, ["ink", "pencil", "force", "warn"] as const));
      const turned = optional(given.turn, turn);
      return {
        type: "text",
        at: point(given.at),
        text: text(given.text),
        ...present({ size, anchor, ink, turn: turned }),
      };
    }
    default:
      throw new WrongShape();
  }
}

function points(value: unknown): readonly Point[] {
  const given = list(value);
  if (given.length > mostShapes) throw new WrongShape();
  return given.map(point);
}

function point(value: unknown): Point {
  const [x, y, ...more] = list(value);
  if (more.length > 0) throw new WrongShape();
  return [place(x), place(y)];
}

function place(value: unknown): number {
  const given = number(value);
  if (Math.abs(given) > farthest) throw new WrongShape();
  return given;
}

function positive(value: unknown): number {
  const given = place(value);
  if (given <= 0) throw new WrongShape();
  return given;
}

function turn(value: unknown): number {
  const given = number(value);
  if (Math.abs(given) > 3600) throw new WrongShape();
  return given;
}
