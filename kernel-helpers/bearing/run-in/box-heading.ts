import {
  type Measured,
  measured,
  quantityFromSi,
  type TemperatureDifference,
  type Time,
} from "../../quantity/index.js";
import {
  type Approach,
  type Approaching,
  approachAt,
  chiSquareQuantile,
  fitApproach,
  fitLine,
  sharedTimeConstant,
} from "../../statistics/index.js";
import type { OwnTimeConstant, RunInEnd, RunInReading, RunInSharing } from "./run-in-types.js";

/** Where a box is heading by the readings of one stretch. */
export interface BoxHeading {
  readonly fit: Approach | undefined;
  readonly end: RunInEnd | undefined;
  readonly noEnd: string;
  readonly rate: Measured<TemperatureDifference> | undefined;
  /** The readings scatter more about the curve than the thermometer explains. */
  readonly rough: boolean;
  readonly sharing: RunInSharing | undefined;
}

/**
 * The time constant of each stretch by its own readings alone, where they are enough and bend.
 *
 * @param stretches  readings of each, in order
 * @param u  standard uncertainty of one rise [K]
 */
export function ownTimeConstants(
  stretches: readonly (readonly RunInReading[])[],
  u: number,
): readonly OwnTimeConstant[] {
  return stretches.flatMap((readings, stretch) => {
    if (readings.length < neededAlone) return [];
    const { t, y } = approachOf(readings, u);
    try {
      const { timeConstant, uTimeConstant, endInterval } = fitApproach(t, y, { u });
      if (![endInterval.from, endInterval.to].every(Number.isFinite)) return [];
      const minutes = (si: number): Time => quantityFromSi("time", si, "minute");
      return [
        Object.freeze({ stretch, timeConstant: measured(minutes(timeConstant), minutes(uTimeConstant)) }),
      ];
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return [];
    }
  });
}

/** Readings the present rate is found from. */
const lastReadings = 4;
/** Readings needed to see an end: in a stretch by itself, and where earlier ones tell the time constant. */
const neededAlone = 4;
const neededShared = 3;
/** Chance of refusing a shared time constant [-]. */
const sharingLevel = 0.05;
/** Of the whole rise, what counts as nearly there. */
const nearly = 0.1;

/**
 * Fits the approach of a box's rise over the room to its end, in one stretch.
 *
 * The rise over the room is fitted, so that a room that warms up does not pass for a box that does. Time counts from
 * the stretch's first reading. Heat stored over heat given up rules the time constant, and neither changes much with
 * speed or oil: it is shared with earlier stretches unless an F test at 5 % speaks against it.
 *
 * @param readings  of one stretch, in order
 * @param u  standard uncertainty of one rise [K]
 * @param earlier  readings of the stretches before it, in order
 */
export function boxHeading(
  readings: readonly RunInReading[],
  u: number,
  earlier: readonly (readonly RunInReading[])[] = [],
): BoxHeading {
  const scale = scaleOf(readings[0]!);
  const difference = (si: number): TemperatureDifference =>
    quantityFromSi("temperature difference", si, scale);
  const { t, y: rise } = approachOf(readings, u);
  const rate = presentRate(t, rise, u, difference);
  const { sharing, alike } = alikeStretches(readings, u, earlier);
  if (readings.length < (alike.length > 0 ? neededShared : neededAlone))
    return {
      fit: undefined,
      end: undefined,
      noEnd: `only ${readings.length} ${readings.length === 1 ? "reading" : "readings"} at this speed; ${neededAlone} are needed to see where it is heading`,
      rate,
      rough: false,
      sharing,
    };
  let found: ReturnType<typeof fitAsRough>;
  try {
    found = fitAsRough(t, rise, u, { alike });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { fit: undefined, end: undefined, noEnd: noEndText(rate), rate, rough: false, sharing };
  }
  const { fit, rough } = found;
  const { from, to } = boundsOf(fit, readings);
  if (from === undefined || to === undefined)
    return { fit: undefined, end: undefined, noEnd: openEndText(from, to), rate, rough, sharing };
  return { fit, end: endOf(fit, readings), noEnd: "", rate, rough, sharing };
}

/**
 * Where a box is heading by its readings and a forecast together: the forecast counts as one more observation of the end.
 * It shows an end from the second reading of a stretch on, and holds as far as the forecast does.
 *
 * @param readings  of one stretch, in order
 * @param u  standard uncertainty of one rise [K]
 * @param earlier  readings of the stretches before it, in order
 * @param rise  end over the room, foretold for this speed [K]
 * @returns undefined where even both together set the end no bound
 */
