import { formatNumber, quantityFromSi, unitNamed } from "../../quantity/index.js";
import type { Balance } from "../../shaft/index.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";

type Pickup = Balance["pickups"][number];

const centre: Point = [200, 196];
const reach = 140;
const line = 18;

/**
 * What a pickup read in each run, as vectors: length the amplitude, direction the phase counted as the angles of the
 * wheel, 0° at the top, growing clockwise as on the wheel's face. The circle at a head is its standard uncertainty.
 */
export function balancePolar({ name, runs, dimension, unit }: Pickup): Drawing {
  const largest = Math.max(...runs.map(({ amplitude, u }) => amplitude + u)) || 1;
  const to = (amplitude: number, phase: number): Point => [
    centre[0] + ((reach * amplitude) / largest) * Math.sin(phase),
    centre[1] - ((reach * amplitude) / largest) * Math.cos(phase),
  ];
  const shown = (si: number): string =>
    unit === undefined
      ? formatNumber(si, 3)
      : `${formatNumber(quantityFromSi(dimension as never, si).si / unitNamed(unit as never).si, 3)} ${unitNamed(unit as never).symbol}`;
  const last = runs.length - 1;
  const numbers = clearOf(runs.map(({ amplitude, phase }) => to(amplitude, phase)));
  return {
    width: 400,
    height: 364 + line * runs.length,
    shapes: [
      {
        type: "text",
        at: [14, 24],
        text: name === "" ? "Read at the pickup" : `Read at ${name}`,
        size: "large",
      },
      ...[1, 0.5].map(
        (share): Shape => ({ type: "circle", centre, radius: share * reach, pen: "thin", fill: "none" }),
      ),
      ...[0, 90, 180, 270].map((angle) => degreeAt(angle)),
      ...runs.flatMap(({ amplitude, phase, u }, k): Shape[] => {
        const head = to(amplitude, phase);
        const pen = k === last ? "force" : k === 0 ? "warn" : "outline";
        return [
          ...(amplitude > 0.05 * largest ? [{ type: "arrow", from: centre, to: head, pen } as const] : []),
          { type: "circle", centre: head, radius: Math.max(3, (reach * u) / largest), pen, fill: "none" },
          {
            type: "text",
            at: [numbers[k]![0], numbers[k]![1] + 4],
            text: String(k + 1),
            anchor: "middle",
            ink: k === last ? "force" : k === 0 ? "warn" : "ink",
          },
        ];
      }),
      ...runs.map(
        ({ amplitude, phase, line: row }, k): Shape => ({
          type: "text",
          at: [14, 376 + line * k],
          text: `${k + 1}: line ${row}, ${shown(amplitude)} at ${formatNumber((Math.round((phase * 180) / Math.PI) + 360) % 360)}°${k === 0 ? ", first run" : k === last ? ", last run" : ""}`,
          size: "small",
          ink: k === last ? "force" : k === 0 ? "warn" : "ink",
        }),
      ),
    ],
  };
}

function degreeAt(angle: number): Shape {
  const turn = (angle * Math.PI) / 180;
  const [x, y] = [centre[0] + (reach + 14) * Math.sin(turn), centre[1] - (reach + 12) * Math.cos(turn)];
  const sideways = Math.abs(Math.sin(turn)) > 0.5;
  return {
    type: "text",
    at: [x, y + 4],
    text: `${angle}°`,
    size: "small",
    anchor: !sideways ? "middle" : angle < 180 ? "start" : "end",
    ink: "pencil",
  };
}

/** Room a number takes about its middle. */
const room = 15;

/** A place for the number at each head: round the head, where it stands clearest of all arrows, heads and numbers. */
function clearOf(heads: readonly Point[]): readonly Point[] {
  const placed: Point[] = [];
  for (const head of heads) {
    const around = Array.from({ length: 24 }, (_, i): Point => {
      const turn = (i * Math.PI) / 12;
      return [head[0] + room * Math.cos(turn), head[1] + room * Math.sin(turn)];
    });
    const clearance = (at: Point): number =>
      Math.min(
        ...heads.map((to) => distanceToArrow(at, to)),
        ...heads.filter((other) => other !== head).map((other) => distance(at, other) - 3),
        ...placed.map((other) => distance(at, other) - 2),
        // Past the circle stand the degrees.
        distance(at, centre) < reach + 2 ? room : 0,
      );
    placed.push(around.reduce((best, at) => (clearance(at) > clearance(best) + 1e-9 ? at : best)));
  }
  return placed;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** From a point to the line from the middle of the figure to a head. */
function distanceToArrow(at: Point, to: Point): number {
  const [x, y] = [to[0] - centre[0], to[1] - centre[1]];
  const square = x * x + y * y;
  const along =
    square === 0 ? 0 : Math.min(1, Math.max(0, ((at[0] - centre[0]) * x + (at[1] - centre[1]) * y) / square));
  return distance(at, [centre[0] + along * x, centre[1] + along * y]);
}
