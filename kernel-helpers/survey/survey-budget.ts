import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import { type Budget, budget, exactly, type Uncertain, uncertain } from "../statistics/index.js";
import { deepestBand } from "./band-questions.js";
import type { Profile, TaperFit, WearBand, WearBands } from "./profile-types.js";
import { scattersTooMuch } from "./scatter-test.js";

/**
 * The uncertainty budget of a band's diameter: what the readings leave open, the setting of the instrument, the
 * temperature. That of its depth is the same, the nominal diameter being exact.
 *
 * u² = u²(fit at the middle of the band) + u²(setting) + u²(temperature)
 *
 * Valid when: the parts are independent. Where readings scatter more than stated, the fit's part is that seen.
 *
 * @param wear    wear bands
 * @param number  which band, from 1; default the deepest [-]
 * @returns the budget, of the depth on diameter where a nominal diameter was given, else of the diameter [m]
 * @throws RangeError  there is no such band, or none is worn and none was named
 * @example
 * const rows = ["0,2.4375", "1,2.4374", "2,2.4375", "4,2.4331", "5,2.4332", "6,2.4332"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const wear = wearBands(profileOf(survey, { readingUncertainty: thou(0.1) }), { nominal: inch(2.4375) });
 * depthBudget(wear).rows[0].source // "3 readings of the band"
 * @source JCGM 100:2008 (GUM), 5.1.2 and clause 8
 */
export function depthBudget(wear: WearBands, number?: number): Budget {
  const band = number === undefined ? deepestBand(wear) : wear.bands.find((b) => b.number === number);
  if (band === undefined)
    throw new RangeError(
      `depthBudget: number must be that of a band, 1 to ${wear.bands.length}, got ${number}`,
    );
  const common = commonTo(wear.profile);
  const all = band.diameter.standardUncertainty.si;
  const own = Math.sqrt(Math.max(0, all ** 2 - common.reduce((sum, { si }) => sum + si ** 2, 0)));
  const unit = band.diameter.value.writtenIn;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit as never);
  const found = band.depth?.value ?? band.diameter.value;
  const sum = [
    uncertain(measured(found, lengthOf(own), band.slope.degreesOfFreedom), readingsOf(band)),
    ...common.map(({ name, si }) => uncertain(measured(lengthOf(0), lengthOf(si)), name)),
  ].reduce<Uncertain<"length">>((total, part) => total.plus(part), exactly(lengthOf(0)));
  const what = band.depth === undefined ? "diameter" : "depth, on diameter,";
  return budget(sum, { title: `Uncertainty of the ${what} of band ${band.number}` });
}

/**
 * The uncertainty budget of a fitted taper: what comes of the diameters, and what of the stations.
 *
 * For the line through station means with weights w = 1/(u_d² + C² u_z²): C = Σ w δ d / Σ w δ², δ = z − z̄_w, so
 * u²(C) = Σ (w δ)² u_d² / S² + C² Σ (w δ)² u_z² / S², S = Σ w δ². What is common to all diameters moves both ends
 * together and is not in it. Where the readings scatter more than stated, nobody can tell what of it comes of which:
 * the budget then has the scatter seen as its one source.
 *
 * @param taper  a fitted taper
 * @returns the budget of the taper, diameter change for a length along the axis [-]
 * @throws RangeError  the taper has no uncertainty
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0,0.7800\n1,0.8302\n2,0.8804\n3,0.9306");
 * const survey = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * taperBudget(fitTaper(profile)).rows[0].source // "positions of 4 stations"
 * @source D. York et al., American Journal of Physics 72 (2004) 367-375, equation 13; JCGM 100:2008 (GUM), 5.1.2
 */
export function taperBudget(taper: TaperFit): Budget {
  const title = "Uncertainty of the taper, on diameter";
  const { value, standardUncertainty: u, degreesOfFreedom } = taper.taper;
  const source = (share: number, name: string, dof = degreesOfFreedom): Uncertain<"number"> =>
    uncertain(measured(0, u * Math.sqrt(share), dof) as Measured<number>, name);
  const from = (parts: readonly Uncertain<"number">[]): Budget =>
    budget(
      parts.reduce((total, part) => total.plus(part), exactly(value)),
      { title, slope: true, degreesOfFreedom },
    );
  if (scattersTooMuch(taper.noiseRatio ** 2 * taper.degreesOfFreedom, taper.degreesOfFreedom))
    return from([source(1, "scatter seen about the line: diameters, stations and form together")]);

  const { stations, stationUncertainty } = taper.profile;
  const [low, high] = [taper.smallEnd.station.si, taper.largeEnd.station.si].sort((a, b) => a - b);
  const used = stations.filter(({ station }) => station.si >= low! && station.si <= high!);
  const ux = taper.method === "errors in both" ? stationUncertainty.si : 0;
  const weights = used.map(
    ({ standardUncertainty }) => 1 / (standardUncertainty.si ** 2 + (value * ux) ** 2),
  );
  const total = weights.reduce((sum, w) => sum + w, 0);
  const centre = used.reduce((sum, { station }, i) => sum + weights[i]! * station.si, 0) / total;
  let [ofDiameters, ofStations] = [0, 0];
  used.forEach(({ station, standardUncertainty }, i) => {
    const lever = (weights[i]! * (station.si - centre)) ** 2;
    ofDiameters += lever * standardUncertainty.si ** 2;
    ofStations += lever * (value * ux) ** 2;
  });
  const both = ofDiameters + ofStations;
  return from([
    source(ofDiameters / both, `${taper.readings.length - taper.gross.length} diameters read`),
    ...(ofStations > 0 ? [source(ofStations / both, `positions of ${used.length} stations`)] : []),
  ]);
}

/** What moves all readings alike, part by part [m]; as a whole where no more is known. */
function commonTo({ commonUncertainty, commonSources }: Profile): { name: string; si: number }[] {
  const parts = (commonSources ?? []).map(({ name, standardUncertainty: u }) => ({ name, si: u.si }));
  const together = Math.hypot(...parts.map(({ si }) => si));
  if (Math.abs(together - commonUncertainty.si) <= 1e-9 * commonUncertainty.si) return parts;
  return [{ name: "setting and temperature, common to all readings", si: commonUncertainty.si }];
}

function readingsOf({ readingCount, stationCount }: WearBand): string {
  return readingCount === stationCount
    ? `${readingCount} readings of the band`
    : `${readingCount} readings of the band at ${stationCount} stations`;
}
