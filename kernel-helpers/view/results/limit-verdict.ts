import { formatFixed, formatNumber, formatWithUncertainty } from "../../quantity/index.js";
import { judgeLimit, type LimitJudgement } from "../../survey/limit-judgement.js";
import type { WearBands } from "../../survey/profile-types.js";
import type { VerdictBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { listText } from "./count-text.js";
import { nominalText, type ShownUnits, sizeText, smallUncertainty, stationText } from "./shown-units.js";

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
  return [
    { type: "verdict", outcome, text, because: `${because(worst, units)}${nextReading(worst, units)}` },
  ];
}

function because(judgement: LimitJudgement, units: ShownUnits): string {
  const { band, diameter, margin, expanded, probabilityBelow, station } = judgement;
  const side = margin.si < 0 ? "below" : "above";
  const angle = band.smallestAngle === undefined ? "" : ` at ${angleText(band.smallestAngle)}`;
  const [off, u] = formatWithUncertainty(Math.abs(margin.in(units.small)), expanded.in(units.small));
  return `The worst is band ${band.number}, ${sizeText(diameter, units)} at station ${stationText(station, units)}${angle}: ${off} ± ${u} ${units.smallSymbol} (95 %) ${side} the limit. Probability that it is below: ${percent(probabilityBelow)}.`;
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
