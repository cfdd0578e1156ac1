import { arc, cubic, quadratic } from "./curve-points.js";

/** A point of a flattened path; `jump` where the pen was lifted to get there. */
export interface PathPoint {
  readonly x: number;
  readonly y: number;
  readonly jump: boolean;
}

/** How many numbers each path command takes at a time. */
const takes: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Z: 0, C: 6, S: 4, Q: 4, A: 7 };
const commandPattern = /([mlhvzcsqa])([^mlhvzcsqa]*)/gi;
const numberPattern = /[-+]?(?:\d*\.\d+|\d+\.?)(?:e[-+]?\d+)?/gi;

/**
 * An SVG path as a chain of straight pieces: curves are cut into 16, arcs into 24.
 * Reads the commands plotly writes: M L H V Z C S Q A, absolute and relative (no T).
 *
 * @param path the attribute `d`
 * @returns the corners in order [px]
 */
export function flattenPath(path: string): readonly PathPoint[] {
  const points: PathPoint[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let reflected: readonly [number, number] | undefined;

  const draw = (toX: number, toY: number, jump = false): void => {
    points.push({ x: toX, y: toY, jump });
    [x, y] = [toX, toY];
  };

  for (const [, letter, list] of path.matchAll(commandPattern)) {
    const command = letter!.toUpperCase();
    const relative = letter !== command;
    const numbers = (list!.match(numberPattern) ?? []).map(Number);
    const size = takes[command]!;
    for (let first = 0; first === 0 || first + size <= numbers.length; first += size) {
      const group = numbers.slice(first, first + size);
      if (relative) shift(group, command, x, y);
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = group;
      let control: readonly [number, number] | undefined;
      switch (command) {
        case "M":
          // Further pairs after a move are lines.
          draw(a, b, first === 0);
          if (first === 0) [startX, startY] = [a, b];
          break;
        case "L":
          draw(a, b);
          break;
        case "H":
          draw(a, y);
          break;
        case "V":
          draw(x, a);
          break;
        case "C":
          for (const [px, py] of cubic(x, y, a, b, c, d, e, f)) draw(px, py);
          control = [2 * e - c, 2 * f - d];
          break;
        case "S": {
          const [mx, my] = reflected ?? [x, y];
          for (const [px, py] of cubic(x, y, mx, my, a, b, c, d)) draw(px, py);
          control = [2 * c - a, 2 * d - b];
          break;
        }
        case "Q":
          for (const [px, py] of quadratic(x, y, a, b, c, d)) draw(px, py);
          break;
        case "A":
          for (const [px, py] of arc(x, y, a, b, c, d !== 0, e !== 0, f, g)) draw(px, py);
          break;
        default:
          draw(startX, startY);
      }
      reflected = control;
      if (size === 0) break;
    }
  }
  return points;
}

/** Makes the coordinates of a relative command absolute, in place. */
function shift(group: number[], command: string, x: number, y: number): void {
  if (command === "H") group[0]! += x;
  else if (command === "V") group[0]! += y;
  else if (command === "A") {
    group[5]! += x;
    group[6]! += y;
  } else for (let i = 0; i < group.length; i++) group[i]! += i % 2 === 0 ? x : y;
}
