import type { Quantity } from "../../quantity/index.js";
import {
  type Angle,
  type Length,
  type Mass,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import { countDirections, fitHarmonics } from "../../statistics/index.js";
import { column, quantitiesOf, type Table } from "../../survey/index.js";
import { angleIn, unbalanceIn } from "./unbalance-vector.js";

/** What else is known of the runs. */
export interface BalanceWithoutPhaseOptions {
  readonly radius: Length;
  /** Standard uncertainty of an amplitude, as a share of the first run's [-]; default 0.05. */
  readonly amplitudeShare?: number;
}

/** A balance from amplitudes alone. */
export interface BalanceWithoutPhase {
  readonly kind: "balance without phase";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly radius: Length;
  readonly trialMass: Mass;
  readonly mass: Measured<Mass>;
  readonly angle: Measured<Angle>;
  readonly amount: Quantity<"mass unbalance">;
  /** How far the trial mass's answer, had twice, disagrees with itself, in standard uncertainties [-]. */
  readonly disagreement: number;
  readonly warnings: readonly string[];
}

/**
 * Balance in one plane where no phase can be read: the same trial mass at three or more places, amplitudes alone.
 *
 * With O the amplitude without it, T what the trial mass alone gives, φ where the unbalance lies:
 * A²(θ) = O² + T² + 2·O·T·cos(θ − φ). The mean of A² over O² gives T², its wave 2·O·T and φ; correcting mass =
 * m·O/T, half a turn from φ. T is had twice: the two must agree.
 *
 * Valid when: the machine answers in proportion and its supports alike in all directions of the rotor; one plane.
 *
 * @param table  columns mass, angle, amplitude; the run without a mass has mass 0 [kg], [rad], [any one unit]
 * @param options.radius  where the mass sits, > 0 [m]
 * @param options.amplitudeShare  standard uncertainty of an amplitude over the first one, > 0 [-]
 * @returns correcting mass [kg] and angle [rad], first order in the uncertainties
 * @throws RangeError  no run without a mass, trial masses of 0 or of different size, fewer than 3 places, or a wave
 * too small to have a direction
 * @example
 * const amplitude = (a) => Math.sqrt(25 + 9 + 30 * Math.cos(((a - 40) * Math.PI) / 180));
 * const rows = ["0,0,5", ...[0, 120, 240].map((a) => `3,${a},${amplitude(a)}`)];
 * const bytes = new TextEncoder().encode(["mass [oz],angle [deg],amplitude [thou]", ...rows].join("\n"));
 * const table = readTable(bytes, { name: "runs", file: "runs.csv" });
 * balanceWithoutPhase(table, { radius: inch(13) }).mass.value.in("ounce").toFixed(2) // "5.00"
 * @source law of cosines; the four-run method: common practice, no source
 */
export function balanceWithoutPhase(table: Table, options: BalanceWithoutPhaseOptions): BalanceWithoutPhase {
  const { radius, amplitudeShare = 0.05 } = options;
  const where = "balanceWithoutPhase";
  if (!(radius.si > 0)) throw new RangeError(`${where}: radius must be above 0, got ${radius}`);
  if (!(amplitudeShare > 0))
    throw new RangeError(`${where}: amplitudeShare must be above 0, got ${amplitudeShare}`);
  const { unit } = column(table, "mass");
  const masses = quantitiesOf(table, "mass", "mass");
  const angles = quantitiesOf(table, "angle", "angle");
  const amplitudes = column(table, "amplitude").values;
  const rows = table.lines.map((line, row) => {
    const [mass, angle, amplitude] = [masses[row], angles[row], amplitudes[row]!];
    if (mass === undefined || Number.isNaN(amplitude) || (mass.si > 0 && angle === undefined))
      throw new RangeError(
        `${where}: ${table.file} line ${line}: mass, angle and amplitude are needed, got a gap`,
      );
    if (mass.si < 0 || amplitude < 0)
      throw new RangeError(`${where}: ${table.file} line ${line}: mass and amplitude must be 0 or more`);
    return { mass, angle: angle?.si ?? 0, amplitude };
  });
  const bare = rows.filter(({ mass }) => mass.si === 0);
  const trials = rows.filter(({ mass }) => mass.si > 0);
  if (bare.length === 0) throw new RangeError(`${where}: ${table.file} needs a run with mass 0, got none`);
  const trial = trials[0]?.mass;
  if (trial === undefined) throw new RangeError(`${where}: every trial mass of ${table.file} is 0`);
  if (trials.some(({ mass }) => Math.abs(mass.si - trial.si) > 1e-3 * trial.si))
    throw new RangeError(
      `${where}: every trial needs the same mass, got ${trials.map(({ mass }) => mass).join(", ")}`,
    );
  const places = countDirections(trials.map(({ angle }) => angle));
  if (places < 3)
    throw new RangeError(
      `${where}: the trial mass is needed at 3 different places at least, got ${places} in ${table.file}: two trials at one place tell the same`,
    );
  const o = bare.reduce((sum, { amplitude }) => sum + amplitude, 0) / bare.length;
  if (!(o > 0)) throw new RangeError(`${where}: without a mass the amplitude must be above 0, got ${o}`);

  const squares = trials.map(({ amplitude }) => amplitude ** 2);
  const u = amplitudeShare * o;
  const fit = fitHarmonics(
    trials.map(({ angle }) => angle),
    squares,
    { orders: [1], u: trials.map(({ amplitude }) => 2 * Math.max(amplitude, o / 4) * u) },
  );
  const wave = fit.harmonics[0]!;
  if (!(wave.chance < 0.05))
    throw new RangeError(
      `${where}: the amplitudes are so alike that noise could make their differences (chance ${wave.chance.toFixed(2)}): a larger trial mass is needed`,
    );
  const byWave = wave.amplitude / (2 * o);
  // From the mean: T² = mean A² − O², with what the bare runs leave uncertain.
  const uBare = (2 * o * u) / Math.sqrt(bare.length);
  const squared = fit.mean - o ** 2;
  const uSquared = Math.hypot(fit.uMean, uBare);
  const uByWave = wave.uAmplitude / (2 * o);
  const disagreement = Math.abs(squared - byWave ** 2) / Math.hypot(uSquared, 2 * byWave * uByWave);
  // The wave alone: O cancels in m·O/T but for its own uncertainty, and no difference of squares is taken.
  const ratio = o / byWave;
  const uRatio = ratio * Math.hypot(wave.uAmplitude / wave.amplitude, (2 * u) / (o * Math.sqrt(bare.length)));
  const massIn = (si: number): Mass => quantityFromSi("mass", si, unit as never);
  const units: UnitSystem = unit === "gram" || unit === "kilogram" ? "metric" : "inch";
  const angle = (wave.phase + Math.PI) % (2 * Math.PI);
  return Object.freeze({
    kind: "balance without phase",
    title: table.name,
    unitSystem: units,
    radius,
    trialMass: trial,
    mass: measured(massIn(trial.si * ratio), massIn(trial.si * uRatio)),
    angle: measured(angleIn(angle), angleIn(wave.uPhase)),
    amount: unbalanceIn(trial.si * ratio * radius.si, units),
    disagreement,
    warnings: Object.freeze(
      disagreement > 3
        ? [
            `The mean of the runs and their differences disagree on what the trial mass does, by ${disagreement.toFixed(1)} standard uncertainties: the machine does not answer in proportion, or a mass or speed was not the same.`,
          ]
        : [],
    ),
  });
}
