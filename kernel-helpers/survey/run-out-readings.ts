import { isQuantity, type Length, quantityFromSi, type UnitSystem } from "../quantity/index.js";
import { countDirections, repeatsTest } from "../statistics/index.js";
import { columnsNamed } from "./columns.js";
import { readingUncertainty } from "./instrument.js";
import { plainSmall } from "./run-out-text.js";
import type { Column, Table } from "./table.js";

/** Which columns hold the indicator's readings, and how good they are where no instrument says so. */
export interface IndicatorOptions {
  /** The column of readings; default "reading". */
  readonly readingColumn?: string;
  /** Standard uncertainty of one reading; goes before the instrument's. */
  readonly readingUncertainty?: Length;
}

/** One indicator reading [m], at an angle of the shaft [rad]. */
export interface IndicatorReading {
  readonly angle: number;
  readonly reading: number;
  readonly line: number;
}

/** All readings round the shaft at one station. */
export interface IndicatorStation {
  readonly station: Length | undefined;
  readonly readings: readonly IndicatorReading[];
}

/** Indicator readings of a table, by station along the shaft. */
export interface IndicatorSurvey {
  readonly stations: readonly IndicatorStation[];
  /** Standard uncertainty of one reading [m]. */
  readonly u: number;
  readonly unitSystem: UnitSystem;
  readonly unit: "inch" | "mm";
  readonly warnings: readonly string[];
}

/** Repeats of one place may differ by so many standard uncertainties of their difference. */
const repeatsWithin = 4;
/** Angles are one place where the sine of half their difference is below this. */
const samePlace = 2.5e-9;

/**
 * The indicator readings of a table, sorted by station and angle.
 *
 * The table is long (station, angle, reading) or wide (reading @ 0 deg, reading @ 45 deg, …); the station may be
 * missing where all readings were taken at one. A reading grows when the surface comes nearer to the indicator;
 * the angle is the mark of the shaft that stands under it. Each station may have a zero of its own.
 *
 * @throws RangeError  a column is missing, a reading has no angle or station, a station has fewer than 3 different
 * angles, two readings of one place contradict each other, or nothing says how good a reading is
 */
export function indicatorReadings(where: string, table: Table, options: IndicatorOptions): IndicatorSurvey {
  const { readingColumn = "reading" } = options;
  const columns = columnsNamed(table, readingColumn).filter(({ dimension }) => dimension === "length");
  if (columns.length === 0) {
    const headers = table.columns.map(({ header }) => `"${header}"`).join(", ");
    throw new RangeError(
      `${where}: ${table.name} must have a column "${readingColumn}" in a unit of length, got the columns ${headers}`,
    );
  }
  const angles = columnsNamed(table, "angle").find(({ dimension }) => dimension === "angle");
  const stations = columnsNamed(table, "station").find(({ dimension }) => dimension === "length");
  const u = uncertaintyOf(where, table, readingColumn, options.readingUncertainty);

  const groups = new Map<number, { station: Length | undefined; readings: IndicatorReading[] }>();
  for (const column of columns) {
    for (let row = 0; row < table.rowCount; row++) {
      const reading = column.values[row]!;
      if (Number.isNaN(reading)) continue;
      const line = table.lines[row]!;
      const angle = placeIn(where, table, "an angle", column.angle ?? angles?.values[row], line);
      const place = stations && placeIn(where, table, "a station", stations.values[row], line);
      const key = place === undefined ? 0 : Math.round(place / 1e-9);
      let group = groups.get(key);
      if (group === undefined) {
        const station = place === undefined ? undefined : lengthIn(stations!, place);
        group = { station, readings: [] };
        groups.set(key, group);
      }
      group.readings.push(Object.freeze({ angle, reading, line }));
    }
  }
  if (groups.size === 0)
    throw new RangeError(`${where}: ${table.name} must hold at least 3 readings, got none`);
  const sorted = [...groups.values()]
    .map(({ station, readings }) => ({
      station,
      readings: readings.sort((a, b) => a.angle - b.angle || a.line - b.line),
    }))
    .sort((a, b) => (a.station?.si ?? 0) - (b.station?.si ?? 0));
  for (const { station, readings } of sorted) {
    const count = countDirections(readings.map(({ angle }) => angle));
    if (count < 3)
      throw new RangeError(
        `${where}: at least 3 different angles are needed at each station, got ${count}${station === undefined ? "" : ` at ${station}`}`,
      );
  }
  for (const station of sorted) requireAgreeingRepeats(where, table, station, u);
  return {
    stations: sorted,
    u,
    unitSystem: table.unitSystem ?? "metric",
    unit: table.unitSystem === "inch" ? "inch" : "mm",
    warnings: [...table.warnings, ...sorted.flatMap((station) => repeatWarnings(station, u))],
  };
}

