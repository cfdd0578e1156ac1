import {
  type Angle,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import { countDirections, fitHarmonics, type Harmonic } from "../../statistics/index.js";
import { anglesOf, columnsNamed, readingUncertainty, type Table } from "../../survey/index.js";

/** How a mounted wheel was read. */
export interface WheelRunOutOptions {
  /** From the axis to where the face was read. */
  readonly faceRadius: Length;
  /** Standard uncertainty of one reading; goes before the instrument's that a remark of the table names. */
  readonly readingUncertainty?: Length;
}

/** One ring of indicator readings, split. */
export interface RingRunOut {
  /** Largest less smallest, as read. */
  readonly tir: Length;
  /** Once a turn, half the swing it makes: eccentricity on radius, or half the swing of the face. */
  readonly once: Measured<Length>;
  readonly towards: Measured<Angle>;
  /** Chance that noise gives so much [-]. */
  readonly chance: number;
  /** Whether that chance is below 1 %. */
  readonly real: boolean;
  /** What is left without it, peak to valley. */
  readonly rest: Length;
  readonly readingCount: number;
}

/** Run-out of a wheel on its shaft. */
export interface WheelRunOut {
  readonly kind: "wheel run-out";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  /** Rim against the axis: eccentric (offset) and out of round. */
  readonly rim: RingRunOut;
  /** Face against the axis: leaning (wobble) and uneven; undefined where the face was not read. */
  readonly face: RingRunOut | undefined;
  /** How far the wheel leans from square: swing of the face once a turn over the radius where it was read. */
  readonly lean: Measured<Angle> | undefined;
  readonly warnings: readonly string[];
}

const realBelow = 0.01;
/** Waves fitted along, so that an oval or three lobes do not leak into the eccentricity at uneven angles. */
const highestOrder = 3;

/**
 * Run-out of a wheel on its shaft from indicator readings on rim and face, split into offset, wobble and out of round.
 *
 * The first harmonic of the rim's readings is its eccentricity ON RADIUS (half of the total indicator reading it
 * makes alone); that of the face's readings over their radius is how far the wheel leans; what is left is out of
 * round, or an uneven face.
 *
 * Valid when: the shaft turns in its bearings without end play. End play falls on the face's readings: hold the shaft
 * against one collar, or read two indicators half a turn apart and halve their difference.
 *
 * @param table  columns angle, rim and, if read, face [rad], [m], [m]; the angle is the mark under the indicator
 * @param options.faceRadius  where the face was read, > 0 [m]
 * @param options.readingUncertainty  standard uncertainty of a reading, > 0 [m]
 * @returns rim and face with uncertainties [m], the lean [rad]
 * @throws RangeError  a column is missing, fewer than 4 different angles, nothing says how good a reading is
 * @example
 * const rows = [0, 45, 90, 135, 180, 225, 270, 315].map((a) => `${a},${5 * Math.cos((a * Math.PI) / 180)}`);
 * const bytes = new TextEncoder().encode(["angle [deg],rim [thou]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "pulley", file: "pulley.csv" });
 * wheelRunOut(table, { faceRadius: inch(14), readingUncertainty: thou(0.5) }).rim.once.value.in("thou").toFixed(2) // "5.00"
 * @source first harmonic as the least-squares circle, see `fitHarmonics`; the split: common practice of the trade
 */
export function wheelRunOut(table: Table, options: WheelRunOutOptions): WheelRunOut {
  const { faceRadius } = options;
  if (!(faceRadius.si > 0))
    throw new RangeError(`wheelRunOut: faceRadius must be above 0, got ${faceRadius}`);
  const angles = anglesOf(table);
  const units = table.unitSystem ?? "inch";
  const rim = ringOf(table, "rim", angles, options.readingUncertainty, units);
  if (rim === undefined)
    throw new RangeError(`wheelRunOut: ${table.file} must have a column "rim" in a unit of length, got none`);
  const face = ringOf(table, "face", angles, options.readingUncertainty, units);
  const lean =
    face &&
    measured(
      quantityFromSi("angle", face.once.value.si / faceRadius.si, "degree"),
      quantityFromSi("angle", face.once.standardUncertainty.si / faceRadius.si, "degree"),
      face.once.degreesOfFreedom,
    );
  return Object.freeze({
    kind: "wheel run-out",
    title: table.name,
    unitSystem: units,
    rim,
    face,
    lean,
    warnings: Object.freeze(
      face === undefined ? ["The face was not read, so a wheel that leans is not found."] : [],
    ),
  });
}

function ringOf(
  table: Table,
  name: string,
  angles: readonly (Angle | undefined)[],
  given: Length | undefined,
  units: UnitSystem,
): RingRunOut | undefined {
  const column = columnsNamed(table, name).find(({ dimension }) => dimension === "length");
  if (column === undefined) return undefined;
  const instrument = table.conditions.instruments[name];
  const u = given ?? (instrument && readingUncertainty(instrument));
  if (u === undefined || !(u.si > 0))
    throw new RangeError(
      `wheelRunOut: nothing says how good a reading of "${name}" is: name its instrument in a remark of ${table.file}, or give readingUncertainty`,
    );
  const readings = table.lines.flatMap((line, row) => {
    const [angle, value] = [angles[row], column.values[row]!];
    if (Number.isNaN(value)) return [];
    if (angle === undefined)
      throw new RangeError(`wheelRunOut: ${table.file} line ${line}: a reading needs its angle, got none`);
    return [{ angle: angle.si, value }];
  });
  const places = readings.map(({ angle }) => angle);
  const different = countDirections(places);
  if (different < 4)
    throw new RangeError(
      `wheelRunOut: "${name}" needs readings at 4 different angles at least, got ${different}`,
    );
  const orders = Array.from({ length: highestOrder }, (_, i) => i + 1).filter((n) => 1 + 2 * n <= different);
  const values = readings.map(({ value }) => value);
  const fit = fitHarmonics(places, values, { orders, u: u.si });
  const wave = fit.harmonics[0]!;
  const rest = values.map((value, i) => value - fit.mean - onceAt(wave, places[i]!));
  const lengthIn = (si: number): Length =>
    quantityFromSi("length", si, units === "inch" ? "thou" : "micrometre");
  const spread = (list: readonly number[]): Length => lengthIn(Math.max(...list) - Math.min(...list));
  return Object.freeze({
    tir: spread(values),
    once: measured(lengthIn(wave.amplitude), lengthIn(wave.uAmplitude), wave.degreesOfFreedom),
    towards: measured(
      quantityFromSi("angle", wave.phase, "degree"),
      quantityFromSi("angle", wave.uPhase, "degree"),
      wave.degreesOfFreedom,
    ),
    chance: wave.chance,
    real: wave.chance < realBelow,
    rest: spread(rest),
    readingCount: readings.length,
  });
}

function onceAt({ cosine, sine }: Harmonic, angle: number): number {
  return cosine * Math.cos(angle) + sine * Math.sin(angle);
}
