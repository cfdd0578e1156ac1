import { bandPosterior, type SegmentShape } from "../statistics/index.js";
import { median } from "./median.js";
import { upperQuartileOfNormal } from "./neighbour-scatter.js";
import type { Profile } from "./profile-types.js";
import { angleOf, usualAngles } from "./station-means.js";

/** Which readings are gross, and how surely. */
export interface DoubtfulReadings {
  /** Those of the most probable choice. */
  readonly gross: Set<number>;
  /** Probability of each reading that may be gross, by its index in the profile; others are gross with less than 0.01. */
  readonly probability: ReadonlyMap<number, number>;
  /** The choices of gross readings and how probable each is; adds to 1. */
  readonly sets: readonly { readonly gross: ReadonlySet<number>; readonly probability: number }[];
}

/** Readings of the profile as rows along the shaft, in SI. */
interface ReadingRows {
  /** Index of each in the profile. */
  readonly index: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly u: readonly number[];
  /** One row an angle that is usual; all other readings are one row. */
  readonly rows: readonly (number | string)[];
}

/** Beyond so many readings the choices of gross ones are not weighed. */
export const mostToDoubt = 1000;

/**
 * The noise of most readings over the stated one, so that a single wrong reading does not hide in the scatter it makes
 * itself: the root mean square of those within 4 times the middle one's scatter; 1 where honest noise scatters as much.
 *
 * @param off  how far each reading stands off its angle's band [standard uncertainties]
 */
export function usualNoise(off: readonly number[]): number {
  if (off.length === 0) return 1;
  const middle = Math.max(1, median(off) / upperQuartileOfNormal);
  const usual = off.filter((one) => one <= 4 * middle);
  const scatter = Math.sqrt(usual.reduce((sum, one) => sum + one * one, 0) / usual.length);
  return scatter > 1 + 1.5 / Math.sqrt(off.length) ? Math.max(scatter, middle) : 1;
}

/** How far reading i stands off beyond both its neighbours, the nearer of them counting [standard uncertainties]; else 0. */
export function beyondBoth(y: readonly number[], u: readonly number[], i: number): number {
  if (i === 0 || i === y.length - 1) return 0;
  const [before, behind] = [y[i]! - y[i - 1]!, y[i]! - y[i + 1]!];
  return before * behind > 0 ? Math.min(Math.abs(before), Math.abs(behind)) / u[i]! : 0;
}

/** The readings along the shaft. */
function readingRows(profile: Profile, factor: number): ReadingRows {
  const usual = new Set(usualAngles(profile, profile.stations));
  const index = profile.stations.flatMap(({ readings }) => readings);
  const station = new Map(
    profile.stations.flatMap(({ station: { si }, readings }) => readings.map((i) => [i, si] as const)),
  );
  return {
    index,
    x: index.map((i) => station.get(i)!),
    y: index.map((i) => profile.readings[i]!.diameter.si),
    u: index.map((i) => profile.readings[i]!.standardUncertainty.si * factor),
    rows: index.map((i) => {
      const angle = angleOf(profile, i);
      return usual.has(angle) ? angle : "other";
    }),
  };
}

/**
 * Weighs which readings are gross by all of them together: the angles share their edges, so that a reading at 0° next to
 * an edge is told from its band by what 90° says of the edge.
 *
 * See `bandPosterior` with rows: each angle has a line of its own in each band, so one-sided wear is no gross error. It takes
 * errors for independent; readings of one station that all stand off alike speak for a groove or the wrong station, which
 * `stationWarnings` says, and no probability is told of them.
 *
 * @param profile  the diameter along the shaft
 * @param suspects  readings that stand off their own angle's neighbours
 * @param factor  on the stated uncertainties, for the noise seen: see `usualNoise` [-]
 * @param shapes  shapes a band may have
 */
export function doubtfulReadings(
  profile: Profile,
  suspects: ReadonlySet<number>,
  factor: number,
  shapes: readonly SegmentShape[] | undefined,
): DoubtfulReadings {
  const { index, x, y, u, rows } = readingRows(profile, factor);
  const posterior = bandPosterior(x, y, {
    u,
    rows,
    ...(shapes === undefined ? {} : { shapes }),
    suspects: index.flatMap((reading, i) => (suspects.has(reading) ? [i] : [])),
  });
  return {
    gross: new Set(posterior.gross.map((i) => index[i]!)),
    probability: new Map(posterior.doubtful.map(({ index: i, probability }) => [index[i]!, probability])),
    sets: posterior.grossSets.map(({ gross, probability }) => ({
      gross: new Set(gross.map((i) => index[i]!)),
      probability,
    })),
  };
}
