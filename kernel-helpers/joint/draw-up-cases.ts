import type { Measured } from "../quantity/index.js";
import type { TaperFit } from "../survey/index.js";
import { centreOf } from "../survey/station-of-diameter.js";
import { drawCases, type InputShape, shapeOf } from "./fit-input.js";

/** A straight line of diameter along the axis about the place where its height and slope are uncorrelated, SI. */
interface LineShape {
  readonly centre: number;
  readonly height: InputShape;
  readonly slope: InputShape;
}

/** What one case gives, SI. Places are stations of the shaft; the hub's small face is at the place named. */
export interface DrawUpCases {
  readonly contact: readonly number[];
  /** Bore less shaft at the end that does not touch, on diameter. */
  readonly gap: readonly number[];
  /** Draw-up beyond first contact until it bears all along. */
  readonly bearsAllAfter: readonly number[];
  readonly shaftTaper: readonly number[];
  /** True where the large end touches first. */
  readonly largeFirst: readonly boolean[];
}

/**
 * Cases of a hub pushed on a taper: where it first touches, and the gap at the other end.
 *
 * shaft S(x) = S₀ + t_s x, bore B(y) = B₀ + t_b y; the small face at s touches where B(y) = S(s + y) first: at the
 * large end (y = L) when the shaft's taper is the steeper, else at the small end (y = 0)
 */
export function drawUpCases(
  shaft: TaperFit,
  bore: TaperFit,
  length: number,
  cases: number,
  seed: number,
): DrawUpCases {
  const [s, b] = [lineShape("shaft", shaft), lineShape("bore", bore)];
  const drawn = drawCases(
    { shaftHeight: s.height, shaftSlope: s.slope, boreHeight: b.height, boreSlope: b.slope },
    cases,
    seed,
  );
  const columns = {
    contact: [] as number[],
    gap: [] as number[],
    bearsAllAfter: [] as number[],
    shaftTaper: [] as number[],
    largeFirst: [] as boolean[],
  };
  for (let i = 0; i < cases; i++) {
    const [ts, tb] = [drawn.shaftSlope[i]!, drawn.boreSlope[i]!];
    const large = ts > tb;
    const y = large ? length : 0;
    const boreThere = drawn.boreHeight[i]! + tb * (y - b.centre);
    // S(x) = boreThere at x; the small face stands y before it.
    const x = s.centre + (boreThere - drawn.shaftHeight[i]!) / ts;
    const gap = Math.abs(ts - tb) * length;
    columns.contact.push(x - y);
    columns.gap.push(gap);
    columns.bearsAllAfter.push(gap / ts);
    columns.shaftTaper.push(ts);
    columns.largeFirst.push(large);
  }
  return columns;
}

/**
 * Mean interference along a hub drawn up beyond first contact.
 *
 * peak δ = t a at the end that touched first, falling by the gap g to the other: δ − g/2 where it bears all along,
 * else δ²/(2g) over the whole length
 *
 * @returns on diameter [m]
 */
export function meanInterference(drawUp: number, taper: number, gap: number): number {
  const peak = taper * drawUp;
  if (peak <= 0) return 0;
  return peak >= gap ? peak - gap / 2 : peak ** 2 / (2 * gap);
}

/** How far to draw up for a mean interference: the reverse of `meanInterference`. */
export function drawUpFor(interference: number, taper: number, gap: number): number {
  const peak = interference >= gap / 2 ? interference + gap / 2 : Math.sqrt(2 * gap * interference);
  return peak / taper;
}

function lineShape(field: string, fit: TaperFit): LineShape {
  const centre = centreOf(fit);
  const { smallEnd, taper } = fit;
  const value = smallEnd.diameter.value.si + taper.value * (centre - smallEnd.station.si);
  const away = centre - smallEnd.station.si;
  const variance = smallEnd.diameter.standardUncertainty.si ** 2 - (away * taper.standardUncertainty) ** 2;
  const height: Measured<number> = {
    kind: "measured",
    value,
    standardUncertainty: Math.sqrt(Math.max(0, variance)),
    degreesOfFreedom: taper.degreesOfFreedom,
  };
  return {
    centre,
    height: shapeOf("drawUp", `${field}.diameter`, height),
    slope: shapeOf("drawUp", `${field}.taper`, taper),
  };
}
