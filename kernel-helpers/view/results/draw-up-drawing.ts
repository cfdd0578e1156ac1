import type { DrawUp } from "../../joint/draw-up-types.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";
import { narrowDrawing } from "../drawing/narrow-drawing.js";
import { inUnit, type JointUnits } from "./joint-text.js";

/** Places of the sketch [px]: the taper and the way are drawn larger than they are, or nothing would be seen. */
const axis = 170;
const hubLeft = 250;
const hubWidth = 240;
const taperStart = 286;
const way = 46;
const hubHeight = 104;

/** Half the shaft's height at a place along the sketch. */
function shaftAt(x: number): number {
  return 40 + (x - hubLeft) * 0.055;
}

/**
 * The hub on its taper, cut, as a sketch: where it first touches in hidden lines, where it sits in full ones, and the
 * stops. Not to scale.
 */
export function drawUpDrawing(up: DrawUp, units: JointUnits): Drawing {
  return sketch(up, units, axis + 126);
}

/** The same closed up for a telephone, with what is left to the nut's stop below the hub instead of beside it. */
export function narrowDrawUpDrawing(up: DrawUp, units: JointUnits): Drawing | undefined {
  return narrowDrawing(sketch(up, units, axis + hubHeight + 112), 366);
}

function sketch(up: DrawUp, units: JointUnits, nutTextAt: number): Drawing {
  const contact = hubLeft - way;
  const shoulder = up.stops.find(({ what }) => what === "shoulder");
  const nut = up.stops.find(({ what }) => what === "nut's stop");
  const shapes: Shape[] = [
    // Thread, nut on the left, taper on the right: the hub hangs over the taper's small end.
    polygon(box(70, taperStart, 22), "outline", "none"),
    ...[80, 92, 104, 116, 128, 140, 152, 164].map(
      (x): Shape => ({ type: "line", from: [x, axis - 22], to: [x + 5, axis + 22], pen: "thin" }),
    ),
    ...[1, -1].map(
      (side): Shape =>
        polygon(
          [
            [hubLeft - 46, axis - side * 22],
            [hubLeft, axis - side * 22],
            [hubLeft, axis - side * 52],
            [hubLeft - 46, axis - side * 52],
          ],
          "outline",
          "shade",
        ),
    ),
    { type: "text", at: [hubLeft - 23, axis - 34], text: "nut", size: "small", anchor: "middle" },
    polygon(
      [
        [taperStart, axis - shaftAt(taperStart)],
        [640, axis - shaftAt(640)],
        [640, axis + shaftAt(640)],
        [taperStart, axis + shaftAt(taperStart)],
      ],
      "outline",
      "none",
    ),
    ...[1, -1].flatMap((side) => hubHalf(hubLeft, side, "outline")),
    ...[1, -1].flatMap((side) => hubHalf(contact, side, "hidden")),
    { type: "line", from: [54, axis], to: [664, axis], pen: "centre" },
    {
      type: "arrow",
      from: [contact - 4, axis - hubHeight - 26],
      to: [hubLeft, axis - hubHeight - 26],
      pen: "force",
    },
    {
      type: "text",
      at: [hubLeft + 8, axis - hubHeight - 22],
      text: `draw up ${inUnit(up.drawUp.middle, units.size, 3)} from first contact`,
      ink: "force",
    },
    {
      type: "text",
      at: [hubLeft + hubWidth / 2, axis - 74],
      text: "hub",
      size: "small",
      anchor: "middle",
    },
    {
      type: "dimension",
      from: [hubLeft + hubWidth, axis + hubHeight],
      to: [hubLeft, axis + hubHeight],
      offset: -24,
      text: inUnit(up.hubLength, units.size, 4),
    },
    ...bearing(up),
    ...(shoulder === undefined
      ? []
      : stop(
          hubLeft + hubWidth + 70,
          `${inUnit(shoulder.left.middle, units.size, 2)} to the shoulder`,
          shoulder.chanceFirst > 0.025,
        )),
    ...(nut === undefined
      ? []
      : [
          {
            type: "text",
            at: [34, nutTextAt],
            text: `${inUnit(nut.left.middle, units.size, 2)} until the nut meets the shaft`,
            size: "small",
            ink: nut.chanceFirst > 0.025 ? "warn" : "ink",
          } as const,
        ]),
  ];
  return Object.freeze({ width: 690, height: Math.max(axis + hubHeight + 56, nutTextAt + 8), shapes });
}

/** What the sketch shows, for those who cannot see it. */
export function drawUpAlt(up: DrawUp, units: JointUnits): string {
  const stops = up.stops.map(({ what, left }) => `${inUnit(left.middle, units.size, 2)} to the ${what}`);
  return `Hub on the shaft's taper, cut, not to scale: at first contact in hidden lines, drawn up by ${inUnit(up.drawUp.middle, units.size, 3)} in full ones. It bears first ${up.bearsFirst}.${stops.length === 0 ? "" : ` Left when it sits: ${stops.join(", ")}.`}`;
}

/** The corners of a rectangle about the axis. */
function box(from: number, to: number, half: number): readonly Point[] {
  return [
    [from, axis - half],
    [to, axis - half],
    [to, axis + half],
    [from, axis + half],
  ];
}

function polygon(
  points: readonly Point[],
  pen: "outline" | "hidden",
  fill: "none" | "iron" | "shade",
): Shape {
  return { type: "polygon", points, pen, fill };
}

function hubHalf(left: number, side: number, pen: "outline" | "hidden"): Shape[] {
  const [near, far] = [shaftAt(hubLeft), shaftAt(hubLeft + hubWidth)];
  return [
    polygon(
      [
        [left, axis - side * near],
        [left + hubWidth, axis - side * far],
        [left + hubWidth, axis - side * hubHeight],
        [left, axis - side * hubHeight],
      ],
      pen,
      pen === "hidden" ? "none" : "iron",
    ),
  ];
}

/** A mark where the hub touches first. */
function bearing({ bearsFirst }: DrawUp): Shape[] {
  if (bearsFirst === "all along") return [];
  const x = bearsFirst === "at its large end" ? hubLeft + hubWidth : hubLeft;
  const y = shaftAt(x);
  return [
    { type: "circle", centre: [x, axis - y], radius: 9, pen: "warn", fill: "none" },
    { type: "circle", centre: [x, axis + y], radius: 9, pen: "warn", fill: "none" },
    {
      type: "text",
      at: [x + (bearsFirst === "at its large end" ? 14 : -14), axis + hubHeight - 4],
      text: "touches first",
      size: "small",
      anchor: bearsFirst === "at its large end" ? "start" : "end",
      ink: "warn",
    },
  ];
}

function stop(x: number, text: string, warn: boolean): Shape[] {
  const half = shaftAt(x) + 30;
  return [
    { type: "line", from: [x, axis - half], to: [x, axis - shaftAt(x)], pen: warn ? "warn" : "outline" },
    { type: "line", from: [x, axis + half], to: [x, axis + shaftAt(x)], pen: warn ? "warn" : "outline" },
    { type: "text", at: [x - 40, axis - half - 8], text, size: "small", ink: warn ? "warn" : "ink" },
  ];
}
