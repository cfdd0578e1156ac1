import type { Length } from "../quantity/index.js";
import { median } from "./median.js";
import type { Profile, ProfileStation } from "./profile-types.js";

/** A station at the very end of the stretch belongs to it [m]. */
const atTheEnd = 1e-9;

/** The stations from one to another, both included. */
export function taperStretch(
  profile: Profile,
  from: Length | undefined,
  to: Length | undefined,
): readonly ProfileStation[] {
  if (from !== undefined && to !== undefined && !(from.si < to.si))
    throw new RangeError(`fitTaper: from must lie before to, got ${from} and ${to}`);
  const low = (from?.si ?? Number.NEGATIVE_INFINITY) - atTheEnd;
  const high = (to?.si ?? Number.POSITIVE_INFINITY) + atTheEnd;
  const stations = profile.stations.filter(({ station }) => station.si >= low && station.si <= high);
  if (stations.length < 3) {
    const found = profile.readings.length === 1 ? "one reading only" : `${stations.length}`;
    const where =
      from === undefined && to === undefined ? "" : ` between ${from ?? "the first"} and ${to ?? "the last"}`;
    throw new RangeError(`fitTaper: at least 3 stations are needed${where}, got ${found}`);
  }
  return stations;
}

/** The median of the slopes from station to station [-]; a few gross readings do not move it far. */
export function roughSlope(stations: readonly ProfileStation[]): number {
  return median(
    stations
      .slice(1)
      .map((s, i) => (s.mean.si - stations[i]!.mean.si) / (s.station.si - stations[i]!.station.si)),
  );
}
