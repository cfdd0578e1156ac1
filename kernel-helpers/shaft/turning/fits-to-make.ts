import {
  type ForceFitClass,
  isoFit,
  type LocationalFitClass,
  type RunningLimitsClass,
  standardForceFit,
  standardLocationalFit,
  standardRunningLimits,
} from "../../handbook/index.js";
import { type Length, type Measured, quantityFromSi, type UnitSystem } from "../../quantity/index.js";
import { coverageFactor } from "../../statistics/index.js";
import type { WearBands } from "../../survey/index.js";

/** Two diameters that a finished size must lie between. */
export interface SizeLimits {
  readonly smallest: Length;
  readonly largest: Length;
}

/** What one new part is bored to, and what lies between it and the shaft. */
export interface FitToMake {
  readonly part: string;
  /** e.g. "ISO 286 H7/h6", "ANSI B4.1 LC2". */
  readonly fit: string;
  readonly type: "clearance" | "transition" | "interference";
  /** Of a hole and a new shaft, both made to the nominal size. */
  readonly hole: SizeLimits;
  readonly shaft: SizeLimits;
  /** DIAMETRAL clearance, hole less shaft, from least to most; below 0 it is an interference. */
  readonly least: Length;
  readonly most: Length;
  /** Bore that gives the same clearance on the shaft as it was measured; undefined where it was measured too coarsely. */
  readonly boreForTheShaft: SizeLimits | undefined;
  readonly source: string;
}

/** Limits of the parts that are made new for one seat. */
export interface FitsToMake {
  readonly kind: "fits to make";
  readonly unitSystem: UnitSystem | undefined;
  readonly nominal: Length;
  readonly station: Length;
  /** The shaft at the station, by the survey. */
  readonly asMeasured: Measured<Length>;
  readonly fits: readonly FitToMake[];
  readonly warnings: readonly string[];
}

/** The seat, and what sits on it. */
export interface FitsToMakeInput {
  readonly nominal: Length;
  /** Name of each part, and its fit: "H7/k6" of ISO 286, or "RC5", "LC2", "LT3", "LN2", "FN2" of ANSI B4.1. */
  readonly parts: Readonly<Record<string, string>>;
  readonly wear: WearBands;
  /** Where on the shaft, in the survey's stations; within a band. */
  readonly station: Length;
}

/**
 * What new parts are bored to: limits of hole and shaft by the fit that each is to have, and the bore that gives the same
 * clearance on a shaft that is kept, which is never just the nominal size.
 *
 * for the shaft kept, known to d ± U (95 %): smallest bore = d + U + least, largest bore = d − U + most
 *
 * Valid when: as `isoFit`, `standardRunningLimits`, `standardLocationalFit`, `standardForceFit`; DIAMETERS throughout.
 *
 * @param input  nominal [m], fits by part, the shaft's wear bands and the station [m]
 * @returns for each part the limits, the clearance and the bore for the shaft as measured [m]
 * @throws RangeError  no part, no such fit, a size outside its table, or a station outside every band
 * @example
 * const rows = ["0,2.437", "1,2.437", "2,2.437", "3,2.437"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const wear = wearBands(profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) }));
 * fitsToMake({ nominal: inch(2.4375), parts: { collar: "LC2" }, wear, station: inch(2) }).fits[0].most.in("thou") // 1.9
 * @source ISO 286-1:2010; ANSI/ASME B4.1-1967 (2009); the guard by U as ISO 14253-1 has it
 */
export function fitsToMake({ nominal, parts, wear, station }: FitsToMakeInput): FitsToMake {
  const names = Object.entries(parts);
  if (names.length === 0) throw new RangeError("fitsToMake: parts must name at least one part, got none");
  const band = wear.bands.find(({ from, to }) => from.si <= station.si && station.si <= to.si);
  if (band === undefined)
    throw new RangeError(
      `fitsToMake: station must lie within a band of the survey (${wear.bands.map(({ from, to }) => `${from} to ${to}`).join(", ")}), got ${station}`,
    );
  const middle = (band.from.si + band.to.si) / 2;
  const here = band.diameter.value.si + band.slope.value * (station.si - middle);
  const guard = coverageFactor(0.95, band.diameter.degreesOfFreedom) * band.diameter.standardUncertainty.si;
  const size = (si: number): Length => quantityFromSi("length", si, nominal.writtenIn);
  const fits = names.map(([part, name]): FitToMake => {
    const found = limitsOf(part, nominal, name);
    const bore = { smallest: here + guard + found.least.si, largest: here - guard + found.most.si };
    return Object.freeze<FitToMake>({
      part,
      ...found,
      type: found.least.si >= -1e-12 ? "clearance" : found.most.si <= 1e-12 ? "interference" : "transition",
      boreForTheShaft:
        bore.smallest < bore.largest
          ? Object.freeze({ smallest: size(bore.smallest), largest: size(bore.largest) })
          : undefined,
    });
  });
  const tooCoarse = fits.filter(({ boreForTheShaft }) => boreForTheShaft === undefined);
  return Object.freeze<FitsToMake>({
    kind: "fits to make",
    unitSystem: wear.profile.unitSystem,
    nominal,
    station,
    asMeasured: Object.freeze({ ...band.diameter, value: size(here) }),
    fits: Object.freeze(fits),
    warnings: Object.freeze(
      tooCoarse.map(
        ({ part, fit }) =>
          `No bore is sure to give "${part}" its fit, ${fit}, on this shaft: its diameter is known too coarsely. Measure the seat again, closer, or fit the bore to it by trial.`,
      ),
    ),
  });
}

function limitsOf(
  part: string,
  nominal: Length,
  name: string,
): Omit<FitToMake, "part" | "type" | "boreForTheShaft"> {
  const at = (deviation: Length): Length => nominal.plus(deviation);
  const limits = ({ lower, upper }: { lower: Length; upper: Length }): SizeLimits =>
    Object.freeze({ smallest: at(lower), largest: at(upper) });
  const wanted = name.trim();
  if (/^RC\d+$/.test(wanted) || /^L[CTN]\d+$/.test(wanted)) {
    const fit = wanted.startsWith("R")
      ? standardRunningLimits(nominal, wanted as RunningLimitsClass)
      : standardLocationalFit(nominal, wanted as LocationalFitClass);
    const { least, most, source } = fit;
    return { fit: fit.name, hole: limits(fit.hole), shaft: limits(fit.shaft), least, most, source };
  }
  if (/^FN\d+$/.test(wanted)) {
    const fit = standardForceFit(nominal, wanted as ForceFitClass);
    const [least, most] = [fit.high.times(-1), fit.low.times(-1)];
    const { source } = fit;
    return { fit: fit.name, hole: limits(fit.hole), shaft: limits(fit.shaft), least, most, source };
  }
  if (!wanted.includes("/"))
    throw new RangeError(
      `fitsToMake: the fit of "${part}" must be a hole and a shaft of ISO 286, e.g. "H7/k6", or a class of ANSI B4.1 (RC1 to RC9, LC1 to LC9, LT1 to LT6, LN1 to LN3, FN1 to FN5), got "${name}"`,
    );
  const { hole, shaft, least, most, ...fit } = isoFit(nominal, wanted);
  return {
    fit: `ISO 286 ${fit.name}`,
    hole: limits(hole),
    shaft: limits(shaft),
    least,
    most,
    source: hole.source,
  };
}
