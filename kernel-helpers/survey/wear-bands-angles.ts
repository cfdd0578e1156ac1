import { type Angle, type Length, quantityFromSi } from "../quantity/index.js";
import { chiSquareSurvival } from "../statistics/index.js";
import type { Profile, WearBand } from "./profile-types.js";
import { angleMeans, type StationMean, usualAngles } from "./station-means.js";

/** What the angles of one band say. */
export interface BandByAngle extends Pick<WearBand, "smallest" | "ovality" | "smallestAngle"> {
  readonly readingCount: number;
  /** Diameter at an angle less the band's mean diameter [m]; 0 where nothing is known of it. */
  readonly offsetAt: (angle: Angle | undefined) => number;
}

/** An angle is named the smallest only where so large a difference comes by chance once in so many bands. */
const rarerThan = 0.01;

/**
 * How a band differs from angle to angle.
 *
 * Offset of an angle: mean over the band's complete stations of (diameter there − mean over the angles). The
 * smallest angle is named where χ² = Σ n·offset²/u², M − 1 degrees of freedom, is too large for chance at 1 %.
 *
 * @param profile  the diameter along the shaft
 * @param members  the band's stations
 * @param gross  indices of readings without weight
 * @param surelyGross  those of them that are gross beyond doubt: the others may be the smallest
 * @param widened  factor on the stated uncertainties [-]
 * @source chi-square test of equal means with known noise: textbook
 */
export function bandByAngle(
  profile: Profile,
  members: readonly StationMean[],
  gross: ReadonlySet<number>,
  surelyGross: ReadonlySet<number>,
  widened: number,
): BandByAngle {
  const there = members.flatMap(({ station }) => station.readings);
  const smallest = there
    .filter((i) => !surelyGross.has(i))
    .map((i) => profile.readings[i]!)
    .reduce((least, reading) => (reading.diameter.si < least.diameter.si ? reading : least));
  const usual = usualAngles(
    profile,
    members.map(({ station }) => station),
  );
  const offsets = new Map<number, number>(usual.map((angle) => [angle, 0]));
  let complete = 0;
  let ovalities = 0;
  let variances = 0;
  for (const { station } of members) {
    const means = angleMeans(profile, station, gross);
    if (usual.length < 2 || !usual.every((angle) => means.has(angle))) continue;
    const here = usual.map((angle) => means.get(angle)!.diameter);
    const mean = here.reduce((sum, d) => sum + d, 0) / here.length;
    usual.forEach((angle, k) => {
      offsets.set(angle, offsets.get(angle)! + here[k]! - mean);
      variances += means.get(angle)!.u ** 2 / usual.length;
    });
    ovalities += Math.max(...here) - Math.min(...here);
    complete += 1;
  }
  if (complete > 0) for (const [angle, sum] of offsets) offsets.set(angle, sum / complete);
  const lengthOf = (si: number): Length => quantityFromSi("length", si, smallest.diameter.writtenIn as never);
  return {
    readingCount: there.filter((i) => !gross.has(i)).length,
    smallest: Object.freeze({
      diameter: smallest.diameter,
      station: smallest.station,
      angle: smallest.angle,
    }),
    ovality: complete === 0 ? undefined : lengthOf(ovalities / complete),
    smallestAngle: complete === 0 ? undefined : smallestAngle(profile, offsets, complete, variances, widened),
    offsetAt: (angle) => offsets.get(angle?.si ?? Number.NaN) ?? 0,
  };
}

function smallestAngle(
  profile: Profile,
  offsets: ReadonlyMap<number, number>,
  complete: number,
  variances: number,
  widened: number,
): Angle | undefined {
  const variance = (variances / complete ** 2) * widened ** 2;
  let chiSquare = 0;
  let least = Number.POSITIVE_INFINITY;
  let where = Number.NaN;
  for (const [angle, offset] of offsets) {
    chiSquare += offset ** 2 / variance;
    if (offset < least) [least, where] = [offset, angle];
  }
  if (chiSquareSurvival(chiSquare, offsets.size - 1) >= rarerThan) return undefined;
  return profile.angles.find(({ si }) => si === where);
}
