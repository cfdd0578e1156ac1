import { isQuantity, type Length, measured, quantityFromSi } from "../quantity/index.js";
import { chiSquareQuantile, fitLine, studentTCdf } from "../statistics/index.js";
import { columnOf, deviationOf, lengthColumn, meanOf } from "./instrument-study-columns.js";
import type { RepeatabilityStudy } from "./instrument-study-types.js";
import { chanceText, plainSmall, uncertaintyText } from "./run-out-text.js";
import type { Column, Table } from "./table.js";

export interface RepeatabilityOptions {
  /** The column of repeated readings; default "reading". */
  readonly column?: string;
  /** The smallest step read off; goes before the instrument's. */
  readonly resolution?: Length;
}

const fewest = 3;
/** Below this many readings the interval of s spans more than a factor of three. */
const handy = 10;
const driftBelow = 0.05;
/** A scatter below half a step is not shown by the steps. */
const hiddenBelow = 0.5;

/**
 * Repeatability of an instrument in one hand, from readings of one place taken again and again, in order.
 *
 * s² = Σ (xᵢ − x̄)²/(n − 1); 95 % interval of σ: s √(ν/χ²₀.₉₇₅) to s √(ν/χ²₀.₀₂₅), ν = n − 1; u(x̄) = s/√n
 * Drift: straight line against the order of reading, t-test of the slope at 5 %, two-sided. One reading to reckon
 * with: u² = s² + δ²/12. Where s < δ/2 the step δ hides the scatter: then no interval, no drift, and u(x̄) is that of
 * the step, δ/√12, for rounded readings that agree are all wrong alike.
 *
 * Valid when: the instrument is taken off and set anew before each reading, errors are independent and about normal
 * but for the drift. The scatter of one place: it holds no calibration, and no roughness from place to place.
 *
 * @param table  one row a reading, in the order taken [m]
 * @param options.column  name of the readings' column [-]
 * @param options.resolution  smallest step read off, > 0 [m]; else the instrument's
 * @returns mean, standard deviation (n − 1) with its interval, drift [m]
 * @throws RangeError  fewer than 3 readings, or all alike or drifting evenly with no resolution known
 * @example
 * const rows = [0.1, 0.3, 0.2, 0.4, 0.2].join("\n");
 * const table = readTable(new TextEncoder().encode(`reading [thou]\n${rows}`), { name: "r", file: "r.csv" });
 * repeatabilityStudy(table).standardDeviation.in("thou") // 0.1140175
 * @source JCGM 100:2008 (GUM), 4.2.2, 4.2.3, F.2.2.1; interval of a standard deviation: NIST/SEMATECH e-Handbook of
 * Statistical Methods, 7.2.3.1 (from memory)
 */
export function repeatabilityStudy(table: Table, options: RepeatabilityOptions = {}): RepeatabilityStudy {
  const where = "repeatabilityStudy";
  const { column: name = "reading" } = options;
  const column = lengthColumn(where, table, name);
  const readings = column.values.filter((value) => !Number.isNaN(value));
  const n = readings.length;
  if (n < fewest)
    throw new RangeError(
      `${where}: at least ${fewest} readings of one place are needed, got ${n} in ${columnOf(table, column)}; ${handy} are handy`,
    );
  const instrument = table.conditions.instruments[column.name];
  const resolution = options.resolution ?? instrument?.resolution;
  if (resolution !== undefined && (!isQuantity(resolution, "length") || !(resolution.si > 0)))
    throw new RangeError(`${where}: resolution must be a length greater than 0, got ${resolution}`);
  const step = resolution?.si ?? 0;
  const s = deviationOf(readings);
  // Rounding leaves a last bit in the mean of equal readings.
  const alike = readings.every((value) => value === readings[0]);
  if (alike && step === 0)
    throw new RangeError(
      `${where}: readings that are all alike tell no scatter unless the step read off is known, got ${n} alike in ${columnOf(table, column)}; give { resolution }, or name the instrument`,
    );
  const dof = n - 1;
  const limited = alike || s < hiddenBelow * step;
  const unit = column.unit as never;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const system = table.unitSystem ?? "metric";
  const interval = limited
    ? undefined
    : Object.freeze({
        low: lengthOf(s * Math.sqrt(dof / chiSquareQuantile(0.975, dof))),
        high: lengthOf(s * Math.sqrt(dof / chiSquareQuantile(0.025, dof))),
      });
  const stated = instrument?.repeatability;
  const asStated = interval && stated && stated >= interval.low && stated <= interval.high;
  const drift = limited ? undefined : driftOf(where, table, column, readings, step, lengthOf);
  const found = {
    standardDeviation: lengthOf(alike ? 0 : s),
    interval,
    resolutionLimited: limited,
    asStated,
    drift,
    count: n,
  };
  return Object.freeze<RepeatabilityStudy>({
    kind: "repeatability study",
    title: table.name,
    file: table.file,
    unitSystem: system,
    instrument,
    ...found,
    mean: limited
      ? measured(lengthOf(meanOf(readings)), lengthOf(step / Math.sqrt(12)))
      : measured(lengthOf(meanOf(readings)), lengthOf(s / Math.sqrt(n)), dof),
    degreesOfFreedom: dof,
    readingUncertainty: lengthOf(Math.hypot(alike ? 0 : s, step / Math.sqrt(12))),
    text: sentence(found, system),
    warnings: Object.freeze([
      ...table.warnings,
      ...(n < handy
        ? [`${n} readings leave the standard deviation poorly known; ${handy} or more are handy.`]
        : []),
      ...(limited
        ? [
            `The readings are limited by the step read off, ${resolution}: they scatter less than half of it. Estimate to a fraction of a step, or reckon with the step.`,
          ]
        : []),
      ...(asStated === false
        ? [
            `The repeatability stated in rebuild.json, ${stated}, lies outside what these readings allow, ${interval!.low} to ${interval!.high} (95 %).${stated! < interval!.low ? ` Farthest from the mean is ${farthest(table, column, meanOf(readings))}: if it is misread, strike it and study again; else state what these readings show.` : ""}`,
          ]
        : []),
    ]),
  });
}

