import type { Drawing, Point, Shape } from "../drawing/drawing.js";

/** What is marked on the wheel's face: where the heavy side lies, and what is fastened where. */
export interface BalanceFace {
  readonly title: string;
  /** Direction of the unbalance [deg]; undefined where it is not to be drawn. */
  readonly heavy: number | undefined;
  readonly masses: readonly { readonly angle: number; readonly text: string }[];
  /** Angles that exist to fasten at, or were tried [deg]. */
  readonly marks: readonly number[];
}

const centre: Point = [200, 200];
const rim = 120;

/**
 * The face of a wheel with its angles: 0° at the top, growing clockwise. A wheel whose marks grow the other way is
 * seen from behind.
 */
export function balanceFace({ title, heavy, masses, marks }: BalanceFace): Drawing {
  return {
    width: 400,
    height: 372,
    shapes: [
      { type: "text", at: [14, 24], text: title, size: "large" },
      { type: "circle", centre, radius: rim, pen: "outline", fill: "shade" },
      { type: "circle", centre, radius: rim - 16, pen: "thin", fill: "none" },
      { type: "circle", centre, radius: 22, pen: "outline", fill: "metal" },
      ...[0, 90, 180, 270].map((angle): Shape => label(angle, `${angle}°`)),
      ...marks.map(
        (angle): Shape => ({ type: "line", from: at(angle, rim), to: at(angle, rim + 9), pen: "thin" }),
      ),
      ...(heavy === undefined ? [] : heavySide(heavy)),
      ...masses.flatMap(({ angle, text }) => massAt(angle, text)),
      {
        type: "arc",
        centre,
        radius: 44,
        from: 120,
        to: 60,
        pen: "thin",
        head: true,
      },
      {
        type: "text",
        at: [200, 360],
        text: "angles as in the table, drawn growing clockwise",
        size: "small",
        anchor: "middle",
        ink: "pencil",
      },
    ],
  };
}

/** A place on the face: 0° at the top, clockwise. */
function at(angle: number, radius: number): Point {
  const turn = (angle * Math.PI) / 180;
  return [centre[0] + radius * Math.sin(turn), centre[1] - radius * Math.cos(turn)];
}

function label(angle: number, text: string): Shape {
  const [x, y] = at(angle, rim + 20);
  const sideways = Math.abs(Math.sin((angle * Math.PI) / 180)) > 0.5;
  return {
    type: "text",
    at: [x, y + 4],
    text,
    size: "small",
    anchor: !sideways ? "middle" : angle < 180 ? "start" : "end",
    ink: "pencil",
  };
}

function heavySide(angle: number): Shape[] {
  // The word stands beside the arrow, a quarter turn on, clear of its head.
  const [x, y] = at(angle, 62);
  const [dx, dy] = [26 * Math.cos((angle * Math.PI) / 180), 16 * Math.sin((angle * Math.PI) / 180)];
  return [
    { type: "arrow", from: at(angle, 24), to: at(angle, rim - 18), pen: "warn" },
    { type: "text", at: [x + dx, y + dy + 4], text: "heavy", anchor: "middle", ink: "warn" },
  ];
}

function massAt(angle: number, text: string): Shape[] {
  const spot = at(angle, rim - 8);
  const [x, y] = at(angle, rim + 14);
  const right = Math.sin((angle * Math.PI) / 180) >= 0;
  // Above or below the wheel the text stands clear of the degree there.
  const upright = Math.abs(Math.cos((angle * Math.PI) / 180)) > 0.94;
  return [
    { type: "circle", centre: spot, radius: 9, pen: "force", fill: "metal" },
    {
      type: "text",
      at: [x + (right ? 6 : -6) * (upright ? 4 : 1), y + (upright ? 0 : 18 * Math.sign(y - centre[1] || 1))],
      text,
      ink: "force",
      anchor: right ? "start" : "end",
    },
  ];
}
