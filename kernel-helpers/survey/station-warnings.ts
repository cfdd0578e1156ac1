import type { GrossReading, Profile, ProfileStation } from "./profile-types.js";
import { angleOf, type StationMean, usualAngles } from "./station-means.js";

/** Doubts about single stations, each a sentence. */
export function stationWarnings(
  profile: Profile,
  stations: readonly ProfileStation[],
  means: readonly StationMean[],
  gross: readonly GrossReading[],
): readonly string[] {
  const usual = new Set(usualAngles(profile, stations));
  const filled = means.filter(({ angles }) => angles === "filled").map(({ station }) => station);
  const other = stations.filter((station) => station.readings.some((i) => !usual.has(angleOf(profile, i))));
  const warnings: string[] = [];
  const residuals = new Map(gross.map(({ reading, residual }) => [reading, residual.si]));
  for (const { station, readings } of stations) {
    const signs = new Set(readings.map((i) => Math.sign(residuals.get(i) ?? Number.NaN)));
    if (readings.length > 1 && signs.size === 1 && !signs.has(Number.NaN))
      warnings.push(
        `At station ${station}, all ${readings.length} readings stand off their neighbours alike: a narrow groove or ridge, or the wrong station. Read again close by.`,
      );
  }
  if (filled.length > 0)
    warnings.push(
      `${atStations(filled)} one angle is missing or gross; there the diameter is taken to differ from the other angles as at the neighbouring station.`,
    );
  if (other.length > 0 && usual.size > 0)
    warnings.push(
      `${atStations(other)} readings stand at angles seldom read; they are not searched for gross errors, and count only where no usual angle was read.`,
    );
  if (usual.size === 0)
    warnings.push(
      "No angle is read at half of the stations or more, so out-of-roundness looks like noise, and single readings are not searched for gross errors.",
    );
  return warnings;
}

/** "At station 27 in," or "At 3 stations (27 in, …),": the comma keeps the unit from being read as a word. */
function atStations(stations: readonly ProfileStation[]): string {
  const [first] = stations;
  return stations.length === 1
    ? `At station ${first!.station},`
    : `At ${stations.length} stations (${first!.station}, …),`;
}
