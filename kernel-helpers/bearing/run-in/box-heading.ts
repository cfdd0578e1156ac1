import { type Measured, measured, quantityFromSi, type TemperatureDifference } from "../../quantity/index.js";
import {
  type Approach,
  approachAt,
  chiSquareQuantile,
  fitApproach,
  fitLine,
} from "../../statistics/index.js";
import type { RunInEnd, RunInReading } from "./run-in-types.js";

/** Where a box is heading by the readings of one stretch. */
export interface BoxHeading {
  readonly fit: Approach | undefined;
  readonly end: RunInEnd | undefined;
  readonly noEnd: string;
  readonly rate: Measured<TemperatureDifference> | undefined;
  /** The readings scatter more about the curve than the thermometer explains. */
  readonly rough: boolean;
}

/** Readings the present rate is found from. */
const lastReadings = 4;
/** Of the whole rise, what counts as nearly there. */
const nearly = 0.1;

/**
 * Fits the approach of a box's rise over the room to its end, in one stretch.
 *
 * The rise over the room is fitted, so that a room that warms up does not pass for a box that does. Time counts from
 * the stretch's first reading.
 *
 * @param readings  of one stretch, in order
 * @param u  standard uncertainty of one rise [K]
 */
export function boxHeading(readings: readonly RunInReading[], u: number): BoxHeading {
  const scale = scaleOf(readings[0]!);
  const difference = (si: number): TemperatureDifference =>
    quantityFromSi("temperature difference", si, scale);
  const origin = readings[0]!.time.si;
  const t = readings.map(({ time }) => time.si - origin);
  const rise = readings.map(({ temperature, room }) => temperature.kelvin - room.kelvin);
  const rate = presentRate(t, rise, u, difference);
  if (readings.length < 4)
    return {
      fit: undefined,
      end: undefined,
      noEnd: `only ${readings.length} ${readings.length === 1 ? "reading" : "readings"} at this speed; 4 are needed to see where it is heading`,
      rate,
      rough: false,
    };
  let fit: Approach;
  let rough = false;
  try {
    fit = fitApproach(t, rise, { u });
    // Rougher than the thermometer: judged by the scatter, wider.
    const left = fit.degreesOfFreedom;
    rough = left > 0 && fit.residualSumOfSquares > chiSquareQuantile(0.99, left);
    if (rough) fit = fitApproach(t, rise, { u: u * Math.sqrt(fit.residualSumOfSquares / left) });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { fit: undefined, end: undefined, noEnd: noEndText(rate), rate, rough };
  }
  const { from, to } = fit.endInterval;
  const last = readings.at(-1)!;
  const at = (si: number | undefined): RunInEnd["from"] =>
    si === undefined || !Number.isFinite(si) ? undefined : last.room.plus(difference(si));
  if (at(from) === undefined || at(to) === undefined)
    return { fit: undefined, end: undefined, noEnd: openEndText(at(from), at(to)), rate, rough };
  const left =
    fit.timeConstant *
    Math.log(Math.abs((fit.end - approachAt(fit, t.at(-1)!).value) / (nearly * (fit.end - fit.start))));
  return {
    fit,
    end: Object.freeze({
      temperature: last.room.plus(difference(fit.end)),
      standardUncertainty: difference(fit.uEnd),
      from: at(from),
      to: at(to),
      timeConstant: measured(
        quantityFromSi("time", fit.timeConstant, "minute"),
        quantityFromSi("time", fit.uTimeConstant, "minute"),
      ),
      nearlyThere: quantityFromSi("time", Math.max(0, left), "minute"),
    }),
    noEnd: "",
    rate,
    rough,
  };
}

/** The scale the table was written in, for differences. */
export function scaleOf({ temperature }: RunInReading): "deltaC" | "deltaF" {
  return temperature.toJSON().scale === "degF" ? "deltaF" : "deltaC";
}

/** Change an hour, a straight line through the last readings. */
function presentRate(
  t: readonly number[],
  rise: readonly number[],
  u: number,
  difference: (si: number) => TemperatureDifference,
): Measured<TemperatureDifference> | undefined {
  if (t.length < 3) return undefined;
  const count = Math.min(lastReadings, t.length);
  const fit = fitLine(t.slice(-count), rise.slice(-count), { u });
  return measured(difference(fit.slope * 3600), difference(fit.uSlope * 3600));
}

function openEndText(from: RunInEnd["from"], to: RunInEnd["to"]): string {
  const bound = from ?? to;
  if (bound === undefined) return "the readings hardly bend yet and set the end no bound";
  const { scale } = bound.toJSON();
  const known = `${from === undefined ? "not above" : "not below"} ${bound.in(scale).toFixed(1)} ${scale === "degF" ? "°F" : "°C"}`;
  return `the readings hardly bend yet: by them the end is ${known}, and has no bound to the other side`;
}

function noEndText(rate: Measured<TemperatureDifference> | undefined): string {
  if (rate !== undefined && Math.abs(rate.value.si) <= 2 * rate.standardUncertainty.si)
    return "it stands still within what the thermometer can tell";
  return "no end in sight: the readings go straight on or bend away from one";
}