function driftOf(
  where: string,
  table: Table,
  column: Column,
  readings: readonly number[],
  step: number,
  lengthOf: (si: number) => Length,
): NonNullable<RepeatabilityStudy["drift"]> {
  const order = readings.map((_, i) => i);
  // A row of even steps has no scatter but that of the rounding to the step read off.
  const isEven = Math.abs(curlOf(readings)) <= 8 * Number.EPSILON * Math.max(...readings.map(Math.abs));
  if (isEven && step === 0)
    throw new RangeError(
      `${where}: readings that drift evenly tell no scatter unless the step read off is known, got ${readings.length} on one line in ${columnOf(table, column)}; give { resolution }, or name the instrument`,
    );
  const line = fitLine(order, readings, isEven ? { u: step / Math.sqrt(12) } : {});
  const dof = line.scaled ? line.degreesOfFreedom : Number.POSITIVE_INFINITY;
  const chance = 2 * studentTCdf(-Math.abs(line.slope) / line.uSlope, dof);
  return Object.freeze({
    perReading: measured(lengthOf(line.slope), lengthOf(line.uSlope), dof),
    chance,
    real: chance < driftBelow,
  });
}

/** The reading farthest from the mean, and its line. */
function farthest(table: Table, { values, text }: Column, mean: number): string {
  const off = (row: number): number => (Number.isNaN(values[row]!) ? -1 : Math.abs(values[row]! - mean));
  const row = values.reduce((most, _, i) => (off(i) > off(most) ? i : most), 0);
  return `${text[row]} on line ${table.lines[row]}`;
}

/** The largest second difference: 0 where readings go up or down by even steps. */
function curlOf(readings: readonly number[]): number {
  let most = 0;
  for (let i = 2; i < readings.length; i++) {
    const bend = readings[i]! - 2 * readings[i - 1]! + readings[i - 2]!;
    if (Math.abs(bend) > Math.abs(most)) most = bend;
  }
  return most;
}

function sentence(
  {
    count,
    standardDeviation,
    interval,
    resolutionLimited,
    drift,
  }: Pick<RepeatabilityStudy, "count" | "standardDeviation" | "interval" | "resolutionLimited" | "drift">,
  system: RepeatabilityStudy["unitSystem"],
): string {
  if (resolutionLimited || interval === undefined)
    return `${count} readings of one place scatter less than half a step of the scale: the step decides, not the hand.`;
  const scatter = `${count} readings of one place repeat to ${uncertaintyText(standardDeviation, system)} (one standard deviation, n − 1); between ${uncertaintyText(interval.low, system)} and ${uncertaintyText(interval.high, system)} with 95 % confidence.`;
  if (drift === undefined) return scatter;
  const total = drift.perReading.value.times(count - 1);
  return drift.real
    ? `${scatter} They drift by ${plainSmall(total, system)} from first to last; by chance so much in ${chanceText(drift.chance)} of studies: warmth of the hand, a loose lock, or a setting that creeps.`
    : `${scatter} No drift shows.`;
}
