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
        const beside = to(amplitude + 0.09 * largest, phase);
        return [
          ...(amplitude > 0.05 * largest ? [{ type: "arrow", from: centre, to: head, pen } as const] : []),
          { type: "circle", centre: head, radius: Math.max(3, (reach * u) / largest), pen, fill: "none" },
          {
            type: "text",
            at: [beside[0], beside[1] + 4],
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
