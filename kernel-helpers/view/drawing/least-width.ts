import type { Drawing } from "./drawing.js";
import { drawingSize } from "./drawing-svg.js";
import { letterHeight } from "./text-size.js";

/** Smaller letters [px] are not read on a telephone. */
const leastLetters = 9;

/** The width to which a drawing may shrink [px] until its smallest letters are 9 px high; 0 where it has none. */
export function leastWidth(drawing: Drawing): number {
  const letters = drawing.shapes.flatMap((shape) => {
    if (shape.type === "dimension") return [letterHeight.normal];
    return shape.type === "text" ? [letterHeight[shape.size ?? "normal"]] : [];
  });
  if (letters.length === 0) return 0;
  return Math.ceil((drawingSize(drawing).width * leastLetters) / Math.min(...letters));
}
