import type { IndicatorSchedule } from "../../shaft/index.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";

const [left, right] = [60, 520];
const [start, end] = [140, 440];
const axis = 230;
/** The slope drawn [-], many times what a taper has, so that it is seen. */
const slope = 0.16;

/** An indicator at both ends of its travel: on a slide that leaves a parallel bar, or on the carriage along a flank. */
export function indicatorDrawing(against: IndicatorSchedule["against"]): Drawing {
  const bar = against === "parallel bar";
  const surface = (x: number): number => (bar ? 190 : 200 - slope * (x - left));
  const path = (x: number): number => (bar ? 110 - slope * (x - start) : 70);
  const body: Point[] = [
    [left, surface(left)],
    [right, surface(right)],
    [right, axis + (axis - surface(right))],
    [left, axis + (axis - surface(left))],
  ];
  const rise: readonly [Point, Point] = bar
    ? [
        [end + 70, path(start)],
        [end + 70, path(end)],
      ]
    : [
        [end + 70, surface(start)],
        [end + 70, surface(end)],
      ];
  return {
    width: 600,
    height: 330,
    shapes: [
      { type: "polygon", points: body, pen: "outline", fill: "metal" },
      { type: "line", from: [left - 20, axis], to: [right + 20, axis], pen: "centre" },
      { type: "line", from: [start - 60, path(start - 60)], to: [end + 60, path(end + 60)], pen: "hidden" },
      ...[start, end].flatMap((x) => indicator([x, path(x)], surface(x))),
      ...leaning([end, path(end)], surface),
      ...[0, 1].map((at): Shape => {
        const [x, y] = rise[at]!;
        return { type: "line", from: [bar ? start : [start, end][at]!, y], to: [x, y], pen: "thin" };
      }),
      { type: "arrow", from: rise[0], to: rise[1], pen: "force", both: true },
      { type: "text", at: [end + 78, (rise[0][1] + rise[1][1]) / 2 + 5], text: "rise" },
      {
        type: "dimension",
        from: [end, body[2]![1]],
        to: [start, body[3]![1]],
        offset: -28,
        text: "travel along the axis",
      },
      {
        type: "text",
        at: [start + 20, path(start + 20) - 26],
        text: bar ? "way of the slide, along the flank" : "way of the carriage",
        size: "small",
        turn: bar ? (Math.atan(slope) * 180) / Math.PI : 0,
      },
    ],
  };
}

function indicator([x, y]: Point, surface: number): Shape[] {
  return [
    { type: "line", from: [x, y], to: [x, surface], pen: "outline" },
    { type: "circle", centre: [x, y], radius: 15, pen: "outline", fill: "shade" },
    { type: "line", from: [x, y], to: [x + 7, y - 9], pen: "thin" },
  ];
}

/** The stem as it leans, dashed, to where it meets the surface. */
function leaning([x, y]: Point, surface: (x: number) => number): Shape[] {
  const tilt = Math.tan((16 * Math.PI) / 180);
  // Where y + d = surface(x − d·tilt): the way down grows by what the flank falls off on that side.
  const fall = (surface(x - 1) - surface(x)) / 1;
  const down = (surface(x) - y) / (1 - fall * tilt);
  const foot: Point = [x - down * tilt, y + down];
  return [
    { type: "line", from: [x, y], to: foot, pen: "hidden" },
    { type: "arc", centre: [x, y], radius: 52, from: 270, to: 254, pen: "thin" },
    { type: "text", at: [x - 20, y + 66], text: "lean", size: "small", anchor: "end" },
  ];
}
