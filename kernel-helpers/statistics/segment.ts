import { requireFinite } from "./check.js";
import { fewestPositions, type SegmentShape } from "./partition-search.js";
import type { Estimate } from "./predict-line.js";

/** A line, level or sloping, fitted to the readings of one segment by known weights. */
export interface SegmentLine {
  readonly shape: SegmentShape;
  /** Weighted middle of the positions: height and slope are uncorrelated there [unit of x]. */
  readonly centre: number;
  /** Height at the centre [unit of y]. */
  readonly level: number;
  /** Standard uncertainty of the level [unit of y]. */
  readonly uLevel: number;
  /** Slope, 0 for a flat segment [unit of y / unit of x]. */
  readonly slope: number;
  /** Standard uncertainty of the slope, 0 for a flat segment [unit of y / unit of x]. */
  readonly uSlope: number;
}

/**
 * Height of a segment's line at a position, with its standard uncertainty.
 *
 * y = level + slope (x − centre); u² = u²(level) + (x − centre)² u²(slope)
 *
 * Valid when: x lies on the segment; the caller answers for going beyond.
 *
 * @param segment a segment of a partition
 * @param x position [unit of x]
 * @returns height and its standard uncertainty [unit of y]
 * @throws RangeError x is not finite
 * @example evaluateSegment({ shape: "flat", centre: 2, level: 5, uLevel: 0.1, slope: 0, uSlope: 0 }, 3).value // 5
 * @source uncorrelated centre form of the straight line: ISO/TS 28037:2010, clause 6
 */
export function evaluateSegment(segment: SegmentLine, x: number): Estimate {
  requireFinite("evaluateSegment", "x", x);
  const away = x - segment.centre;
  return Object.freeze({
    value: segment.level + segment.slope * away,
    standardUncertainty: Math.hypot(segment.uLevel, away * segment.uSlope),
  });
}

/** Fits the readings `members` (indices) of a segment; two passes, so that offsets cost no digits. */
export function fitSegment(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  w: ArrayLike<number>,
  members: readonly number[],
  shape: SegmentShape,
): SegmentLine {
  const first = members[0]!;
  let total = 0;
  let mx = 0;
  let my = 0;
  for (const i of members) {
    total += w[i]!;
    mx += w[i]! * (x[i]! - x[first]!);
    my += w[i]! * (y[i]! - y[first]!);
  }
  const centre = x[first]! + mx / total;
  const level = y[first]! + my / total;
  let xx = 0;
  let xy = 0;
  for (const i of members) {
    const dx = x[i]! - centre;
    xx += w[i]! * dx * dx;
    xy += w[i]! * dx * (y[i]! - level);
  }
  const slopes = shape === "sloping";
  return {
    shape,
    centre,
    level,
    uLevel: Math.sqrt(1 / total),
    slope: slopes ? xy / xx : 0,
    uSlope: slopes ? Math.sqrt(1 / xx) : 0,
  };
}

/** Distance of a reading from a line in standard uncertainties of that reading. */
export function residualInU(line: SegmentLine, x: number, y: number, w: number): number {
  return (y - line.level - line.slope * (x - line.centre)) * Math.sqrt(w);
}

/**
 * How far a reading stands off from what the other readings of the segment say of it, in standard
 * uncertainties of that difference. Its square is what chi-square loses when the reading is put aside (or
 * gains when taken in).
 */
export function standOff(line: SegmentLine, x: number, y: number, w: number, member: boolean): number {
  const leverage = w * (line.uLevel ** 2 + (x - line.centre) ** 2 * line.uSlope ** 2);
  const share = member ? 1 - leverage : 1 + leverage;
  if (share < 1e-9) return 0; // the line passes through this reading whatever it is
  return Math.abs(residualInU(line, x, y, w)) / Math.sqrt(share);
}

/** Number of different positions among ascending members. */
export function positionsAmong(x: ArrayLike<number>, members: readonly number[]): number {
  let count = 0;
  for (let k = 0; k < members.length; k++) {
    if (k === 0 || x[members[k]!] !== x[members[k - 1]!]) count += 1;
  }
  return count;
}

/** Whether the members suffice for a segment of this shape. */
export function suffices(
  x: ArrayLike<number>,
  members: readonly number[],
  shape: SegmentShape,
  fewest: number,
): boolean {
  return members.length >= fewest && (shape === "flat" || positionsAmong(x, members) >= fewestPositions);
}
