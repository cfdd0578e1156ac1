import { formatFixed, formatNumber, formatWithUncertainty } from "../../quantity/index.js";
import { judgeLimit, type LimitJudgement } from "../../survey/limit-judgement.js";
import type { WearBands } from "../../survey/profile-types.js";
import type { VerdictBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { listText } from "./count-text.js";
import {
  nominalText,
  type ShownUnits,
  sizeText,
  smallText,
  smallUncertainty,
  stationText,
} from "./shown-units.js";

/** Whether the shaft keeps above its limit everywhere, as a verdict with margin, probability and what to read next. */
export function limitVerdict(wear: WearBands, units: ShownUnits): VerdictBlock[] {
  const judged = judgeLimit(wear);
  const worst = [...judged].sort(
    (a, b) => doubt(b) - doubt(a) || b.probabilityBelow - a.probabilityBelow || a.margin.si - b.margin.si,
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
  return [
    {
      type: "verdict",
      outcome,
      text,
      because: `${because(worst, units)}${contradiction(worst, wear, units)}${nextReading(worst, units)}`,
    },
  ];
}

function because(judgement: LimitJudgement, units: ShownUnits): string {
  const { band, diameter, margin, expanded, probabilityBelow, station, contradictedBy } = judgement;
  const side = margin.si < 0 ? "below" : "above";
  const angle = band.smallestAngle === undefined ? "" : ` at ${angleText(band.smallestAngle)}`;
  // A chance by the fit alone would only mislead where a reading contradicts the fit.
  const chance =
    contradictedBy === undefined ? ` Probability that it is below: ${percent(probabilityBelow)}.` : "";
  const [off, u] = formatWithUncertainty(Math.abs(margin.in(units.small)), expanded.in(units.small));
  return `The worst is band ${band.number}, ${sizeText(diameter, units)} at station ${stationText(station, units)}${angle}: ${off} ± ${u} ${units.smallSymbol} (95 %) ${side} the limit.${chance}`;
}

/** How likely a band is below the limit; where one of its readings says so against the fit, it is as open as can be. */
function doubt({ probabilityBelow, contradictedBy }: LimitJudgement): number {
  return contradictedBy === undefined ? probabilityBelow : Math.max(0.5, probabilityBelow);
}

/** The reading that says otherwise, where one does. */
function contradiction({ contradictedBy, band }: LimitJudgement, wear: WearBands, units: ShownUnits): string {
  if (contradictedBy === undefined || wear.limit === undefined) return "";
  const { line, diameter, station, angle } = wear.profile.readings[contradictedBy]!;
  const at = `station ${stationText(station, units)}${angle === undefined ? "" : ` at ${angleText(angle)}`}`;
  return ` But the reading on line ${line} of ${wear.profile.file}, ${sizeText(diameter, units)} at ${at}, lies ${smallText(wear.limit.minus(diameter), units)} below it: band ${band.number} as found does not describe it. Read there again, and once more on each side of it, so that a short worn stretch has two stations of its own.`;
}

/** What to do next, in words. */
function nextReading({ band, toDecide, station }: LimitJudgement, units: ShownUnits): string {
  if (toDecide === undefined) return "";
  if (toDecide.by === "setting")
    return ` More readings cannot decide it: setting and temperature are common to all of them and count for ± ${smallUncertainty(toDecide.leftOpen, units)}. Set the instrument on a standard of known size, at one temperature with the shaft, and read again.`;
  const where = band.smallestAngle === undefined ? "" : ` at ${angleText(band.smallestAngle)}`;
  return ` Read next: about ${formatNumber(toDecide.more, 2)} more in band ${band.number}${where}, nearest to station ${stationText(station, units)}.`;
}

function percent(probability: number): string {
  if (probability < 0.001) return "less than 0.1 %";
  if (probability > 0.999) return "more than 99.9 %";
  return `${formatFixed(probability * 100, 1)} %`;
}
