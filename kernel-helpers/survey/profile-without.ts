import { quantityFromSi } from "../quantity/index.js";
import { profileStation } from "./profile-station.js";
import type { Profile } from "./profile-types.js";
import type { StationMean } from "./station-means.js";

/**
 * The same profile, gross readings listed as before but without weight in their stations' means and extremes.
 *
 * A mean that lacks an angle is the one `stationMeans` fills. A station all of whose readings are gross keeps
 * its mean: there is nothing else to show there.
 */
export function withoutGross(
  profile: Profile,
  means: readonly StationMean[],
  gross: ReadonlySet<number>,
): Profile {
  const filled = new Map(
    means.filter(({ angles }) => angles === "filled").map((mean) => [mean.station, mean]),
  );
  if (gross.size === 0 && filled.size === 0) return profile;
  const stations = profile.stations.map((station) => {
    const sound = station.readings.filter((i) => !gross.has(i)).length;
    const mean = filled.get(station);
    if (sound === 0 || (sound === station.readings.length && mean === undefined)) return station;
    const anew = profileStation(profile.readings, station.readings, gross);
    if (mean === undefined) return anew;
    const unit = station.mean.writtenIn as never;
    return Object.freeze({
      ...anew,
      mean: quantityFromSi("length", mean.diameter, unit),
      standardUncertainty: quantityFromSi("length", mean.u, unit),
    });
  });
  return Object.freeze({ ...profile, stations: Object.freeze(stations) });
}
