import { type Length, quantityFromSi } from "../quantity/index.js";
import { coverageFactor, studentTCdf } from "../statistics/index.js";
import { isSurelyGross } from "./gross-readings.js";
import type { DiameterReading, WearBand, WearBands } from "./profile-types.js";

/** The share that the uncertainty of the margin covers, two-sided. */
const coverage = 0.95;
/** A reading below the limit by its own expanded uncertainty, k = 2, is below it by the rule that holds for the fit. */
const plainly = 2;

/** How a band stands against the smallest diameter allowed. */
export interface LimitJudgement {
  readonly band: WearBand;
  /** The smallest diameter of the band's fit, at the angle where it is smallest if one stands out. */
  readonly diameter: Length;
  readonly standardUncertainty: Length;
  /** Diameter minus limit: positive is good. */
  readonly margin: Length;
  /** Half of the 95 % interval of the margin. */
  readonly expanded: Length;
  /** Probability that the diameter is below the limit [-]. */
  readonly probabilityBelow: number;
  readonly outcome: "yes" | "no" | "cannot tell yet";
  readonly station: Length;
  /**
   * The smallest reading of the band that lies plainly below the limit though the fit lies above it, as an index into the
   * profile's readings: then the fit does not describe the band, and nothing is settled. Else undefined.
   */
  readonly contradictedBy: number | undefined;
  /** What would decide it, where it cannot be told yet. */
  readonly toDecide: ToDecide | undefined;
}

/** More readings, or, where these cannot decide, a better setting of the instrument. */
export type ToDecide =
  | {
      readonly by: "readings";
      /** About how many more readings, at the smallest angle where one stands out. */
      readonly more: number;
    }
  | {
      readonly by: "setting";
      /** What setting and temperature, common to all readings, alone leave open, 95 %. */
      readonly leftOpen: Length;
    };

/**
 * Judges each band against the smallest diameter allowed, by its own smallest diameter: the fit at its smaller end, at
 * the angle where the band is smallest where one stands out. The mean over the angles would pass a shaft that is worn
 * on one side.
 *
 * margin m = d − limit; yes where m > U, no where m < −U, with U the 95 % expanded uncertainty of d;
 * probability below the limit = F(−m/u), Student's t of the band's degrees of freedom.
 * Where the fit says yes and yet a single reading that counts lies more than 2 of its own stated standard uncertainties (and
 * what all readings share) below the limit, the answer is "cannot tell yet": a fit of few, coarse or rough readings must
 * not talk a reading away.
 * More readings shrink the part of u that is not common to all, as 1/√n: n is chosen so that k u = |m|.
 *
 * Valid when: the band's fit describes it; a scratch or a step within it is seen only where it was read.
 *
 * @param wear  bands with a limit
 * @returns one judgement a band, diameters on diameter [m]; empty without a limit
 * @example
 * const rows = ["0,2.4375", "1,2.4374", "2,2.4375", "3,2.4376", "4,2.4331", "5,2.4332", "6,2.4332", "7,2.4331"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * judgeLimit(wearBands(profile, { limit: inch(2.434) })).map(({ outcome }) => outcome) // ["yes", "no"]
 * @source ISO 14253-1:2017, decision rule by guard bands of the expanded uncertainty (from memory)
 */
export function judgeLimit(wear: WearBands): readonly LimitJudgement[] {
  const { limit, bands } = wear;
  if (limit === undefined) return [];
  return bands.map((band) => {
    const dof = band.diameter.degreesOfFreedom;
    const { value, u, station } = smallestOfFit(band, wear);
    const margin = value - limit.si;
    const k = coverageFactor(coverage, dof);
    const expanded = k * u;
    const t = u === 0 ? Math.sign(margin) * 1e6 : margin / u;
    const byFit = margin > expanded ? "yes" : margin < -expanded ? "no" : "cannot tell yet";
    const contradictedBy = byFit === "yes" ? plainlyBelow(band, wear, limit) : undefined;
    const outcome = contradictedBy === undefined ? byFit : "cannot tell yet";
    return Object.freeze<LimitJudgement>({
      band,
      diameter: length(value),
      standardUncertainty: length(u),
      margin: length(margin),
      expanded: length(expanded),
      probabilityBelow: studentTCdf(-t, dof),
      outcome,
      station,
      contradictedBy,
      toDecide: byFit === "cannot tell yet" ? whatDecides(band, wear, margin, u, k) : undefined,
    });
  });
}