export function endWithForecast(
  readings: readonly RunInReading[],
  u: number,
  earlier: readonly (readonly RunInReading[])[],
  rise: Measured<TemperatureDifference>,
): RunInEnd | undefined {
  const { t, y } = approachOf(readings, u);
  const { alike } = alikeStretches(readings, u, earlier);
  try {
    const foretold = { end: rise.value.si, u: rise.standardUncertainty.si };
    const { fit } = fitAsRough(t, y, u, { alike, foretold });
    const { from, to } = boundsOf(fit, readings);
    return from === undefined || to === undefined ? undefined : endOf(fit, readings);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return undefined;
  }
}

/** An approach; where the readings scatter more than the thermometer explains, judged by the scatter, wider. */
function fitAsRough(
  t: readonly number[],
  y: readonly number[],
  u: number,
  given: {
    readonly alike: readonly Approaching[];
    readonly foretold?: { readonly end: number; readonly u: number };
  },
): { readonly fit: Approach; readonly rough: boolean } {
  const fit = fitApproach(t, y, { u, ...given });
  const left = fit.degreesOfFreedom;
  if (!(left > 0 && fit.residualSumOfSquares > chiSquareQuantile(0.99, left))) return { fit, rough: false };
  const wider = u * Math.sqrt(fit.residualSumOfSquares / left);
  const alike = given.alike.map((one) => ({ ...one, u: wider }));
  return { fit: fitApproach(t, y, { ...given, u: wider, alike }), rough: true };
}

/** The earlier stretches whose time constant is that of the readings, where nothing speaks against it. */
function alikeStretches(
  readings: readonly RunInReading[],
  u: number,
  earlier: readonly (readonly RunInReading[])[],
): { readonly sharing: RunInSharing | undefined; readonly alike: readonly Approaching[] } {
  const others = earlier.filter((one) => one.length >= 3).map((one) => approachOf(one, u));
  const sharing =
    readings.length < neededShared ? undefined : sharingOf([...others, approachOf(readings, u)]);
  return { sharing, alike: sharing?.shared === true ? others : [] };
}

/** The end's interval in the room of the last reading; undefined to a side without bound. */
function boundsOf(
  { endInterval }: Approach,
  readings: readonly RunInReading[],
): Pick<RunInEnd, "from" | "to"> {
  const { room } = readings.at(-1)!;
  const at = (si: number): RunInEnd["from"] =>
    Number.isFinite(si)
      ? room.plus(quantityFromSi("temperature difference", si, scaleOf(readings[0]!)))
      : undefined;
  return { from: at(endInterval.from), to: at(endInterval.to) };
}

function endOf(fit: Approach, readings: readonly RunInReading[]): RunInEnd {
  const [first, last] = [readings[0]!, readings.at(-1)!];
  const difference = (si: number): TemperatureDifference =>
    quantityFromSi("temperature difference", si, scaleOf(first));
  const now = approachAt(fit, last.time.si - first.time.si).value;
  const left = fit.timeConstant * Math.log(Math.abs((fit.end - now) / (nearly * (fit.end - fit.start))));
  return Object.freeze({
    temperature: last.room.plus(difference(fit.end)),
    standardUncertainty: difference(fit.uEnd),
    ...boundsOf(fit, readings),
    timeConstant: measured(
      quantityFromSi("time", fit.timeConstant, "minute"),
      quantityFromSi("time", fit.uTimeConstant, "minute"),
    ),
    nearlyThere: quantityFromSi("time", Math.max(0, left), "minute"),
  });
}

/** The rise over the room from a stretch's first reading on. */
function approachOf(readings: readonly RunInReading[], u: number): Approaching {
  const origin = readings[0]!.time.si;
  return {
    t: readings.map(({ time }) => time.si - origin),
    y: readings.map(({ temperature, room }) => temperature.kelvin - room.kelvin),
    u,
  };
}

function sharingOf(stretches: readonly Approaching[]): RunInSharing | undefined {
  if (stretches.length < 2) return undefined;
  try {
    const { shared, f, critical, level } = sharedTimeConstant(stretches, { level: sharingLevel });
    return Object.freeze({ stretches: stretches.length, shared, f, critical, level });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return undefined; // too few readings, or none of them bends
  }
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
