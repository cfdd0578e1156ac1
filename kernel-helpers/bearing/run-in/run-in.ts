import {
  formatFixed,
  formatFixedLimit,
  type Measured,
  measured,
  quantityFromSi,
  type RotationalSpeed,
  type Temperature,
  type TemperatureDifference,
  type Time,
  temperature,
} from "../../quantity/index.js";
import { approachAt, coverageFactor, normalCdf } from "../../statistics/index.js";
import type { Table } from "../../survey/index.js";
import { type BoxHeading, boxHeading, endWithForecast, ownTimeConstants, scaleOf } from "./box-heading.js";
import { possibleCauses } from "./possible-causes.js";
import { alike, type RunInTable, readRunIn } from "./read-run-in.js";
import { departs, jumpsOf, realChange, type Seen, signsOf } from "./run-in-signs.js";
import type { ForetoldRise, RunIn, RunInBox, RunInReading, RunInState } from "./run-in-types.js";

/** What is known beside the readings. */
export interface RunInOptions {
  /** The machine is stopped when any box reaches this. */
  readonly stopAt: Temperature;
  /** Standard uncertainty of one reading of the thermometer. */
  readonly thermometer: TemperatureDifference;
  /** The room, where the table has no column "room". */
  readonly room?: Temperature;
  /** End temperatures over the room, foretold before the run. */
  readonly foretold?: readonly ForetoldRise[];
}

/** "Go on" and "stop" are said only when their chance is at least this. */
const sure = 0.95;
const hour = 3600;

/**
 * Boxes warming up at run-in: where each is heading, whether that is what was foretold, and whether to go on.
 *
 * In the last stretch of one speed and one oil each box's rise over the room is fitted by an exponential approach,
 * its time constant shared with earlier stretches unless an F test at 5 % speaks against it (told in `sharing`); the
 * end carries the interval of its profile. Stop: a box is at the stop temperature, or its end lies above it with
 * 95 %. Go on: every box's end lies below it with 95 %. Else it cannot be told yet, and the next reading is named.
 *
 * Valid when: one time constant rules a box (small boxes at steady speed and load). Load, draught or sun that change
 * while it runs are not in the model. A forecast within two standard uncertainties of the difference counts as met;
 * one for another speed than the last is not compared.
 *
 * @param table  columns time, room, speed, oil (the last three may be missing), and a column of temperatures a box
 * @param options.stopAt  where to stop [K]
 * @param options.thermometer  standard uncertainty of a reading, > 0 [K]
 * @param options.room  temperature of the room, where the table does not give it [K]
 * @param options.foretold  rises over the room foretold, by box [K]
 * @returns each box's heading, agreement with the forecast, possible causes, and the verdict
 * @throws RangeError  columns missing, times out of order, no readings, a forecast for a box that is not there
 * @example
 * const rows = [0, 10, 20, 30, 45, 60, 90].map((t) => `${t},20,${(50 - 30 * Math.exp(-t / 30)).toFixed(2)}`);
 * const bytes = new TextEncoder().encode(["time [min],room [degC],pulley box [degC]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "run-in", file: "run-in.csv" });
 * runIn(table, { stopAt: degC(70), thermometer: deltaC(0.5) }).state // "go on"
 * @source heating of a body by constant power, lumped; intervals: see `fitApproach`; limits: the user's own
 */
