import {
  type Angle,
  type Length,
  type Mass,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import { chiSquareSurvival, fitHarmonics } from "../../statistics/index.js";
import { column, quantitiesOf, type Table } from "../../survey/index.js";
import { angleIn, type MeasuredUnbalance, measuredUnbalance } from "./unbalance-vector.js";

/** What else is known of the trial on ways. */
export interface BalanceOnWaysOptions {
  /** From the axis to where the mass is hung. */
  readonly radius: Length;
  /** Standard uncertainty of one mass found, how finely it was tried: half the smallest step, say. */
  readonly massUncertainty: Mass;
}

/** Leftovers so rare by the stated uncertainty alone mean that the masses scatter more. */
const scatterChance = 0.01;

/** The unbalance of a wheel found on level ways. */
export interface BalanceOnWays {
  readonly kind: "balance on ways";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly radius: Length;
  /** The heavy side, and by how much. */
  readonly heavy: MeasuredUnbalance;
  /** The mass to hang at the radius, half a turn from the heavy side. */
  readonly correction: { readonly mass: Measured<Mass>; readonly angle: Measured<Angle> };
  /** The mean mass: what rolling friction of the ways asks for, wherever the wheel stands. */
  readonly friction: Mass;
  /** Chance that a balanced wheel gives masses as uneven as these [-]. */
  readonly chance: number;
  /** Each position tried: which mark lay level, and the mass found; with what the fit leaves over. */
  readonly readings: readonly {
    readonly angle: Angle;
    readonly mass: Mass;
    readonly left: Mass;
    readonly line: number;
  }[];
  readonly warnings: readonly string[];
}

/**
 * Static balance on level ways by hanging masses: mark by mark is brought level with the axis, and there the mass is
 * found that just starts the wheel rolling down on that side.
 *
 * m(θ) = m₀ − (U/r)·cos(θ − φ): least where the heavy side φ lies level itself, for it helps; m₀ is rolling friction.
 * Fitted by least squares as a mean and one wave.
 *
 * Valid when: the ways are level and the journals round; friction is alike in every position (the fit's leftover
 * tells). One plane: a couple stays hidden on ways.
 *
 * @param table  columns angle (the mark that lies level) and mass [rad], [kg]
 * @param options.radius  where the mass hangs, > 0 [m]
 * @param options.massUncertainty  standard uncertainty of one mass found, > 0 [kg]
 * @returns heavy side as mass times radius [kg·m] and angle [rad], and the correcting mass at the radius [kg]
 * @throws RangeError  fewer than 4 different marks, a mass below 0, radius or uncertainty not above 0
 * @throws TypeError  a column holds something else
 * @example
 * const rows = [0, 90, 180, 270].map((a) => `${a},${6 - 4 * Math.cos(((a - 30) * Math.PI) / 180)}`);
 * const bytes = new TextEncoder().encode(["angle [deg],mass [oz]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "ways", file: "ways.csv" });
 * balanceOnWays(table, { radius: inch(14), massUncertainty: ounce(0.1) }).heavy.angle.value.in("degree").toFixed(1) // "30.0"
 * @source statics of a wheel on level ways: derived here; the trial itself: common practice, no source
 */
export function balanceOnWays(table: Table, options: BalanceOnWaysOptions): BalanceOnWays {
  const { radius, massUncertainty } = options;
  if (!(radius.si > 0)) throw new RangeError(`balanceOnWays: radius must be above 0, got ${radius}`);
  if (!(massUncertainty.si > 0))
    throw new RangeError(`balanceOnWays: massUncertainty must be above 0, got ${massUncertainty}`);
  const { unit } = column(table, "mass");
  const angles = quantitiesOf(table, "angle", "angle");
  const masses = quantitiesOf(table, "mass", "mass");
  const rows = table.lines.flatMap((line, row) => {
    const [angle, mass] = [angles[row], masses[row]];
    if (angle === undefined || mass === undefined) return [];
    if (mass.si < 0)
      throw new RangeError(`balanceOnWays: ${table.file} line ${line}: mass must be 0 or more, got ${mass}`);
    return [{ angle, mass, line }];
  });
  if (new Set(rows.map(({ angle }) => Math.round((angle.si % (2 * Math.PI)) * 1e6))).size < 4)
    throw new RangeError(
      `balanceOnWays: at least 4 different marks are needed to tell a heavy side from friction, got ${rows.length} readings in ${table.file}`,
    );
  const fit = fitHarmonics(
    rows.map(({ angle }) => angle.si),
    rows.map(({ mass }) => mass.si),
    { orders: [1], u: massUncertainty.si },
  );
  const [wave, covariance] = [fit.harmonics[0]!, fit.covariances[0]!];
  const massIn = (si: number): Mass => quantityFromSi("mass", si, unit as never);
  const units = table.unitSystem ?? (unit === "gram" || unit === "kilogram" ? "metric" : "inch");
  const r = radius.si;
  // The wave of masses is highest where the wheel is light: the heavy side lies half a turn from its crest.
  // Where they scatter more than stated, what they show is believed, with the degrees of freedom behind it.
  const scatters = chiSquareSurvival(fit.chiSquare!, fit.degreesOfFreedom) < scatterChance;
  const ratio = fit.chiSquare! / fit.degreesOfFreedom;
  const [widen, dof] = scatters ? [ratio, fit.degreesOfFreedom] : [1, Number.POSITIVE_INFINITY];
  const [aa, bb, ab] = [covariance.cosine, covariance.sine, covariance.both].map((v) => v * widen * r * r);
  const heavy = measuredUnbalance(
    { re: -wave.cosine * r, im: -wave.sine * r },
    { re: aa!, im: bb!, both: ab! },
    dof,
    units,
  );
  return Object.freeze({
    kind: "balance on ways",
    title: table.name,
    unitSystem: units,
    radius,
    heavy,
    correction: Object.freeze({
      mass: measured(massIn(wave.amplitude), massIn(wave.uAmplitude * Math.sqrt(widen)), dof),
      angle: measured(angleIn(wave.phase), heavy.angle.standardUncertainty, dof),
    }),
    friction: massIn(fit.mean),
    chance: wave.chance,
    readings: Object.freeze(
      rows.map(({ angle, mass, line }, i) =>
        Object.freeze({ angle, mass, left: massIn(fit.residuals[i]!), line }),
      ),
    ),
    warnings: Object.freeze(
      scatters
        ? [
            `The masses scatter ${Math.sqrt(ratio).toFixed(1)} times as much about one heavy side as their stated uncertainty allows, so the uncertainty of the result is widened: are the ways level and clean, the journals round, and was each mass tried from both sides?`,
          ]
        : [],
    ),
  });
}
