import { isQuantity, type Length, quantityFromSi, systemOf } from "../quantity/index.js";
import { coverageFactor, normalCdf, studentTCdf, welchSatterthwaite } from "../statistics/index.js";
import { type ReadingKnown, readingKnown } from "./instrument-study-reading.js";
import type { InstrumentVerdict, RepeatabilityStudy } from "./instrument-study-types.js";
import { plainSmall, sureChanceText, uncertaintyText } from "./run-out-text.js";
import type { Instrument } from "./table.js";

/** What is to be settled: a size against a limit it is expected to clear by a margin, or a size within a tolerance. */
export type SettleQuestion = {
  /** Independent readings averaged; default 1. */
  readonly readings?: number;
  /** True for a difference of two readings of one instrument (ovality, taper): the calibration falls out of it. */
  readonly difference?: boolean;
  /** What repeated readings said of the instrument; goes before the repeatability stated, where it is of this instrument. */
  readonly study?: RepeatabilityStudy;
} & (
  | { /** Expected distance of the size from its limit. */ readonly margin: Length }
  | { /** Full width of the tolerance. */ readonly tolerance: Length }
);

/** ISO 14253-1 as first written: guard band U with k = 2, which covers 95.45 % of normal errors; so much with few readings too. */
const coverage = 2 * normalCdf(2) - 1;
const enoughChance = 0.95;
const hopelessChance = 0.5;
/** Common practice of the trade: the tolerance is four times the uncertainty. */
const enoughRatio = 4;
const mostReadings = 1000;

/**
 * Whether an instrument can settle a question, before a reading is taken.
 *
 * u² = u²(reading)/n + u²(calibration), u²(reading) = s² + δ²/12; for a difference u² = 2 u²(reading)/n. s is that of the
 * study where there is one of this instrument that shows it, else as stated (`from`). Guard band U = k u, k = 2 where s
 * is stated; where it was found by readings, Student's t for the effective degrees of freedom ν (Welch–Satterthwaite)
 * that covers as much, 95.45 %: a size is proved to keep its limit only where it clears it by U (ISO 14253-1).
 * - Margin m: the reading to come clears the guard band with the chance F((m − U)/u), F Student's t with ν, normal where s is
 *   stated. Yes from 95 %, no below 50 % (m < U), else cannot tell yet. Ratio = m/U.
 * - Tolerance T: test uncertainty ratio = (T/2)/U. Yes from 4, no below 1 (the guard bands leave nothing of the
 *   tolerance), else cannot tell yet: it can pass only what lies in the inner share 1 − 1/ratio.
 *
 * Valid when: errors are normal, and u as stated is taken as known. Without a stated calibration the answer about a size cannot be
 * yes, for nobody knows what it is worth. Temperature, roughness and the shape of the part are not in it. The rounding
 * is averaged with the rest, which holds while readings scatter over more than a step.
 *
 * @param instrument  with resolution, repeatability, calibration [m]
 * @param question.margin  expected distance from the limit, > 0 [m]
 * @param question.tolerance  full width of the tolerance, > 0 [m]
 * @param question.readings  independent readings averaged, whole, ≥ 1 [-]
 * @param question.difference  whether it is a difference of two such means [-]
 * @param question.study  repeatability study, of this instrument or another [-]
 * @returns outcome with guard band [m], ratio [-], chance [-], readings that would be enough [-]
 * @throws RangeError  neither or both of margin and tolerance, one that is not > 0, or readings that are no whole number
 * @example
 * const mic = instrumentFrom("mic", { title: "Mic", resolution: "0.1 thou", repeatability: "0.1 thou", calibration: "0.1 thou" });
 * canSettle(mic, { margin: thou(1) }).outcome // "yes"
 * @example
 * const mic = instrumentFrom("mic", { title: "Mic", resolution: "0.1 thou", repeatability: "0.1 thou", calibration: "0 thou" });
 * const rows = [0.1, 0.3, 0.2, 0.4, 0.2].join("\n");
 * const table = readTable(new TextEncoder().encode(`reading [thou]\n${rows}`), { name: "r", file: "r.csv" });
 * canSettle(mic, { margin: thou(1), study: repeatabilityStudy(table) }).coverageFactor // 2.869309414628828
 * @source decision rule: ISO 14253-1:1998 (U with k = 2 as guard band; the 2017 edition has 1.65 u as its default for
 * normal errors, from memory); degrees of freedom: JCGM 100:2008 (GUM), G.4 and table G.2; ratio of 4: common practice, no source
 */