export function runIn(table: Table, options: RunInOptions): RunIn {
  const { stopAt, thermometer, foretold = [] } = options;
  if (!(thermometer.si > 0)) throw new RangeError(`runIn: thermometer must be above 0, got ${thermometer}`);
  const read = readRunIn(table, options.room);
  const stray = foretold.find(({ box }) => !read.names.includes(box.toLowerCase()));
  if (stray !== undefined)
    throw new RangeError(
      `runIn: a temperature is foretold for "${stray.box}", but ${table.file} has only ${read.names.map((name) => `"${name}"`).join(", ")}`,
    );
  const seen = read.names.map((name, i) =>
    boxSeen(
      read,
      i,
      name,
      foretold.find(({ box }) => box.toLowerCase() === name),
      thermometer.si,
    ),
  );
  const boxes = seen.map((one) => judged(one, seen, stopAt, thermometer.si));
  const state = worst(boxes.map((box) => box.state));
  const readNext = nextReading(boxes, stopAt);
  return Object.freeze({
    kind: "run-in",
    title: table.name,
    file: table.file,
    unitSystem: scaleOf(boxes[0]!.readings[0]!) === "deltaF" ? "inch" : "metric",
    stopAt,
    boxes: Object.freeze(boxes),
    stretches: read.stretches,
    state,
    text: sentence(boxes, state, readNext, read.stretches.at(-1)!.speed),
    readNext,
    warnings: Object.freeze([...read.warnings, ...seen.flatMap((one) => warningsOf(one, thermometer.si))]),
  });
}

function boxSeen(
  read: RunInTable,
  index: number,
  name: string,
  foretold: ForetoldRise | undefined,
  u: number,
): Seen {
  const readings = read.rows.flatMap(({ line, time, room, stretch, boxes }) => {
    const temperature = boxes[index];
    return temperature === undefined ? [] : [Object.freeze({ time, temperature, room, stretch, line })];
  });
  if (readings.length === 0) throw new RangeError(`runIn: "${name}" has no readings`);
  const current = readings.at(-1)!.stretch;
  const inStretch = (which: number): readonly RunInReading[] =>
    readings.filter(({ stretch }) => stretch === which);
  const earlier = Array.from({ length: current }, (_, i) => inStretch(i));
  const heading = boxHeading(inStretch(current), u, earlier);
  const { end } = heading;
  const difference = (si: number): TemperatureDifference =>
    quantityFromSi("temperature difference", si, scaleOf(readings[0]!));
  const speed = read.stretches[current]!.speed;
  const elsewhere = foretold?.speed !== undefined && speed !== undefined && !alike(foretold.speed, speed);
  const against =
    end === undefined || foretold === undefined || elsewhere
      ? undefined
      : measured(
          difference(end.temperature.kelvin - readings.at(-1)!.room.kelvin - foretold.rise.value.si),
          difference(Math.hypot(end.standardUncertainty.si, foretold.rise.standardUncertainty.si)),
        );
  return {
    name,
    readings,
    heading,
    foretold,
    withForecast:
      foretold === undefined || elsewhere
        ? undefined
        : endWithForecast(inStretch(current), u, earlier, foretold.rise),
    against,
    agreement: elsewhere
      ? "foretold for another speed"
      : agreementOf(foretold, against, heading, readings, u),
  };
}

function agreementOf(
  foretold: ForetoldRise | undefined,
  against: Measured<TemperatureDifference> | undefined,
  heading: BoxHeading,
  readings: readonly RunInReading[],
  u: number,
): RunInBox["agreement"] {
  if (foretold === undefined) return "nothing foretold";
  if (against !== undefined) {
    const z = against.value.si / against.standardUncertainty.si;
    return z > departs ? "hotter" : z < -departs ? "cooler" : "as foretold";
  }
  // No end yet, but it is past the forecast already.
  const { temperature, room } = readings.at(-1)!;
  const beyond = temperature.kelvin - room.kelvin - foretold.rise.value.si;
  const rising = heading.rate !== undefined && heading.rate.value.si > 0;
  return rising && beyond > departs * Math.hypot(u, foretold.rise.standardUncertainty.si)
    ? "hotter"
    : "cannot tell yet";
}

