import type { Drawing, Point, Shape } from "./drawing.js";
import { drawingSize } from "./drawing-svg.js";

/** Drawn smaller than this, shapes no longer carry their letters [-]. */
const least = 0.35;

/**
 * The drawing with its shapes closer together and its letters as large as before, so that its sheet is no wider than asked;
 * undefined where the letters leave too little room for the shapes.
 *
 * @param width  the most the sheet may measure across [px]
 */
export function narrowDrawing(drawing: Drawing, width: number): Drawing | undefined {
  if (drawingSize(drawing).width <= width) return drawing;
  if (drawingSize(shrunk(drawing, least)).width > width) return undefined;
  let [low, high] = [least, 1];
  // Ten halvings of what lies between: a thousandth of the width, less than a pixel.
  for (let i = 0; i < 10; i++) {
    const middle = (low + high) / 2;
    if (drawingSize(shrunk(drawing, middle)).width > width) high = middle;
    else low = middle;
  }
  return shrunk(drawing, low);
}

function shrunk({ width, height, shapes }: Drawing, factor: number): Drawing {
  return Object.freeze({
    width: width * factor,
    height: height * factor,
    shapes: shapes.map((shape) => shrunkShape(shape, factor)),
  });
}

/** A dimension keeps its distance from what it measures: its letters stand between. */
function shrunkShape(shape: Shape, factor: number): Shape {
  const place = ([x, y]: Point): Point => [x * factor, y * factor];
  switch (shape.type) {
    case "line":
    case "arrow":
    case "dimension":
      return { ...shape, from: place(shape.from), to: place(shape.to) };
    case "polyline":
    case "polygon":
      return { ...shape, points: shape.points.map(place) };
    case "circle":
    case "arc":
      return { ...shape, centre: place(shape.centre), radius: shape.radius * factor };
    case "text":
      return { ...shape, at: place(shape.at) };
  }
}
