import type { Length } from "../../quantity/index.js";
import type { KeyseatAfterCut } from "../../shaft/index.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";

const centre: Point = [150, 168];
/** Radius of the shaft before the cut [px]. */
const outside = 120;

/** A shaft's section at its keyseat, before and after it is turned, with the size that a micrometer reads. */
export function keyseatDrawing(seat: KeyseatAfterCut, shown: (length: Length) => string): Drawing {
  const [x, y] = centre;
  const scale = (2 * outside) / seat.before.si;
  const radius = (seat.after.si / 2) * scale;
  const half = (seat.width.si / 2) * scale;
  const floor = seat.floorToFarSide.si * scale - radius;
  const gone = seat.share === 0;
  const body: Shape = gone
    ? { type: "circle", centre, radius, pen: "outline", fill: "metal" }
    : {
        type: "polygon",
        points: [...roundFrom(half, radius), [x - half, y - floor], [x + half, y - floor]],
        pen: "outline",
        fill: "metal",
      };
  const deepened = y - floor + seat.deepen.si * scale;
  return {
    width: 360,
    height: 330,
    shapes: [
      body,
      { type: "circle", centre, radius: outside, pen: "hidden", fill: "none" },
      ...(gone
        ? []
        : [
            {
              type: "line",
              from: [x - half, deepened],
              to: [x + half, deepened],
              pen: "hidden",
            } satisfies Shape,
          ]),
      { type: "line", from: [x - outside - 12, y], to: [x + outside + 12, y], pen: "centre" },
      { type: "line", from: [x, y - outside - 12], to: [x, y + outside + 12], pen: "centre" },
      ...(gone
        ? []
        : [
            {
              type: "dimension",
              from: [x, y + radius],
              to: [x, y - floor],
              offset: outside + 26,
              text: shown(seat.floorToFarSide),
            } satisfies Shape,
          ]),
      {
        type: "text",
        at: [x, 20],
        anchor: "middle",
        text: `turned from ${shown(seat.before)} to ${shown(seat.after)}`,
      },
    ],
  };
}

/** Round the shaft clockwise, from the seat's right corner to its left one. */
function roundFrom(half: number, radius: number): Point[] {
  const aside = Math.asin(half / radius);
  const steps = 96;
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const turn = Math.PI / 2 + aside + ((2 * Math.PI - 2 * aside) * i) / steps;
    return [centre[0] + radius * Math.cos(turn), centre[1] - radius * Math.sin(turn)];
  }).reverse();
}