function judged(one: Seen, all: readonly Seen[], stopAt: Temperature, u: number): RunInBox {
  const { name, readings, heading, foretold, against, agreement } = one;
  const last = readings.at(-1)!;
  const { state, because } = stateOf(one, stopAt, u);
  return Object.freeze({
    name,
    readings: Object.freeze(readings),
    now: last.temperature,
    rate: heading.rate,
    end: heading.end,
    endWithForecast: one.withForecast,
    ownTimeConstants: Object.freeze(
      ownTimeConstants(
        Array.from({ length: last.stretch + 1 }, (_, i) => readings.filter(({ stretch }) => stretch === i)),
        u,
      ),
    ),
    sharing: heading.sharing,
    noEnd: heading.noEnd,
    curve: curveOf(one),
    foretold: foretold && {
      temperature: last.room.plus(foretold.rise.value),
      standardUncertainty: foretold.rise.standardUncertainty,
    },
    against,
    agreement,
    causes: possibleCauses(signsOf(one, all, u)),
    state,
    because,
  });
}

function stateOf(
  { readings, heading }: Seen,
  stopAt: Temperature,
  u: number,
): { readonly state: RunInState; readonly because: string } {
  const now = readings.at(-1)!.temperature;
  if (now.kelvin >= stopAt.kelvin)
    return { state: "stop", because: `it is at ${about(now)}, the stop temperature is ${about(stopAt)}` };
  const { end, rate, noEnd } = heading;
  if (end !== undefined) {
    const [below, above] = [end.to!.kelvin < stopAt.kelvin, end.from!.kelvin > stopAt.kelvin];
    if (below)
      return {
        state: "go on",
        because: `by its readings it ends at ${tenths(end.temperature)}, at most ${tenths(end.to!, "at least")} (95 %), below ${about(stopAt)}`,
      };
    if (above)
      return {
        state: "stop",
        because: `by its readings it ends at ${tenths(end.temperature)}, at least ${tenths(end.from!, "at most")} (95 %), above ${about(stopAt)}`,
      };
    return {
      state: "cannot tell yet",
      because: `by its readings it ends between ${tenths(end.from!, "at most")} and ${tenths(end.to!, "at least")} (95 %), and ${about(stopAt)} lies between`,
    };
  }
  if (
    rate !== undefined &&
    Math.abs(rate.value.si) <= departs * rate.standardUncertainty.si &&
    noEnd.startsWith("it stands")
  ) {
    const room = (stopAt.kelvin - now.kelvin) / u;
    if (normalCdf(room) >= sure)
      return { state: "go on", because: `it stands at ${about(now)}, below ${about(stopAt)}` };
  }
  const left = timeToStop(now, rate, stopAt);
  return {
    state: "cannot tell yet",
    because: `${noEnd}${left === undefined ? "" : `; at the present rate it is at ${about(stopAt)} in ${minutes(left)}`}`,
  };
}

function timeToStop(
  now: Temperature,
  rate: Measured<TemperatureDifference> | undefined,
  stopAt: Temperature,
): Time | undefined {
  if (rate === undefined || rate.value.si <= departs * rate.standardUncertainty.si) return undefined;
  return quantityFromSi("time", ((stopAt.kelvin - now.kelvin) / rate.value.si) * hour, "minute");
}

/** To a tenth of a degree: finer than any thermometer on a box. */
function about(value: Temperature): string {
  const { scale } = value.toJSON();
  return temperature(Number(value.in(scale).toFixed(1)), scale).toString();
}

/** To a tenth with its zero; the end of an interval is taken outwards, so that it holds what it is said to hold. */
function tenths(value: Temperature, outwards?: "at most" | "at least"): string {
  const { scale } = value.toJSON();
  const reading = value.in(scale);
  const text = outwards === undefined ? formatFixed(reading, 1) : formatFixedLimit(reading, 1, outwards);
  return `${text} ${scale === "degF" ? "°F" : "°C"}`;
}

function minutes(time: Time): string {
  return `${Math.round(time.in("minute"))} min`;
}

