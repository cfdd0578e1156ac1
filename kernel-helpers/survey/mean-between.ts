import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { Profile } from "./profile-types.js";

/**
 * Plain mean of all readings between two stations (both included): the pocket-calculator way, which knows
 * nothing of bands, weights or gross errors.
 *
 * mean = Σd/n, u = s/√n with s from n − 1
 *
 * Readings that are all alike tell no scatter (they are rounded to one step): then u is that of one reading as stated,
 * not lessened by their number.
 *
 * Valid when: the stretch has one diameter and nothing was misread there. The uncertainty is from the scatter
 * alone (type A); what all readings share is not in it.
 *
 * @param profile  the diameters, at 20 °C
 * @param from, to  first and last station [m]
 * @returns mean diameter [m], its standard uncertainty [m], n − 1 degrees of freedom
 * @throws RangeError  fewer than two readings lie there
 * @example
 * const rows = ["0,2.4373", "1,2.4373", "2,2.4373", "3,2.4340", "4,2.4340", "5,2.4340"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * meanBetween(profile, inch(3), inch(5)).value.in("inch").toFixed(4) // "2.4340"
 * @source JCGM 100:2008 (GUM), 4.2.1 to 4.2.3, equations 3 and 5
 */
export function meanBetween(profile: Profile, from: Length, to: Length): Measured<Length> {
  const inside = profile.readings.filter(({ station }) => from.si <= station.si && station.si <= to.si);
  const n = inside.length;
  if (n < 2)
    throw new RangeError(`meanBetween: at least two readings must lie between ${from} and ${to}, got ${n}`);
  const first = inside[0]!.diameter.si;
  const excess = inside.map(({ diameter }) => diameter.si - first);
  const mean = excess.reduce((sum, value) => sum + value, 0) / n;
  const variance = excess.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1);
  const unit = profile.unitSystem === "inch" ? "inch" : "mm";
  const length = (si: number): Length => quantityFromSi("length", si, unit);
  // Readings all alike are rounded to one step, and wrong alike: then one reading's own uncertainty counts.
  if (variance === 0) return measured(length(first), inside[0]!.standardUncertainty);
  return measured(length(first + mean), length(Math.sqrt(variance / n)), n - 1);
}