/** The smallest reading of a band that is below the limit beyond its own uncertainty, as an index; undefined where none is. */
function plainlyBelow(band: WearBand, { profile, gross }: WearBands, limit: Length): number | undefined {
  const surely = gross.filter(({ probability }) => isSurelyGross(probability));
  const aside = new Set(surely.map(({ reading }) => reading));
  let worst: number | undefined;
  profile.readings.forEach(({ station, diameter, standardUncertainty }, i) => {
    if (aside.has(i) || station < band.from || station > band.to) return;
    const u = Math.hypot(standardUncertainty.si, profile.commonUncertainty.si);
    if (limit.si - diameter.si <= plainly * u) return;
    if (worst === undefined || diameter < profile.readings[worst]!.diameter) worst = i;
  });
  return worst;
}

/** More readings where they can decide; where the part common to all readings decides, a better setting. */
function whatDecides(band: WearBand, { profile }: WearBands, margin: number, u: number, k: number): ToDecide {
  const common = profile.commonUncertainty.si;
  const spare = (margin / k) ** 2 - common ** 2;
  if (spare <= 0) return Object.freeze({ by: "setting", leftOpen: length(k * common) });
  const own = Math.max(0, u ** 2 - common ** 2);
  const count = band.smallestAngle === undefined ? band.readingCount : band.stationCount;
  return Object.freeze({ by: "readings", more: Math.max(1, Math.ceil(count * (own / spare - 1))) });
}

function smallestOfFit(band: WearBand, wear: WearBands): { value: number; u: number; station: Length } {
  const small = band.diameterAtTo < band.diameterAtFrom ? "to" : "from";
  const atEnd = small === "to" ? band.diameterAtTo : band.diameterAtFrom;
  const halfLength = (band.to.si - band.from.si) / 2;
  const uOfEnd = Math.hypot(
    band.diameter.standardUncertainty.si,
    halfLength * band.slope.standardUncertainty,
  );
  const { offset, u } = offsetOfAngle(band, wear);
  return {
    value: atEnd.si + offset,
    u: Math.hypot(uOfEnd, u),
    station: small === "to" ? band.to : band.from,
  };
}

/** Mean of the readings at the band's smallest angle, minus the fit [m]. */
function offsetOfAngle(band: WearBand, { profile, gross }: WearBands): { offset: number; u: number } {
  const { smallestAngle } = band;
  if (smallestAngle === undefined) return { offset: 0, u: 0 };
  const dropped = new Set(gross.map(({ reading }) => reading));
  const there = profile.readings.filter(
    (r, i) => !dropped.has(i) && r.station >= band.from && r.station <= band.to && isAt(r, smallestAngle.si),
  );
  if (there.length === 0) return { offset: 0, u: 0 };
  const residuals = there.map((r) => r.diameter.si - fitAt(band, r.station));
  const mean = residuals.reduce((sum, r) => sum + r, 0) / there.length;
  const variance = there.reduce((sum, r) => sum + r.standardUncertainty.si ** 2, 0) / there.length;
  return { offset: Math.min(0, mean), u: Math.sqrt(variance / there.length) };
}

function isAt({ angle }: DiameterReading, radians: number): boolean {
  return angle !== undefined && Math.abs(angle.si - radians) < 1e-9;
}

/** Diameter of the band's fit at a station [m]. */
function fitAt({ from, to, diameterAtFrom, diameterAtTo }: WearBand, station: Length): number {
  const share = to.si === from.si ? 0 : (station.si - from.si) / (to.si - from.si);
  return diameterAtFrom.si + share * (diameterAtTo.si - diameterAtFrom.si);
}

function length(metres: number): Length {
  return quantityFromSi("length", metres);
}