function lengthIn({ unit }: Column, si: number): Length {
  return quantityFromSi("length", si, unit as never);
}

function placeIn(where: string, table: Table, what: string, value: number | undefined, line: number): number {
  if (value !== undefined && !Number.isNaN(value)) return value;
  throw new RangeError(
    `${where}: every reading must have ${what}, got none on line ${line} of ${table.file}`,
  );
}

function uncertaintyOf(where: string, table: Table, column: string, given: Length | undefined): number {
  if (given !== undefined) {
    if (!isQuantity(given, "length") || !(given.si > 0))
      throw new RangeError(`${where}: readingUncertainty must be a length greater than 0, got ${given}`);
    return given.si;
  }
  const instrument = table.conditions.instruments[column];
  if (instrument === undefined)
    throw new RangeError(
      `${where}: how good a reading is must be known, got no instrument for "${column}" in ${table.file}; add a line "# instrument ${column}: …" to the table, or give { readingUncertainty: thou(0.2) }`,
    );
  return readingUncertainty(instrument).si;
}

/** A place read twice must not contradict itself (`repeatsTest`): a wave through both would be neither's. */
function requireAgreeingRepeats(
  where: string,
  table: Table,
  { station, readings }: IndicatorStation,
  u: number,
): void {
  const places = readings.map(({ angle }) =>
    readings.findIndex((other) => Math.abs(Math.sin((angle - other.angle) / 2)) < samePlace),
  );
  const values = readings.map(({ reading }) => reading);
  const { contradictory, worst, noiseRatio } = repeatsTest(places, values, u);
  if (!contradictory) return;
  const [first, second] = worst!.indices.map((i) => readings[i]!).sort((a, b) => a.line - b.line) as [
    IndicatorReading,
    IndicatorReading,
  ];
  const small = (si: number): string =>
    plainSmall(quantityFromSi("length", si), table.unitSystem ?? "metric");
  throw new RangeError(
    `${where}: readings of one place must agree within their uncertainty, got ${small(first.reading)} on line ${first.line} and ${small(second.reading)} on line ${second.line} of ${table.file}${station === undefined ? "" : ` at station ${station}`}, ${Math.round((first.angle * 180) / Math.PI)}°, ${Number(worst!.differenceInU.toPrecision(2))} standard uncertainties of a difference apart; see that the set-up has not moved, read there once more and strike the wrong one, or state the uncertainty of a reading that the repeats show, ${small(noiseRatio! * u)}`,
  );
}

/** A place read twice (0° and again 360°) should read alike: else the indicator or the set-up has moved. */
function repeatWarnings({ station, readings }: IndicatorStation, u: number): string[] {
  for (const [i, first] of readings.entries()) {
    const again = readings
      .slice(i + 1)
      .find(
        ({ angle, reading }) =>
          Math.abs(Math.sin((angle - first.angle) / 2)) < samePlace &&
          Math.abs(reading - first.reading) > repeatsWithin * Math.SQRT2 * u,
      );
    if (again !== undefined)
      return [
        `Lines ${first.line} and ${again.line} read one place${station === undefined ? "" : ` at station ${station}`} and differ by more than the indicator explains: the set-up has moved, or one is misread.`,
      ];
  }
  return [];
}
