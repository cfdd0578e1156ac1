import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { WearBand, WearBands } from "./profile-types.js";

/**
 * The band worn deepest: the one with the largest depth below nominal among those judged worn.
 *
 * @throws RangeError  no band is worn, or no nominal was given
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
 * The diameter the shaft was made to, as far as it can still be measured: the weighted mean of the bands
 * that are not worn. Weights are 1/u² of each band within the survey; what all bands share (calibration,
 * temperature) is added after, for averaging does not shrink it.
 *
 * @returns diameter at 20 °C [m] with its standard uncertainty
 * @throws RangeError  no band is left as made
 * @source JCGM 100:2008 (GUM), F.1.2.4 (a common systematic effect is not reduced by averaging); weighted mean:
 * P. R. Bevington & D. K. Robinson, Data Reduction and Error Analysis, 3rd edition, 2003, equations 4.17 and
 * 4.19 (from memory)
 */
export function asMadeDiameter(wear: WearBands): Measured<Length> {
  const bands = wear.bands.filter((band) => band.state === "as made" && band.shape === "flat");
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

/** The band a station lies in, or undefined between bands and off the surveyed length. */
export function bandAt(wear: WearBands, station: Length): WearBand | undefined {
  return wear.bands.find((band) => band.from.si <= station.si && station.si <= band.to.si);
}

function withinSurvey(total: number, common: number): number {
  const rest = total ** 2 - common ** 2;
  // A band cannot be better known than the readings it rests on; rounding must not make it so.
  return Math.sqrt(Math.max(rest, (1e-3 * total) ** 2));
}
