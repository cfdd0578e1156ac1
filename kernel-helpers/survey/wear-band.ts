import { type Length, measured, quantityFromSi } from "../quantity/index.js";
import { coverageFactor, type SegmentLine } from "../statistics/index.js";
import { combined } from "./combined.js";
import type { Profile, WearBand } from "./profile-types.js";
import type { StationMean } from "./station-means.js";
import { unitOf } from "./unit-of.js";
import type { BandByAngle } from "./wear-bands-angles.js";

/** One stretch of a divided shaft. */
export interface BandFound {
  readonly profile: Profile;
  readonly number: number;
  readonly segment: SegmentLine;
  /** Its stations, gross ones left out. */
  readonly members: readonly StationMean[];
  readonly byAngle: BandByAngle;
  /** Factor on the uncertainties of the segment [-]. */
  readonly widened: number;
  /** Degrees of freedom behind them [-]. */
  readonly dof: number;
}

/** Writes a stretch as a wear band: diameter at its middle, depth, and state. See `wearBands`. */
export function wearBand(
  { profile, number, segment, members, byAngle, widened, dof }: BandFound,
  nominal: Length | undefined,
  wornBeyond: Length | undefined,
): WearBand {
  const unit = unitOf(profile);
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const [first, last] = [members[0]!, members[members.length - 1]!];
  const middle = (first.position + last.position) / 2;
  const uFit = Math.hypot(segment.uLevel, (middle - segment.centre) * segment.uSlope) * widened;
  const { u, degreesOfFreedom } = combined(uFit, dof, profile.commonUncertainty.si);
  const diameter = measured(lengthOf(heightAt(segment, middle)), lengthOf(u), degreesOfFreedom);
  const depth =
    nominal === undefined
      ? undefined
      : measured(lengthOf(nominal.si - diameter.value.si), lengthOf(u), degreesOfFreedom);
  const expanded = coverageFactor(0.95, degreesOfFreedom) * u;
  return Object.freeze({
    number,
    shape: segment.shape,
    from: first.station.station,
    to: last.station.station,
    stationCount: members.length,
    readingCount: byAngle.readingCount,
    diameter,
    slope: measured(segment.slope, segment.uSlope * widened, dof),
    diameterAtFrom: lengthOf(heightAt(segment, first.position)),
    diameterAtTo: lengthOf(heightAt(segment, last.position)),
    depth,
    state: depth === undefined ? "not judged" : stateOf(depth.value.si, expanded, wornBeyond?.si ?? 0),
    smallest: byAngle.smallest,
    ovality: byAngle.ovality,
    smallestAngle: byAngle.smallestAngle,
  });
}

/** Diameter of a stretch at a position [m]. */
export function heightAt(segment: SegmentLine, position: number): number {
  return segment.level + segment.slope * (position - segment.centre);
}

function stateOf(depth: number, expanded: number, wornBeyond: number): WearBand["state"] {
  if (depth > Math.max(wornBeyond, expanded)) return "worn";
  return depth < -expanded ? "over size" : "as made";
}
