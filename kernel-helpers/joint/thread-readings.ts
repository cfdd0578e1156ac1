import {
  type Angle,
  degree,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
} from "../quantity/index.js";
import {
  columnsNamed,
  lengthsOf,
  numbersOf,
  quantitiesOf,
  readingUncertainty,
  type Table,
} from "../survey/index.js";
import type { ThreadReadings } from "./thread-types.js";

const majorName = "major diameter";
const lengthName = "length over threads";
const countName = "threads";
const angleName = "flank angle";

/** What the caller knows of the readings beyond the table's remarks. */
export interface ThreadReadingsOptions {
  /** Standard uncertainty of one flank angle reading; 1° without it, as of a gauge held against the light. */
  readonly angleUncertainty?: Angle;
}

/**
 * What a table of readings tells of a screw thread: `major diameter [in], length over threads [in], threads [-],
 * flank angle [deg], remark`; `-` where a reading was not taken, the column of the flank angle may be missing.
 *
 * major diameter: the largest reading, u of one reading of its instrument, and its calibration
 * pitch: p = L/N of each row, weighed by N²; u(p) = u(L)/√(ΣN²), or from the scatter of the rows where that is greater
 * flank angle: mean; u/√n
 *
 * Valid when: each length is taken from crest to crest over N whole threads, N counted as spaces; both columns of
 * lengths name their instrument in the remarks. Threads stretched by overload read a pitch that is none.
 *
 * @param table  as `rebuild.table("nut-thread")` gives it
 * @param options.angleUncertainty  of one flank angle reading [rad]
 * @returns major diameter [m], pitch [m] and flank angle [rad], each with its standard uncertainty
 * @throws RangeError  a column is missing or empty, a count of threads is no whole number, or a reading is not above 0
 * @throws TypeError   a column of lengths names no instrument
 * @example
 * const bytes = new TextEncoder().encode("# instrument: calliper\nmajor diameter [in],length over threads [in],threads [-]\n0.99,1.25,10");
 * const instruments = { calliper: instrumentFrom("calliper", { title: "calliper", resolution: "1 thou", repeatability: "2 thou" }) };
 * threadReadings(readTable(bytes, { name: "nut-thread", file: "nut-thread.csv", instruments })).pitch.value.in("inch") // 0.125
 * @source JCGM 100:2008 (GUM), 4.2 and 5.1; the uncertainty of a flank angle: common practice, no source
 */
export function threadReadings(table: Table, options: ThreadReadingsOptions = {}): ThreadReadings {
  const { angleUncertainty = degree(1) } = options;
  const unit = table.unitSystem === "inch" ? "inch" : "mm";
  const length = (si: number): Length => quantityFromSi("length", si, unit);

  const majors = present(lengthsOf(table, majorName)).map(({ value }) => value.si);
  requireSome(table, majorName, majors);
  const majorDiameter = measured(length(Math.max(...majors)), length(lengthU(table, majorName)));

  const counts = numbersOf(table, countName);
  const rows = present(lengthsOf(table, lengthName)).map(({ value, row }) => ({
    length: value.si,
    count: counts[row]!,
  }));
  requireSome(
    table,
    lengthName,
    rows.map((row) => row.length),
  );
  for (const { count } of rows)
    if (!(Number.isInteger(count) && count >= 1))
      throw new RangeError(
        `threadReadings: "${countName}" of ${table.name} must be a whole number of 1 or more beside each length, got ${count}`,
      );
  const u = lengthU(table, lengthName);
  const weight = rows.reduce((sum, { count }) => sum + count ** 2, 0);
  const pitch = rows.reduce((sum, row) => sum + row.count * row.length, 0) / weight;
  const squares = rows.reduce((sum, row) => sum + (row.length - row.count * pitch) ** 2, 0);
  const scatter = rows.length < 2 ? 0 : Math.sqrt(squares / (rows.length - 1));

  return Object.freeze({
    kind: "thread readings",
    title: table.name,
    file: table.file,
    majorDiameter,
    pitch: measured(length(pitch), length(Math.max(u, scatter) / Math.sqrt(weight))),
    overThreads: Math.max(...rows.map(({ count }) => count)),
    lengthUncertainty: length(Math.max(u, scatter)),
    flankAngle: flankAngle(table, angleUncertainty),
    unitSystem: unit === "inch" ? "inch" : "metric",
    warnings: Object.freeze(
      scatter > 3 * u
        ? [
            "The lengths over threads scatter more than their instrument allows: the thread may be stretched, or the threads were not counted right.",
          ]
        : [],
    ),
  });
}

function flankAngle(table: Table, u: Angle): Measured<Angle> | undefined {
  if (columnsNamed(table, angleName).length === 0) return undefined;
  const angles = present(quantitiesOf(table, angleName, "angle")).map(({ value }) => value.si);
  if (angles.length === 0) return undefined;
  requireSome(table, angleName, angles);
  const mean = angles.reduce((sum, angle) => sum + angle, 0) / angles.length;
  return measured(
    quantityFromSi("angle", mean, "degree"),
    quantityFromSi("angle", u.si / Math.sqrt(angles.length), "degree"),
  );
}

/** The readings that were taken, each with its row. */
function present<T>(values: readonly (T | undefined)[]): { readonly value: T; readonly row: number }[] {
  return values.flatMap((value, row) => (value === undefined ? [] : [{ value, row }]));
}

function requireSome(table: Table, name: string, values: readonly number[]): void {
  if (values.length === 0)
    throw new RangeError(`threadReadings: "${name}" of ${table.name} must hold at least 1 reading, got 0`);
  const wrong = values.find((value) => !(value > 0));
  if (wrong !== undefined)
    throw new RangeError(`threadReadings: "${name}" of ${table.name} must be more than 0, got ${wrong}`);
}

/** Standard uncertainty of one length of a column, with the instrument's calibration [m]. */
function lengthU(table: Table, name: string): number {
  const instrument = table.conditions.instruments[name];
  if (instrument === undefined)
    throw new TypeError(
      `threadReadings: ${table.file} must say what "${name}" was read with, in a remark such as "# instrument ${name}: calliper"`,
    );
  return Math.hypot(readingUncertainty(instrument).si, instrument.calibration?.si ?? 0);
}