function warningsOf(one: Seen, u: number): string[] {
  const { name, readings, heading } = one;
  const warnings: string[] = [];
  const falls = readings.filter((reading, i) => {
    const before = readings[i - 1];
    return (
      before !== undefined &&
      before.stretch === reading.stretch &&
      before.temperature.kelvin - reading.temperature.kelvin > realChange * u * Math.SQRT2
    );
  });
  if (falls.length > 0)
    warnings.push(
      `"${name}" fell while speed and oil stayed as they were (line ${falls.map(({ line }) => line).join(", ")}): oil given, load taken off, bedding in, or a slip in the reading?`,
    );
  const jumps = jumpsOf(one, u);
  if (jumps.length > 0)
    warnings.push(
      `"${name}" jumped (line ${jumps.map(({ line }) => line).join(", ")}): more than steady heating does between two readings.`,
    );
  if (heading.rough)
    warnings.push(
      `"${name}" scatters more about its curve than the thermometer explains, so its end is given a wider uncertainty.`,
    );
  return warnings;
}

/** The curve of the last stretch over the room as it was read, on to where it is nearly there, with its band. */
function curveOf({ readings, heading: { fit, end } }: Seen): RunInBox["curve"] {
  if (fit === undefined || end === undefined) return Object.freeze([]);
  const last = readings.at(-1)!;
  const first = readings.find(({ stretch }) => stretch === last.stretch)!;
  const until =
    last.time.si - first.time.si + Math.max(end.nearlyThere.si, 0.25 * (last.time.si - first.time.si));
  const k = coverageFactor(0.95, Number.POSITIVE_INFINITY);
  return Object.freeze(
    Array.from({ length: 61 }, (_, i) => {
      const t = (until * i) / 60;
      const { value, u } = approachAt(fit, t);
      return Object.freeze({
        time: quantityFromSi("time", first.time.si + t, "minute"),
        temperature: roomAt(readings, first.time.si + t).plus(
          quantityFromSi("temperature difference", value, scaleOf(last)),
        ),
        band: quantityFromSi("temperature difference", k * u, scaleOf(last)),
      });
    }),
  );
}

/** The room between two readings of it; as last read after that. */
function roomAt(readings: readonly RunInReading[], time: number): Temperature {
  const next = readings.findIndex((reading) => reading.time.si >= time);
  if (next <= 0) return readings.at(next === 0 ? 0 : -1)!.room;
  const [a, b] = [readings[next - 1]!, readings[next]!];
  const share = (time - a.time.si) / (b.time.si - a.time.si);
  return a.room.plus(
    quantityFromSi("temperature difference", share * (b.room.kelvin - a.room.kelvin), scaleOf(a)),
  );
}

function worst(states: readonly RunInState[]): RunInState {
  if (states.includes("stop")) return "stop";
  return states.includes("cannot tell yet") ? "cannot tell yet" : "go on";
}

/** Half the time to the stop temperature at the present rate, or half a time constant; between 5 and 60 min. */
function nextReading(boxes: readonly RunInBox[], stopAt: Temperature): Time {
  const waits = boxes.map(({ now, rate, end }) => {
    const toStop = timeToStop(now, rate, stopAt)?.si ?? Number.POSITIVE_INFINITY;
    return Math.min(toStop / 2, end === undefined ? hour / 6 : end.timeConstant.value.si / 2);
  });
  const wait = Math.min(60, Math.max(5, Math.round(Math.min(...waits) / 60)));
  return quantityFromSi("time", wait * 60, "minute");
}

function sentence(
  boxes: readonly RunInBox[],
  state: RunInState,
  readNext: Time,
  speed: RotationalSpeed | undefined,
): string {
  const which = boxes.filter((box) => box.state === state);
  const names = which.map(({ name }) => name).join(" and ");
  switch (state) {
    case "stop":
      return `Stop: ${names}: ${which[0]!.because}.`;
    case "go on":
      return `Go on: every box ends below the stop temperature${speed === undefined ? "" : ` at ${speed}`}; read again in ${readNext}.`;
    case "cannot tell yet":
      return `Cannot tell yet for ${names}; stay by the machine and read again in ${readNext}.`;
  }
}
