import type { Angle } from "../quantity/index.js";
import { type Information, informationOf, type WeightedPlace } from "./next-readings-information.js";
import type { WearBand, WearBands } from "./profile-types.js";
import { stationMeans, usualAngles } from "./station-means.js";

/** A band as a source of further readings. */
export interface BandDesign {
  readonly band: WearBand;
  /** Positions of its stations [m]. */
  readonly positions: readonly number[];
  readonly information: Information;
  /** What one more station, read at the usual angles, weighs [1/m²]. */
  readonly weight: number;
  readonly angles: readonly Angle[];
  /** Factor on the stated uncertainties [-]. */
  readonly widened: number;
}

/** The information the survey gives of a band, about the middle of its stations, as `wearBands` used it. */
export function bandDesign(wear: WearBands, band: WearBand): BandDesign {
  const { profile } = wear;
  const gross = new Set(wear.gross.map(({ reading }) => reading));
  const stations = profile.stations.filter(
    ({ station }) => station.si >= band.from.si - 1e-9 && station.si <= band.to.si + 1e-9,
  );
  const widened = band.slope.degreesOfFreedom === Number.POSITIVE_INFINITY ? 1 : wear.noiseRatio;
  const means = stationMeans(profile, stations, gross);
  const places = means.map(
    ({ position, u }): WeightedPlace => ({ position, weight: 1 / (u * widened) ** 2 }),
  );
  const sorted = means.map(({ u }) => u * widened).sort((a, b) => a - b);
  return {
    band,
    positions: places.map(({ position }) => position),
    information: informationOf(places, (band.from.si + band.to.si) / 2, band.shape === "sloping"),
    weight: 1 / sorted[Math.floor(sorted.length / 2)]! ** 2,
    angles: anglesUsual(wear, stations),
    widened,
  };
}

function anglesUsual({ profile }: WearBands, stations: WearBands["profile"]["stations"]): readonly Angle[] {
  const usual = usualAngles(profile, stations);
  return profile.angles.filter(({ si }) => usual.includes(si));
}

/** The band of a number as given, or the one a rule picks. */
export function bandNumbered(
  where: string,
  { bands }: WearBands,
  number: number | undefined,
): WearBand | undefined {
  if (number === undefined) return undefined;
  const found = bands.find((band) => band.number === number);
  if (found === undefined)
    throw new RangeError(`${where}: band must be a whole number from 1 to ${bands.length}, got ${number}`);
  return found;
}