export function canSettle(instrument: Instrument, question: SettleQuestion): InstrumentVerdict {
  const where = "canSettle";
  const { readings = 1, difference = false, study } = question;
  const margin = "margin" in question ? question.margin : undefined;
  const tolerance = "tolerance" in question ? question.tolerance : undefined;
  const asked = margin ?? tolerance;
  if (asked === undefined || (margin !== undefined && tolerance !== undefined))
    throw new RangeError(`${where}: the question must name a margin or a tolerance, and not both`);
  if (!isQuantity(asked, "length") || !(asked.si > 0))
    throw new RangeError(
      `${where}: ${margin === undefined ? "tolerance" : "margin"} must be a length greater than 0, got ${asked}`,
    );
  if (!Number.isInteger(readings) || readings < 1)
    throw new RangeError(`${where}: readings must be a whole number of at least 1, got ${readings}`);
  const known = readingKnown(instrument, study);
  const calibration = difference ? 0 : (instrument.calibration?.si ?? 0);
  const spreadWith = (n: number): Spread => spreadOf(known, (difference ? 2 : 1) / n, calibration);
  const judge = (n: number): Judgement => judged(spreadWith(n), margin?.si, tolerance?.si);
  const { ratio, clear, outcome } = judge(readings);
  const unknown = instrument.calibration === undefined && !difference;
  const { u, k, degreesOfFreedom } = spreadWith(readings);
  const system =
    instrument.resolution.writtenIn === undefined ? "metric" : systemOf(instrument.resolution.writtenIn);
  const unitSystem = system === "inch" ? "inch" : "metric";
  const lengthOf = (si: number): Length => quantityFromSi("length", si, asked.writtenIn as never);
  const needed = fewestReadings((n) => judge(n).outcome === "yes");
  const guard = `${uncertaintyText(lengthOf(k * u), unitSystem)} (U, k = ${k.toFixed(1).replace(".0", "")})`;
  const given = unknown && outcome === "yes" ? "cannot tell yet" : outcome;
  return Object.freeze<InstrumentVerdict>({
    kind: "instrument verdict",
    instrument,
    outcome: given,
    unitSystem,
    standardUncertainty: lengthOf(u),
    readingUncertainty: lengthOf(known.u),
    from: known.from,
    degreesOfFreedom,
    coverageFactor: k,
    guardBand: lengthOf(k * u),
    ratio,
    clear,
    readingsNeeded: needed,
    text: {
      yes: `${instrument.title} can settle this.`,
      no: `${instrument.title} cannot settle this.`,
      "cannot tell yet": `${instrument.title} may settle this, or may not.`,
    }[given],
    because: [
      margin === undefined
        ? `Half the tolerance of ${plainSmall(asked, unitSystem)} is ${ratio.toFixed(1)} times the guard band of ${guard}: test uncertainty ratio ${ratio.toFixed(1)}, where 4 is taken as enough and below 1 nothing of the tolerance is left.`
        : `The margin of ${plainSmall(asked, unitSystem)} is ${ratio.toFixed(1)} times the guard band of ${guard}; the reading to come is clear with a probability of ${sureChanceText(clear!)}.`,
      known.text,
      ...(given === "yes"
        ? []
        : [advice(needed, readings, unknown && outcome === "yes", calibration, known.u)]),
    ].join(" "),
    warnings: Object.freeze(
      unknown
        ? [
            `No calibration is stated for ${instrument.title}; it is reckoned as 0, so a size against a limit cannot be called settled.`,
          ]
        : [],
    ),
  });
}

interface Spread {
  readonly u: number;
  readonly k: number;
  readonly degreesOfFreedom: number;
}

/** Uncertainty of the result [m], where a share of the variance of one reading comes together with the calibration. */
function spreadOf(known: ReadingKnown, share: number, calibration: number): Spread {
  const own = known.u * Math.sqrt(share);
  const dof = welchSatterthwaite([own, calibration], [known.degreesOfFreedom, Number.POSITIVE_INFINITY]);
  return { u: Math.hypot(own, calibration), k: coverageFactor(coverage, dof), degreesOfFreedom: dof };
}

interface Judgement {
  readonly ratio: number;
  readonly clear: number | undefined;
  readonly outcome: InstrumentVerdict["outcome"];
}

function judged(
  { u, k, degreesOfFreedom }: Spread,
  margin: number | undefined,
  tolerance: number | undefined,
): Judgement {
  const guard = k * u;
  if (margin === undefined) {
    const ratio = tolerance! / 2 / guard;
    const outcome = ratio >= enoughRatio ? "yes" : ratio < 1 ? "no" : "cannot tell yet";
    return { ratio, clear: undefined, outcome };
  }
  const clear = studentTCdf((margin - guard) / u, degreesOfFreedom);
  const outcome = clear >= enoughChance ? "yes" : clear < hopelessChance ? "no" : "cannot tell yet";
  return { ratio: margin / guard, clear, outcome };
}

function fewestReadings(enough: (n: number) => boolean): number | undefined {
  if (!enough(mostReadings)) return undefined;
  // Uncertainty falls with every reading: halve the span in which the answer turns.
  let [low, high] = [0, mostReadings];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function advice(
  needed: number | undefined,
  readings: number,
  unknownCalibration: boolean,
  calibration: number,
  uReading: number,
): string {
  if (unknownCalibration) return "State its calibration first: read a gauge of known size.";
  if (needed !== undefined && needed > readings)
    return `The mean of ${needed} independent readings would be enough.`;
  return calibration > uReading
    ? "More readings do not help: the setting counts most. Set it on a standard of known size near the size to be read, or take a better instrument."
    : "No reasonable number of readings is enough: take a better instrument.";
}
