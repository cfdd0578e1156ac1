import { type Angle, type Length, quantityFromSi } from "../quantity/index.js";
import { columnsNamed } from "./columns.js";
import { anglesIn, groupedByStation, stationsOf } from "./profile-stations.js";
import { temperatureCorrection } from "./profile-temperature.js";
import type { DiameterReading, Profile } from "./profile-types.js";
import { uncertaintyOfReading, uncertaintyOfStation } from "./profile-uncertainty.js";
import { repeatWarningsOf } from "./repeated-readings.js";
import type { Column, Table } from "./table.js";

/** Which columns hold the survey, and how good its readings are where no instrument says so. */
export interface ProfileOptions {
  /** Standard uncertainty of one reading against its neighbours; goes before the instrument's. */
  readonly readingUncertainty?: Length;
  /** Standard uncertainty of a station's position; goes before the instrument's. */
  readonly stationUncertainty?: Length;
  /** The column of diameters; default "diameter". */
  readonly diameterColumn?: string;
  /** The column of places along the shaft; default "station". */
  readonly stationColumn?: string;
}

/**
 * The diameter along the shaft, at 20 °C, from a table of readings.
 *
 * The table is long (station, angle, diameter; the angle may be missing) or wide (diameter @ 0 deg, diameter @
 * 90 deg). Readings are sorted by station, angle and size, so the order of the rows does not matter.
 *
 * At 20 °C: L₂₀ = L (1 + α_i ΔT)/(1 + α_p ΔT), where the table gives temperature and both expansions; else as read.
 * Reading: u² = repeatability² + resolution²/12. Station mean: u(mean) = √(Σu²)/m.
 * Common to all readings: u² = calibration² + (temperature's part at the largest diameter)².
 *
 * Readings of one place (station and angle) that contradict each other are kept, with a warning that names their lines:
 * `wearBands` and `fitTaper` put the one aside that neighbours contradict, and refuse both where none does.
 *
 * Valid when: part and instrument have one temperature. Stations are not corrected for temperature. A cell
 * that says that no reading was taken (-) gives none.
 *
 * @param table  as `readTable` gives it, diameters and stations [m], angles [rad]
 * @param options.readingUncertainty  standard uncertainty of one reading [m]; needed where no instrument is named
 * @param options.stationUncertainty  standard uncertainty of a station's position [m]
 * @param options.diameterColumn  name of the diameters' column [-]
 * @param options.stationColumn  name of the stations' column [-]
 * @returns the profile: readings with their lines, stations along the shaft, uncertainties [m]
 * @throws RangeError  a column is missing or not of its kind, no reading was taken, a reading has no station, or
 *   nothing says how good a reading is
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0,2.4372\n1,2.4370");
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * profileOf(survey, { readingUncertainty: thou(0.1) }).stations[0].mean // 2.4372 in
 * @source correction: see `toReferenceTemperature`; u: JCGM 100:2008 (GUM), 4.2, 4.3.7, 5.1.2
 */
