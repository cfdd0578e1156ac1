import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { TaperFit } from "./profile-types.js";

/**
 * The station at which a taper has a given diameter, by its fitted line: where it runs out into the shaft, or
 * where a hub of that bore sits.
 *
 * x = c + (d − d_c)/t; u(x)² = [u(d)² + u(d_c)² + (x − c)²·u(t)²]/t², about the centre c of the readings, where
 * the line's diameter d_c and its taper t are uncorrelated
 *
 * Valid when: the taper goes on straight to there. The diameter and the taper share no readings.
 *
 * @param taper     the fitted taper
 * @param diameter  the diameter with its standard uncertainty [m]
 * @returns station [m] with its standard uncertainty [m], first order in the uncertainties
 * @throws RangeError  the taper is 0 within twice its standard uncertainty: no station can be told
 * @example
 * const rows = ["0,2.0000", "2,2.1250", "4,2.2500", "6,2.3750"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
 * const taper = fitTaper(profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(1) }));
 * stationOfDiameter(taper, measured(inch(2.4375), thou(0.2))).value.in("inch").toFixed(3) // "7.000"
 * @source JCGM 100:2008 (GUM), 5.1.2, equation 10; N. R. Draper & H. Smith, Applied Regression Analysis,
 * 3rd edition, 1998, section 3.2, inverse regression (from memory)
 */
export function stationOfDiameter(taper: TaperFit, diameter: Measured<Length>): Measured<Length> {
  const t = taper.taper.value;
  if (Math.abs(t) <= 2 * taper.taper.standardUncertainty)
    throw new RangeError(
      `stationOfDiameter: the taper must differ from 0, got ${t} with standard uncertainty ${taper.taper.standardUncertainty}`,
    );
  const { station: from, diameter: end } = taper.smallEnd;
  const centre = centreOf(taper);
  const atCentre = end.value.si + t * (centre - from.si);
  const away = (diameter.value.si - atCentre) / t;
  const variance =
    diameter.standardUncertainty.si ** 2 +
    end.standardUncertainty.si ** 2 +
    (away ** 2 - (from.si - centre) ** 2) * taper.taper.standardUncertainty ** 2;
  const length = (si: number): Length => quantityFromSi("length", si, from.writtenIn);
  return measured(
    length(centre + away),
    // At the centre rounding may leave a hair below zero.
    length(Math.sqrt(Math.max(0, variance)) / Math.abs(t)),
    taper.taper.degreesOfFreedom,
  );
}

/**
 * The station about which a line's height and slope are uncorrelated. It follows from the uncertainties at the
 * two ends, u² = u_c² + (x − c)²·u(t)², whatever else both have in common.
 *
 * @returns station [m]; the middle of the ends where the taper's uncertainty is 0
 */
export function centreOf({ smallEnd, largeEnd, taper }: TaperFit): number {
  const [a, b] = [smallEnd, largeEnd];
  const middle = (a.station.si + b.station.si) / 2;
  const u = taper.standardUncertainty;
  if (u === 0) return middle;
  const difference = a.diameter.standardUncertainty.si ** 2 - b.diameter.standardUncertainty.si ** 2;
  return middle - difference / (2 * u ** 2 * (a.station.si - b.station.si));
}
