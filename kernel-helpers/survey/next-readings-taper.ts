import { type Length, quantityFromSi } from "../quantity/index.js";
import {
  candidates,
  informationOf,
  slopeVariance,
  type WeightedPlace,
  withReading,
} from "./next-readings-information.js";
import type { NextReading } from "./next-readings-types.js";
import type { TaperFit } from "./profile-types.js";
import { widening } from "./scatter-test.js";
import { stationMeans, usualAngles } from "./station-means.js";

const mostShown = 5;

/**
 * Where to read to know a taper better: u²(taper) = Σw/(Σw Σw d² − (Σw d)²), w = 1/(u²(mean) + (taper·u(station))²), before
 * and after one more station with all its angles. The ends have the longest lever; near the middle nothing is gained.
 */
export function nextForTaper(fit: TaperFit): {
  readonly before: number;
  readonly readings: readonly NextReading[];
} {
  const { profile } = fit;
  const gross = new Set(fit.gross.map(({ reading }) => reading));
  const used = new Set(fit.readings.map(({ station }) => station.si));
  const stations = profile.stations.filter(({ station }) => used.has(station.si));
  const means = stationMeans(profile, stations, gross);
  const widened = widening(fit.noiseRatio ** 2 * fit.degreesOfFreedom, fit.degreesOfFreedom).factor;
  const along = fit.method === "errors in both" ? fit.taper.value * profile.stationUncertainty.si : 0;
  const uOf = (u: number): number => Math.hypot(u, along) * widened;
  const places = means.map(({ position, u }): WeightedPlace => ({ position, weight: 1 / uOf(u) ** 2 }));
  const positions = places.map(({ position }) => position);
  const total = places.reduce((sum, { weight }) => sum + weight, 0);
  const centre = places.reduce((sum, { position, weight }) => sum + weight * position, 0) / total;
  const information = informationOf(places, centre, true);
  const sorted = means.map(({ u }) => uOf(u)).sort((a, b) => a - b);
  const weight = 1 / sorted[Math.floor(sorted.length / 2)]! ** 2;
  const before = Math.sqrt(slopeVariance(information));
  const usual = usualAngles(profile, stations);
  const angles = Object.freeze(profile.angles.filter(({ si }) => usual.includes(si)));
  const like = stations[0]!.station.writtenIn as never;
  const ends = [positions[0]!, positions[positions.length - 1]!];
  const readings = candidates(positions).map((position): NextReading => {
    const uWith = (times: number): number =>
      Math.sqrt(slopeVariance(withReading(information, { position, weight: times * weight })));
    return Object.freeze({
      station: quantityFromSi("length", position, like) as Length,
      angles,
      afterOne: uWith(1),
      afterThree: uWith(3),
      gain: 1 - uWith(1) / before,
      clearAfterOne: undefined,
      clearAfterThree: undefined,
      reason: ends.includes(position)
        ? "At an end of the taper, where a reading has the longest lever; lay the station out anew, so that its error is another."
        : `A lever of ${Math.round((100 * Math.abs(position - centre)) / Math.max(...ends.map((end) => Math.abs(end - centre))))} % of that at the far end.`,
    });
  });
  return {
    before,
    readings: readings.sort((a, b) => b.gain - a.gain || a.station.si - b.station.si).slice(0, mostShown),
  };
}
