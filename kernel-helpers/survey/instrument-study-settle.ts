import { isQuantity, type Length, quantityFromSi, systemOf } from "../quantity/index.js";
import { normalCdf } from "../statistics/index.js";
import { readingUncertainty } from "./instrument.js";
import type { InstrumentVerdict } from "./instrument-study-types.js";
import { chanceText, plainSmall } from "./run-out-text.js";
import type { Instrument } from "./table.js";

/** What is to be settled: a size against a limit it is expected to clear by a margin, or a size within a tolerance. */
export type SettleQuestion = {
  /** Independent readings averaged; default 1. */
  readonly readings?: number;
  /** True for a difference of two readings of one instrument (ovality, taper): the calibration falls out of it. */
  readonly difference?: boolean;
} & (
  | { /** Expected distance of the size from its limit. */ readonly margin: Length }
  | { /** Full width of the tolerance. */ readonly tolerance: Length }
);

/** ISO 14253-1 as first written: guard band U with k = 2. */
const coverage = 2;
const enoughChance = 0.95;
const hopelessChance = 0.5;
/** Common practice of the trade: the tolerance is four times the uncertainty. */
const enoughRatio = 4;
const mostReadings = 1000;

/**
 * Whether an instrument can settle a question, before a reading is taken.
 *
 * u² = u²(reading)/n + u²(calibration), u²(reading) = s² + δ²/12; for a difference u² = 2 u²(reading)/n. Guard band U = 2u:
 * a size is proved to keep its limit only where it clears it by U (ISO 14253-1).
 * - Margin m: the reading to come clears the guard band with the chance Φ((m − U)/u). Yes from 95 %, no below 50 %
 *   (m < U), else cannot tell yet. Ratio = m/U.
 * - Tolerance T: test uncertainty ratio = (T/2)/U. Yes from 4, no below 1 (the guard bands leave nothing of the
 *   tolerance), else cannot tell yet: it can pass only what lies in the inner share 1 − 1/ratio.
 *
 * Valid when: u is taken as known and errors are normal. Without a stated calibration the answer about a size cannot be
 * yes, for nobody knows what it is worth. Temperature, roughness and the shape of the part are not in it. The rounding
 * is averaged with the rest, which holds while readings scatter over more than a step.
 *
 * @param instrument  with resolution, repeatability, calibration [m]
 * @param question.margin  expected distance from the limit, > 0 [m]
 * @param question.tolerance  full width of the tolerance, > 0 [m]
 * @param question.readings  independent readings averaged, whole, ≥ 1 [-]
 * @param question.difference  whether it is a difference of two such means [-]
 * @returns outcome with guard band [m], ratio [-], chance [-], readings that would be enough [-]
 * @throws RangeError  neither or both of margin and tolerance, one that is not > 0, or readings that are no whole number
 * @example
 * const mic = instrumentFrom("mic", { title: "Mic", resolution: "0.1 thou", repeatability: "0.1 thou", calibration: "0.1 thou" });
 * canSettle(mic, { margin: thou(1) }).outcome // "yes"
 * @source decision rule: ISO 14253-1:1998 (U with k = 2 as guard band; the 2017 edition has 1.65 u as its default for
 * normal errors, from memory); ratio of 4: common practice, no source
 */
export function canSettle(instrument: Instrument, question: SettleQuestion): InstrumentVerdict {
  const where = "canSettle";
  const { readings = 1, difference = false } = question;
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
  const uReading = readingUncertainty(instrument).si;
  const calibration = difference ? 0 : (instrument.calibration?.si ?? 0);
  const uWith = (n: number): number =>
    Math.hypot(uReading * Math.sqrt((difference ? 2 : 1) / n), calibration);
  const judge = (n: number): Judgement => judged(uWith(n), margin?.si, tolerance?.si);
  const { ratio, clear, outcome } = judge(readings);
  const unknown = instrument.calibration === undefined && !difference;
  const u = uWith(readings);
  const system =
    instrument.resolution.writtenIn === undefined ? "metric" : systemOf(instrument.resolution.writtenIn);
  const unitSystem = system === "inch" ? "inch" : "metric";
  const lengthOf = (si: number): Length => quantityFromSi("length", si, asked.writtenIn as never);
  const needed = fewestReadings((n) => judge(n).outcome === "yes");
  const guard = plainSmall(lengthOf(coverage * u), unitSystem);
  const given = unknown && outcome === "yes" ? "cannot tell yet" : outcome;
  return Object.freeze<InstrumentVerdict>({
    kind: "instrument verdict",
    instrument,
    outcome: given,
    unitSystem,
    standardUncertainty: lengthOf(u),
    guardBand: lengthOf(coverage * u),
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
        ? `Half the tolerance of ${plainSmall(asked, unitSystem)} is ${ratio.toFixed(1)} times the guard band of ${guard} (U, k = 2): test uncertainty ratio ${ratio.toFixed(1)}, where 4 is taken as enough and below 1 nothing of the tolerance is left.`
        : `The margin of ${plainSmall(asked, unitSystem)} is ${ratio.toFixed(1)} times the guard band of ${guard} (U, k = 2); the reading to come is clear with a probability of ${chanceText(clear!)}.`,
      ...(given === "yes"
        ? []
        : [advice(needed, readings, unknown && outcome === "yes", calibration, uReading)]),
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

interface Judgement {
  readonly ratio: number;
  readonly clear: number | undefined;
  readonly outcome: InstrumentVerdict["outcome"];
}

function judged(u: number, margin: number | undefined, tolerance: number | undefined): Judgement {
  const guard = coverage * u;
  if (margin === undefined) {
    const ratio = tolerance! / 2 / guard;
    const outcome = ratio >= enoughRatio ? "yes" : ratio < 1 ? "no" : "cannot tell yet";
    return { ratio, clear: undefined, outcome };
  }
  const clear = normalCdf((margin - guard) / u);
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
