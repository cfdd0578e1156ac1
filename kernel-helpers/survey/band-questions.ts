import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { WearBand, WearBands } from "./profile-types.js";

/**
 * The band worn deepest: the one with the largest depth below nominal among those judged worn.
 *
 * @param wear  the bands of a shaft
 * @returns the band, its depth on diameter [m]
 * @throws RangeError  no band is worn, or no nominal was given
 * @example
 * const rows = ["0,2.4373", "1,2.4373", "2,2.4373", "3,2.4340", "4,2.4340", "5,2.4340"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
 * deepestBand(wear).number // 2
 */
export function deepestBand(wear: WearBands): WearBand {
  const worn = wear.bands.filter((band) => band.state === "worn");
  if (worn.length === 0)
    throw new RangeError(
      `deepestBand: none of the ${wear.bands.length} bands is judged worn${wear.nominal === undefined ? ", for no nominal diameter was given" : ""}`,
    );
  return worn.reduce((deepest, band) => (band.depth!.value > deepest.depth!.value ? band : deepest));
}

/**
 * The band that matters most: the one worn deepest; where none is worn, or wear is not judged, the one of the smallest
 * diameter. Every survey has one.
 *
 * @param wear  the bands of a shaft
 * @returns the band
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0,2.4373\n1,2.4373\n2,2.4372\n3,2.4373");
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * smallestBand(wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) })).state // "as made"
 */
export function smallestBand(wear: WearBands): WearBand {
  if (wear.bands.some(({ state }) => state === "worn")) return deepestBand(wear);
  return wear.bands.reduce((least, band) => (band.diameter.value < least.diameter.value ? band : least));
}

/**
 * The diameter the shaft was made to, as `asMadeDiameter` gives it, or undefined where no band is left flat and as made.
 *
 * @param wear  the bands of a shaft
 * @returns diameter at 20 °C [m] with its standard uncertainty [m], or undefined
 * @example
 * const rows = ["0,2.4340", "1,2.4340", "2,2.4340", "3,2.4341"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * asMadeIfLeft(wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) })) // undefined
 */
export function asMadeIfLeft(wear: WearBands): Measured<Length> | undefined {
  return wear.bands.some(isAsMade) ? asMadeDiameter(wear) : undefined;
}

function isAsMade({ state, shape }: WearBand): boolean {
  return state === "as made" && shape === "flat";
}

/**
 * The diameter the shaft was made to, as far as it can still be measured: the weighted mean of the bands
 * that are not worn. Weights are 1/u² of each band within the survey; what all bands share (calibration,
 * temperature) is added after, for averaging does not shrink it.
 *
 * D = ΣwD/Σw, u² = 1/Σw + u²(common)
 *
 * Valid when: all parts that are not worn were made to one diameter. Sloping bands are left out.
 *
 * @param wear  the bands of a shaft
 * @returns diameter at 20 °C [m] with its standard uncertainty [m]
 * @throws RangeError  no band is left flat and as made
 * @example
 * const rows = ["0,2.4373", "1,2.4373", "2,2.4373", "3,2.4340", "4,2.4340", "5,2.4340"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
 * asMadeDiameter(wear).value.in("inch").toFixed(4) // "2.4373"
 * @source JCGM 100:2008 (GUM), F.1.2.4 (a common systematic effect is not reduced by averaging); weighted mean:
 * P. R. Bevington & D. K. Robinson, Data Reduction and Error Analysis, 3rd edition, 2003, equations 4.17 and
 * 4.19 (from memory)
 */
export function asMadeDiameter(wear: WearBands): Measured<Length> {
  const bands = wear.bands.filter(isAsMade);
  if (bands.length === 0)
    throw new RangeError(`asMadeDiameter: none of the ${wear.bands.length} bands is flat and as made`);
  const common = wear.profile.commonUncertainty.si;
  const weights = bands.map(({ diameter }) => 1 / withinSurvey(diameter.standardUncertainty.si, common) ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const first = bands[0]!.diameter.value;
  // About the first band, so that the mean of near-equal diameters keeps its last digits.
  const shift =
    bands.reduce((sum, { diameter }, i) => sum + weights[i]! * diameter.value.minus(first).si, 0) / total;
  const u = Math.hypot(1 / Math.sqrt(total), common);
  const length = (si: number): Length => quantityFromSi("length", si, first.writtenIn);
  return measured(first.plus(length(shift)), length(u));
}

/**
 * The band a station lies in.
 *
 * @param wear  the bands of a shaft
 * @param station  the place asked for [m]
 * @returns the band, or undefined between bands and off the surveyed length
 * @example
 * const rows = ["0,2.4373", "1,2.4373", "2,2.4373", "3,2.4340", "4,2.4340", "5,2.4340"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * bandAt(wearBands(profile), inch(4)).number // 2
 */
export function bandAt(wear: WearBands, station: Length): WearBand | undefined {
  return wear.bands.find((band) => band.from.si <= station.si && station.si <= band.to.si);
}

function withinSurvey(total: number, common: number): number {
  const rest = total ** 2 - common ** 2;
  // A band cannot be better known than the readings it rests on; rounding must not make it so.
  return Math.sqrt(Math.max(rest, (1e-3 * total) ** 2));
}