export function profileOf(table: Table, options: ProfileOptions = {}): Profile {
  const { diameterColumn = "diameter", stationColumn = "station" } = options;
  const diameters = lengthColumns(table, diameterColumn);
  const [station, ...more] = lengthColumns(table, stationColumn);
  if (more.length > 0)
    throw new RangeError(
      `profileOf: ${table.name} must have one column "${stationColumn}", got ${more.length + 1}`,
    );
  const angle = columnsNamed(table, "angle").find(({ dimension }) => dimension === "angle");
  if (angle !== undefined && diameters.some((column) => column.angle !== undefined))
    throw new RangeError(
      `profileOf: ${table.name} must give angles in a column or in its headers, got both: "${angle.header}" and "${diameters[0]!.header}"`,
    );
  const unit = diameters[0]!.unit!;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit as never);
  const u = lengthOf(uncertaintyOfReading(table, diameterColumn, options.readingUncertainty).si);
  const { factor, relativeU, text, warnings: doubts } = temperatureCorrection(table, diameterColumn);
  const angleOf = angleReader(angle);

  const readings: DiameterReading[] = [];
  for (const column of diameters) {
    for (let row = 0; row < table.rowCount; row++) {
      const read = column.values[row]!;
      if (Number.isNaN(read)) continue;
      const at = station!.values[row]!;
      if (Number.isNaN(at))
        throw new RangeError(
          `profileOf: every reading must have a station, got none on line ${table.lines[row]} of ${table.file}`,
        );
      readings.push(
        Object.freeze({
          station: quantityFromSi("length", at, station!.unit as never),
          angle: angleOf(column, row),
          diameter: factor === 1 ? lengthOf(read) : lengthOf(read * factor),
          asRead: lengthOf(read),
          standardUncertainty: u,
          line: table.lines[row]!,
          header: column.header,
          remark: remarkOf(table, row),
        }),
      );
    }
  }
  if (readings.length === 0)
    throw new RangeError(`profileOf: ${table.name} must hold at least 1 diameter read, got none`);
  const groups = groupedByStation(readings);
  const sorted = groups.flat();

  const largest = readings.reduce((most, { asRead }) => Math.max(most, asRead.si), 0);
  const instrument = table.conditions.instruments[diameterColumn];
  const common = [
    { name: `setting of ${instrument?.title ?? "the instrument"}`, si: instrument?.calibration?.si ?? 0 },
    { name: "temperature of shaft and instrument", si: largest * relativeU },
  ].filter(({ si }) => si > 0);
  const stationU = uncertaintyOfStation(table, stationColumn, options.stationUncertainty);
  const profile: Omit<Profile, "warnings"> = {
    kind: "profile",
    title: table.name,
    file: table.file,
    readings: Object.freeze(sorted),
    stations: Object.freeze(stationsOf(groups, sorted)),
    angles: Object.freeze(anglesIn(sorted)),
    stationUncertainty: quantityFromSi("length", stationU ?? 0, station!.unit as never),
    commonUncertainty: lengthOf(Math.hypot(...common.map(({ si }) => si))),
    commonSources: Object.freeze(
      common.map(({ name, si }) => Object.freeze({ name, standardUncertainty: lengthOf(si) })),
    ),
    correction: text,
    unitSystem: table.unitSystem ?? "metric",
  };
  return Object.freeze<Profile>({
    ...profile,
    warnings: Object.freeze([
      ...table.warnings,
      ...doubts,
      ...repeatWarningsOf(profile),
      ...(stationU === undefined
        ? ["No instrument is named for the stations; their positions are taken as exact."]
        : []),
    ]),
  });
}

function lengthColumns(table: Table, name: string): readonly Column[] {
  const named = columnsNamed(table, name);
  const lengths = named.filter(({ dimension }) => dimension === "length");
  if (lengths.length > 0) return lengths;
  const headers = table.columns.map(({ header }) => `"${header}"`).join(", ");
  const found = named.length === 0 ? `the columns ${headers}` : `"${named[0]!.header}", which is no length`;
  throw new RangeError(
    `profileOf: ${table.name} must have a column "${name}" in a unit of length, got ${found}`,
  );
}

/** The angle of a reading, from its column's header or the angle column of its row; one object for each angle. */
function angleReader(angle: Column | undefined): (column: Column, row: number) => Angle | undefined {
  const made = new Map<number, Angle>();
  return (column, row) => {
    const si = column.angle ?? angle?.values[row] ?? Number.NaN;
    if (Number.isNaN(si)) return undefined;
    const key = Math.round(si / 1e-9);
    let found = made.get(key);
    if (found === undefined) {
      found = quantityFromSi("angle", si, "degree");
      made.set(key, found);
    }
    return found;
  };
}

function remarkOf(table: Table, row: number): string {
  return table.columns
    .filter(({ name, dimension }) => dimension === "text" && /^(remark|comment|note)s?$/.test(name))
    .map(({ text }) => text[row]!)
    .filter((text) => text !== "")
    .join("; ");
}
