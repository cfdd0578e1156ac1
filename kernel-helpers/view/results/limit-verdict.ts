import {
  formatFixed,
  formatNumber,
  formatWithUncertainty,
  type Length,
  quantityFromSi,
} from "../../quantity/index.js";
import { coverageFactor } from "../../statistics/coverage-factor.js";
import { studentTCdf } from "../../statistics/student-t-distribution.js";
import type { DiameterReading, WearBand, WearBands } from "../../survey/profile-types.js";
import type { VerdictBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { listText } from "./count-text.js";
import { coverage } from "./cover-factor.js";
import { nominalText, type ShownUnits, sizeText, smallUncertainty, stationText } from "./shown-units.js";

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
  readonly outcome: VerdictBlock["outcome"];
  readonly station: Length;
}

/**
 * Judges each band by its smallest diameter: the fit at its smaller end, at the angle where the band is
 * smallest where one stands out. The mean over the angles would pass a shaft that is worn on one side.
 *
 * margin m = d − limit; yes where m > U, no where m < −U, with U the 95 % expanded uncertainty of d;
 * probability below the limit = F(−m/u), Student's t of the band's degrees of freedom
 *
 * @returns one judgement a band; empty without a limit
 * @source ISO 14253-1:2017, decision rule by guard bands of the expanded uncertainty (from memory)
 */
export function judgeLimit(wear: WearBands): LimitJudgement[] {
  const { limit, bands } = wear;
  if (limit === undefined) return [];
  return bands.map((band) => {
    const dof = band.diameter.degreesOfFreedom;
    const { value, u, station } = smallestOfFit(band, wear);
    const margin = value - limit.si;
    const expanded = coverageFactor(coverage, dof) * u;
    const t = u === 0 ? Math.sign(margin) * 1e6 : margin / u;
    return {
      band,
      diameter: length(value),
      standardUncertainty: length(u),
      margin: length(margin),
      expanded: length(expanded),
      probabilityBelow: studentTCdf(-t, dof),
      outcome: margin > expanded ? "yes" : margin < -expanded ? "no" : "cannot tell yet",
      station,
    };
  });
}

/** Whether the shaft keeps above its limit everywhere, as a verdict with margin, probability and what to read next. */
export function limitVerdict(wear: WearBands, units: ShownUnits): VerdictBlock[] {
  const judged = judgeLimit(wear);
  const worst = [...judged].sort(
    (a, b) => b.probabilityBelow - a.probabilityBelow || a.margin.si - b.margin.si,
  )[0];
  if (worst === undefined || wear.limit === undefined) return [];
  const limit = nominalText(wear.limit, units);
  const { outcome } = worst;
  const of = (wanted: LimitJudgement["outcome"]): string =>
    listText(judged.filter((j) => j.outcome === wanted).map(({ band }) => `band ${band.number}`));
  const text = {
    yes: `The shaft is above its limit of ${limit} everywhere.`,
    no: `The shaft is below its limit of ${limit}: ${of("no")}.`,
    "cannot tell yet": `Whether the shaft is above its limit of ${limit} cannot be told yet: ${of("cannot tell yet")}.`,
  }[outcome];
  const next = outcome === "cannot tell yet" ? ` ${nextReading(worst, wear, units)}` : "";
  return [{ type: "verdict", outcome, text, because: `${because(worst, units)}${next}` }];
}

function because(judgement: LimitJudgement, units: ShownUnits): string {
  const { band, diameter, margin, expanded, probabilityBelow, station } = judgement;
  const side = margin.si < 0 ? "below" : "above";
  const angle = band.smallestAngle === undefined ? "" : ` at ${angleText(band.smallestAngle)}`;
  const [off, u] = formatWithUncertainty(Math.abs(margin.in(units.small)), expanded.in(units.small));
  return `The worst is band ${band.number}, ${sizeText(diameter, units)} at station ${stationText(station, units)}${angle}: ${off} ± ${u} ${units.smallSymbol} (95 %) ${side} the limit. Probability that it is below: ${percent(probabilityBelow)}.`;
}

/** More readings where they can decide; where the part common to all readings decides, a better setting. */
function nextReading(judgement: LimitJudgement, { profile }: WearBands, units: ShownUnits): string {
  const { band, margin, expanded, standardUncertainty, station } = judgement;
  const k = expanded.si / standardUncertainty.si;
  const common = profile.commonUncertainty.si;
  const spare = (margin.si / k) ** 2 - common ** 2;
  const own = Math.max(0, standardUncertainty.si ** 2 - common ** 2);
  if (spare <= 0)
    return `More readings cannot decide it: setting and temperature are common to all of them and count for ± ${smallUncertainty(length(k * common), units)}. Set the instrument on a standard of known size, at one temperature with the shaft, and read again.`;
  const count = band.smallestAngle === undefined ? band.readingCount : band.stationCount;
  const more = Math.max(1, Math.ceil(count * (own / spare - 1)));
  const where = band.smallestAngle === undefined ? "" : ` at ${angleText(band.smallestAngle)}`;
  return `Read next: about ${formatNumber(more, 2)} more in band ${band.number}${where}, nearest to station ${stationText(station, units)}.`;
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

function percent(probability: number): string {
  if (probability < 0.001) return "less than 0.1 %";
  if (probability > 0.999) return "more than 99.9 %";
  return `${formatFixed(probability * 100, 1)} %`;
}
