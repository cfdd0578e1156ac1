import {
  type Angle,
  type AnyQuantity,
  type Length,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import {
  countDirections,
  fitHarmonics,
  type Harmonic,
  type HarmonicCovariance,
  harmonicOf,
} from "../../statistics/index.js";
import { columnsNamed, readingUncertainty, type Table } from "../../survey/index.js";
import { widening } from "../../survey/scatter-test.js";
import type { RingRunOut, Towards, WheelRunOutOptions } from "./wheel-run-out-types.js";

/** Below this chance something is taken for real. */
const realBelow = 0.01;
/** Waves fitted along, so that an oval or three lobes do not leak into the eccentricity at uneven angles. */
const highestOrder = 3;

/** What goes once a turn, as components [m]. */
export interface OnceATurn {
  readonly wave: Harmonic;
  readonly covariance: HarmonicCovariance;
}

/** One ring of indicator readings: split, and its once-a-turn part as a vector; undefined where it was not read. */
export function ringRunOut(
  table: Table,
  name: string,
  angles: readonly (Angle | undefined)[],
  { readingUncertainty: given }: WheelRunOutOptions,
  units: UnitSystem,
): { readonly ring: RingRunOut; readonly once: OnceATurn } | undefined {
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
  // Rougher than the instrument explains (a scratch, rust, lobes beyond those fitted): the scatter widens.
  const { factor, degreesOfFreedom } = widening(fit.chiSquare!, fit.degreesOfFreedom);
  const waves = fit.harmonics.map(({ order, cosine, sine }, i) => {
    const covariance = scaled(fit.covariances[i]!, factor ** 2);
    return { covariance, wave: harmonicOf(order, cosine, sine, covariance, degreesOfFreedom) };
  });
  const { wave, covariance } = waves[0]!;
  const rest = values.map(
    (value, i) => value - fit.mean - wave.cosine * Math.cos(places[i]!) - wave.sine * Math.sin(places[i]!),
  );
  const lengthIn = lengthMaker(units);
  const spread = (list: readonly number[]): Length => lengthIn(Math.max(...list) - Math.min(...list));
  const ring = Object.freeze<RingRunOut>({
    tir: spread(values),
    once: measured(lengthIn(wave.amplitude), lengthIn(wave.uAmplitude), wave.degreesOfFreedom),
    towards: directionOf(wave),
    chance: wave.chance,
    real: wave.chance < realBelow,
    rest: spread(rest),
    lobes: Object.freeze(
      waves
        .slice(1)
        .filter((lobe) => lobe.wave.chance < realBelow)
        .sort((a, b) => b.wave.amplitude - a.wave.amplitude)
        .map(({ wave: { order, amplitude, uAmplitude, chance, degreesOfFreedom } }) =>
          Object.freeze({
            order,
            peakToValley: measured(lengthIn(2 * amplitude), lengthIn(2 * uAmplitude), degreesOfFreedom),
            chance,
          }),
        ),
    ),
    readingCount: readings.length,
  });
  return { ring, once: { wave, covariance } };
}

/** What is left of one once-a-turn vector without another, each times a factor (1, or 1 over a radius). */
export function vectorBetween<Q extends AnyQuantity>(
  of: OnceATurn,
  without: OnceATurn,
  [times, timesWithout]: readonly [number, number],
  quantity: (si: number) => Q,
): Towards<Q> {
  const [a, b] = [scaled(of.covariance, times ** 2), scaled(without.covariance, timesWithout ** 2)];
  const wave = harmonicOf(
    1,
    times * of.wave.cosine - timesWithout * without.wave.cosine,
    times * of.wave.sine - timesWithout * without.wave.sine,
    { cosine: a.cosine + b.cosine, sine: a.sine + b.sine, both: a.both + b.both },
    Math.min(of.wave.degreesOfFreedom, without.wave.degreesOfFreedom),
  );
  return Object.freeze({
    amount: measured(quantity(wave.amplitude), quantity(wave.uAmplitude), wave.degreesOfFreedom),
    towards: directionOf(wave),
    chance: wave.chance,
    real: wave.chance < realBelow,
  });
}

/** Lengths as an indicator shows them. */
export function lengthMaker(units: UnitSystem): (si: number) => Length {
  return (si) => quantityFromSi("length", si, units === "inch" ? "thou" : "micrometre");
}

function directionOf({ phase, uPhase, degreesOfFreedom }: Harmonic): RingRunOut["towards"] {
  return measured(
    quantityFromSi("angle", phase, "degree"),
    quantityFromSi("angle", uPhase, "degree"),
    degreesOfFreedom,
  );
}

function scaled({ cosine, sine, both }: HarmonicCovariance, by: number): HarmonicCovariance {
  return { cosine: cosine * by, sine: sine * by, both: both * by };
}
