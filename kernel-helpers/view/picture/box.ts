import { type Affine, applyTo } from "./affine.js";

/** A rectangle with its sides along the axes [px]; y grows downwards. Empty when x0 > x1. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** What the DOM hands out for a rectangle. */
export interface DomRectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const emptyBox: Box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

export function isEmpty(box: Box): boolean {
  return box.x0 > box.x1;
}

/** The smallest box that holds both. */
export function union(a: Box, b: Box): Box {
  return {
    x0: Math.min(a.x0, b.x0),
    y0: Math.min(a.y0, b.y0),
    x1: Math.max(a.x1, b.x1),
    y1: Math.max(a.y1, b.y1),
  };
}

/** The smallest box that holds all the points. */
export function boxAround(points: Iterable<readonly [number, number]>): Box {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return { x0, y0, x1, y1 };
}

/** The box round a box that was moved or turned. */
export function transformBox(map: Affine, box: Box): Box {
  if (isEmpty(box)) return box;
  const { x0, y0, x1, y1 } = box;
  return boxAround([applyTo(map, x0, y0), applyTo(map, x1, y0), applyTo(map, x0, y1), applyTo(map, x1, y1)]);
}

export function toDomRectangle(box: Box): DomRectangle {
  const { x0, y0, x1, y1 } = isEmpty(box) ? { x0: 0, y0: 0, x1: 0, y1: 0 } : box;
  return { x: x0, y: y0, width: x1 - x0, height: y1 - y0, left: x0, top: y0, right: x1, bottom: y1 };
}
