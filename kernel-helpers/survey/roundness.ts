import { type Angle, isQuantity, type Length, measured, quantityFromSi } from "../quantity/index.js";
import { countDirections, fitHarmonics, type HarmonicFit } from "../statistics/index.js";
import { blindWarning, lobesOf, visibleDeviation } from "./roundness-lobes.js";
import { roundnessSentence } from "./roundness-sentence.js";
import type { Roundness, SetUp } from "./roundness-types.js";
import { veeFactor } from "./roundness-vee.js";
import { type IndicatorOptions, type IndicatorReading, indicatorReadings } from "./run-out-readings.js";
import { scattersTooMuch, scatterWarning } from "./scatter-test.js";
import type { Table } from "./table.js";

/** How the section was read. */
export interface RoundnessOptions extends IndicatorOptions {
  /** How the shaft was held and turned: it decides what a reading means, so it must be named. */
  readonly setUp: SetUp;
  /** Which station, where the table holds several. */
  readonly station?: Length;
  /** Highest number of lobes looked for; default as many as the angles allow, at most 15. */
  readonly highest?: number;
}

/** More lobes than these are waviness, not roundness, at the few readings of a bench. */
const mostLobes = 15;

/**
 * Roundness of one section from indicator readings round it: least-squares circle, deviation, lobes.
 *
 * reading(θ) = m + Σ F(n) (aₙ cos nθ + bₙ sin nθ), n = 1 … highest
 * - Between centres F = 1: order 1 is the least-squares circle (eccentricity = its amplitude, half of what it gives
 *   to the TIR), and the roundness deviation is peak to valley of the readings about it.
 * - In a vee block a reading is NOT the change of radius: each order is divided by the vee's factor, see `veeFactor`.
 *   Order 1 does not show there; orders with |F| < 0.2 are refused and named; the deviation is that of the lobes
 *   that show, so it is the least it can be.
 * A lobe is real where its chance is below 5 %, shared evenly among all orders looked for.
 * u(deviation): between centres √2 u, that of a difference of two readings; in a vee from the lobes it is made of.
 *
 * Valid when: eccentricity e and lobes are small against the radius R: of order 2 there is e²/(4R) too much. Between
 * readings the surface is not seen: of N equally spaced readings N − n lobes look like n. Noise makes the peak to
 * valley too large by about the spread of the noise.
 *
 * @param table  readings with their angle on the shaft, a reading growing as the surface comes nearer [m], [rad]
 * @param options.setUp  between centres, or in a vee block of an included angle [rad]
 * @param options.station  which station [m], where there are several
 * @param options.highest  highest number of lobes looked for [-]
 * @param options.readingUncertainty  standard uncertainty of one reading [m]; needed where no instrument is named
 * @param options.readingColumn  name of the readings' column [-]
 * @returns circle, deviation and lobes, on radius [m]; directions [rad]
 * @throws RangeError  no set-up named, several stations and none chosen, too few angles for `highest`, readings of one
 *   place that contradict each other, or a vee angle outside 0 to 180°
 * @example
 * const rows = [0, 45, 90, 135, 180, 225, 270, 315].map((a) => `${a},${Math.cos((a * Math.PI) / 180)}`);
 * const bytes = new TextEncoder().encode(["angle [deg],reading [thou]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "box", file: "box.csv" });
 * const setUp = { held: "between centres" };
 * roundnessOf(table, { setUp, readingUncertainty: thou(0.1) }).eccentricity.value.in("thou") // 1
 * @source least-squares reference circle and roundness deviation RONt: ISO 12181-1:2011, 3.3 (ISO/TS 12181-1:2003),
 * and ISO 12181-2:2011 (from memory)
 */
