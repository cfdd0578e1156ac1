import type { PathPoint } from "./path-points.js";

/** A flattened path with the length run through up to each of its points [px]. */
export interface MeasuredPath {
  readonly points: readonly PathPoint[];
  readonly lengths: readonly number[];
}

/** Adds up the lengths of a flattened path; a jump of the pen has no length. */
export function measurePath(points: readonly PathPoint[]): MeasuredPath {
  const lengths: number[] = [];
  let sum = 0;
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (before !== undefined && !point.jump) sum += Math.hypot(point.x - before.x, point.y - before.y);
    lengths.push(sum);
  }
  return { points, lengths };
}

/** Whole length of a path [px]. */
export function totalLength(path: MeasuredPath): number {
  return path.lengths.at(-1) ?? 0;
}

/** The point at a distance along a path; before the start it is the start, past the end the end. */
export function pointAlong(path: MeasuredPath, distance: number): { x: number; y: number } {
  const { points, lengths } = path;
  if (points.length === 0) return { x: 0, y: 0 };
  const next = lengths.findIndex((length) => length >= distance);
  const to = points[next] ?? points.at(-1)!;
  const from = points[next - 1];
  if (from === undefined) return { x: to.x, y: to.y };
  const share = (distance - lengths[next - 1]!) / (lengths[next]! - lengths[next - 1]!);
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}
