import type { Point } from "./drawing.js";

/** Length and half width of an arrow's head [px]. */
const long = 10;
const half = 3.5;

/**
 * The triangle of an arrow's head.
 *
 * @param tip  where it points to [px]
 * @param direction  of flight, counter-clockwise from the right as seen [rad]
 */
export function headPoints([x, y]: Point, direction: number): readonly Point[] {
  const [along, down] = [Math.cos(direction), -Math.sin(direction)];
  const foot: Point = [x - long * along, y - long * down];
  return [
    [x, y],
    [foot[0] - half * down, foot[1] + half * along],
    [foot[0] + half * down, foot[1] - half * along],
  ];
}