export function roundnessOf(table: Table, options: RoundnessOptions): Roundness {
  const where = "roundnessOf";
  const { setUp } = options;
  checkSetUp(where, setUp);
  const survey = indicatorReadings(where, table, options);
  const { station, readings } = chosen(where, survey.stations, options.station);
  const angles = readings.map(({ angle }) => angle);
  const angleCount = countDirections(angles);
  const allowed = Math.floor((angleCount - 1) / 2);
  const { highest = Math.min(allowed, mostLobes) } = options;
  if (!Number.isInteger(highest) || highest < 1 || highest > allowed)
    throw new RangeError(
      `${where}: highest must be a whole number from 1 to ${allowed} for ${angleCount} angles, got ${highest}`,
    );
  const orders = Array.from({ length: highest }, (_, k) => k + 1);
  const fit = fitHarmonics(
    angles,
    readings.map(({ reading }) => reading),
    { orders, u: survey.u },
  );
  const tooMuch = scattersTooMuch(fit.chiSquare!, fit.degreesOfFreedom);
  const noiseRatio = fit.degreesOfFreedom > 0 ? Math.sqrt(fit.chiSquare! / fit.degreesOfFreedom) : undefined;
  const widened = tooMuch ? noiseRatio! : 1;
  const dof = tooMuch ? fit.degreesOfFreedom : Number.POSITIVE_INFINITY;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, survey.unit);
  const angleOf = (si: number): Angle => quantityFromSi("angle", si, "degree");

  const centred = setUp.held === "between centres";
  const factors = orders.map((n) => (centred ? 1 : veeFactor(n, setUp.included)));
  const waves = fit.harmonics.map((wave, k) => ({ wave, factor: factors[k]! }));
  const lobes = waves
    .slice(1)
    .map((wave) => lobesOf(wave, { widened, dof, lengthOf, angleOf, among: highest - 1 }));
  const circle = fit.harmonics[0]!;
  const heights = readings.map(({ reading }) => reading);
  const deviation = centred
    ? measured(lengthOf(spread(aboutCircle(readings, fit))), lengthOf(Math.SQRT2 * survey.u * widened), dof)
    : visibleDeviation(waves, fit, { widened, dof, lengthOf });
  const found = {
    setUp,
    station,
    tir: lengthOf(spread(heights)),
    eccentricity: centred
      ? measured(lengthOf(circle.amplitude), lengthOf(circle.uAmplitude * widened), dof)
      : undefined,
    direction: centred ? measured(angleOf(circle.phase), angleOf(circle.uPhase * widened), dof) : undefined,
    deviation,
    deviationIs: centred ? ("measured" as const) : ("at least" as const),
    lobes: Object.freeze(lobes),
  };
  return Object.freeze<Roundness>({
    kind: "roundness",
    title: table.name,
    unitSystem: survey.unitSystem,
    readingCount: readings.length,
    angleCount,
    ...found,
    noiseRatio,
    text: roundnessSentence(found, survey.unitSystem),
    warnings: Object.freeze([
      ...survey.warnings,
      ...(tooMuch ? [scatterWarning(noiseRatio!)] : []),
      ...blindWarning(lobes),
      ...(highest < 3
        ? [
            `${angleCount} angles do not tell three lobes from fewer; read at least 7 angles, 8 are handy (every 45°).`,
          ]
        : []),
    ]),
  });
}

function checkSetUp(where: string, setUp: SetUp): void {
  const held: unknown = setUp?.held;
  if (held !== "between centres" && held !== "in a vee block")
    throw new RangeError(
      `${where}: setUp must say how the shaft was held, { held: "between centres" } or { held: "in a vee block", included: degree(90) }, got ${JSON.stringify(setUp)}`,
    );
  if (setUp.held === "in a vee block" && !isQuantity(setUp.included, "angle"))
    throw new RangeError(
      `${where}: a vee block needs its included angle, for a reading in it is no change of radius, got ${String(setUp.included)}`,
    );
}

function chosen(
  where: string,
  stations: readonly {
    readonly station: Length | undefined;
    readonly readings: readonly IndicatorReading[];
  }[],
  wanted: Length | undefined,
): { readonly station: Length | undefined; readonly readings: readonly IndicatorReading[] } {
  const list = stations.map(({ station }) => String(station)).join(", ");
  if (wanted === undefined) {
    if (stations.length === 1) return stations[0]!;
    throw new RangeError(`${where}: one station must be chosen with { station }, got ${list}`);
  }
  const found = stations.find(
    ({ station }) => station !== undefined && Math.abs(station.si - wanted.si) < 1e-6,
  );
  if (found === undefined)
    throw new RangeError(`${where}: no reading was taken at ${wanted}, got stations ${list}`);
  return found;
}

/** Readings less mean and least-squares circle [m]. */
function aboutCircle(readings: readonly IndicatorReading[], fit: HarmonicFit): number[] {
  const { cosine, sine } = fit.harmonics[0]!;
  return readings.map(
    ({ angle, reading }) => reading - fit.mean - cosine * Math.cos(angle) - sine * Math.sin(angle),
  );
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
