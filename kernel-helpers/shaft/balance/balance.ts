import type { Angle, Length, Mass, Measured, Quantity, UnitSystem } from "../../quantity/index.js";
import { measured, quantityFromSi } from "../../quantity/index.js";
import { chiSquareSurvival, leastSquares } from "../../statistics/index.js";
import type { BalanceRuns } from "./balance-runs.js";
import { add, type Complex, direction, size, times } from "./complex.js";
import { solveComplex } from "./solve-complex.js";
import {
  angleIn,
  type MeasuredUnbalance,
  measuredUnbalance,
  unbalanceIn,
  type VectorCovariance,
} from "./unbalance-vector.js";

/** What to fasten to one plane. */
export interface PlaneCorrection {
  readonly plane: string;
  readonly radius: Length;
  /** On the bare rotor, every trial mass taken off. */
  readonly unbalance: MeasuredUnbalance;
  readonly mass: Measured<Mass>;
  readonly angle: Measured<Angle>;
  /** The change against what was fastened in the last run, for those who leave it on. */
  readonly fromLastRun: { readonly mass: Mass; readonly angle: Angle };
  /** What was left with the masses of the last run on, its check run: points to the heavy side. */
  readonly left: MeasuredUnbalance;
  /** What is to be expected to stay for the uncertainty of the correction: root mean square. */
  readonly expectedLeft: Quantity<"mass unbalance">;
}

/** A balance reckoned from runs with trial masses. */
export interface Balance {
  readonly kind: "balance";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly planes: readonly PlaneCorrection[];
  readonly pickups: readonly {
    readonly name: string;
    /** Amplitude of the bare rotor, as fitted [unit of the readings, SI]. */
    readonly before: number;
    /** Amplitude in the last run. */
    readonly last: number;
    /** As read, phases counted as the rotor's angles [rad]; u of a component [unit of the readings, SI]. */
    readonly runs: readonly {
      readonly line: number;
      readonly amplitude: number;
      readonly phase: number;
      readonly u: number;
    }[];
    readonly dimension: string;
    readonly unit: string | undefined;
  }[];
  readonly runCount: number;
  /** Chance of so much misfit in the runs beyond those needed [-]; undefined where there are none. */
  readonly linearChance: number | undefined;
  readonly warnings: readonly string[];
}

/** Two directions in which masses were tried may not be nearer to each other than this, as a share. */
const apart = 1e-6;
/** Below this chance the runs do not answer the masses in proportion. */
const linearBelow = 0.01;

/**
 * What to fasten where, from runs with known masses: influence coefficients in one or two planes.
 *
 * V = V₀ + Σ Hₚ Uₚ for each pickup, complex; V₀ and H fitted over all runs by least squares (runs beyond one a plane
 * check and sharpen it; a mass may stay on, and the check run is one more row). Correction U = −H⁻¹V₀ (least squares
 * with more pickups than planes). Its covariance is carried over from the readings to first order.
 *
 * Valid when: the machine answers in proportion (rigid supports, no looseness, same speed and temperature in all
 * runs) and only the once-a-turn part is read.
 *
 * @param runs  as `balanceRuns` returns them
 * @returns correction a plane as mass times radius [kg·m] and as a mass at the radius [kg] with its angle [rad]
 * @throws RangeError  trial masses that cannot tell the planes apart (none, or two runs alike), fewer pickups than
 * planes, or pickups that answer both planes alike
 * @example
 * const rows = ["0,0,4,60", "2,0,5,100"];
 * const bytes = new TextEncoder().encode(["mass [oz],angle [deg],amplitude [thou],phase [deg]", ...rows].join("\n"));
 * const runs = balanceRuns(readTable(bytes, { name: "runs", file: "runs.csv" }), { radius: inch(13), phase: "as the angles" });
 * balance(runs).planes[0].mass.value.in("ounce").toFixed(2) // "2.49"
 * @source J. M. Vance, Rotordynamics of Turbomachinery, 1988, chapter on balancing: influence coefficients (from
 * memory); JCGM 102:2011, 6.2 for the covariance
 */
export function balance(runs: BalanceRuns): Balance {
  const { planes, pickups, unitSystem } = runs;
  if (pickups.length < planes.length)
    throw new RangeError(
      `balance: ${planes.length} planes need at least ${planes.length} pickups, got ${pickups.length}`,
    );
  requireTrials(runs);
  const fits = pickups.map((_, s) => fitPickup(runs, s));
  const chiSquare = fits.reduce((sum, fit) => sum + fit.residualSumOfSquares, 0);
  const left = fits.reduce((sum, fit) => sum + fit.degreesOfFreedom, 0);
  const linearChance = left === 0 ? undefined : chiSquareSurvival(chiSquare, left);
  const scatters = linearChance !== undefined && linearChance < linearBelow;
  const [widen, dof] = scatters ? [chiSquare / left, left] : [1, Number.POSITIVE_INFINITY];

  const coefficients = fits.map((fit) => fit.coefficients);
  const correction = correctionFrom(coefficients, planes.length);
  const covariances = carried(coefficients, fits, planes.length).map(
    ({ re, im, both }): VectorCovariance => ({ re: re * widen, im: im * widen, both: both * widen }),
  );
  const last = runs.runs.at(-1)!;
  const massIn = (si: number): Mass => quantityFromSi("mass", si, runs.massUnit as never);
  return Object.freeze({
    kind: "balance",
    title: runs.title,
    unitSystem,
    planes: Object.freeze(
      planes.map(({ name, radius }, p): PlaneCorrection => {
        const unbalance = measuredUnbalance(correction[p]!, covariances[p]!, dof, unitSystem);
        const { re, im } = last.attached[p]!;
        const change = add(correction[p]!, { re: -re, im: -im });
        return Object.freeze({
          plane: name,
          radius,
          unbalance,
          mass: measured(
            massIn(unbalance.amount.value.si / radius.si),
            massIn(unbalance.amount.standardUncertainty.si / radius.si),
            dof,
          ),
          angle: unbalance.angle,
          fromLastRun: Object.freeze({
            mass: massIn(size(change) / radius.si),
            angle: angleIn(direction(change)),
          }),
          // Bare rotor: against the correction. With the last run's masses on, they are added.
          left: measuredUnbalance({ re: -change.re, im: -change.im }, covariances[p]!, dof, unitSystem),
          expectedLeft: unbalanceIn(Math.sqrt(covariances[p]!.re + covariances[p]!.im), unitSystem),
        });
      }),
    ),
    pickups: Object.freeze(
      pickups.map(({ name, dimension, unit }, s) =>
        Object.freeze({
          name,
          before: Math.hypot(coefficients[s]![0]!, coefficients[s]![1]!),
          last: size(last.readings[s]!),
          runs: Object.freeze(
            runs.runs.map(({ line, readings }, k) =>
              Object.freeze({
                line,
                amplitude: size(readings[s]!),
                phase: direction(readings[s]!),
                u: runs.uncertainties[k]![s]!,
              }),
            ),
          ),
          dimension,
          unit,
        }),
      ),
    ),
    runCount: runs.runs.length,
    linearChance,
    warnings: Object.freeze(warningsOf(runs, scatters)),
  });
}

/** Each plane needs a mass of its own in the runs; two runs alike tell nothing new. */
function requireTrials({ runs, planes, file }: BalanceRuns): void {
  planes.forEach(({ name }, p) => {
    if (runs.every(({ attached }) => size(attached[p]!) === 0))
      throw new RangeError(
        `balance: no run of ${file} has a trial mass${name === "" ? "" : ` in plane "${name}"`}: all are 0`,
      );
  });
  const scale = Math.max(...runs.flatMap(({ attached }) => attached.map(size)));
  const different = runs.filter(
    (run, i) =>
      !runs.slice(0, i).some((earlier) =>
        run.attached.every(({ re, im }, p) => {
          const other = earlier.attached[p]!;
          return Math.hypot(re - other.re, im - other.im) < apart * scale;
        }),
      ),
  );
  if (different.length < planes.length + 1)
    throw new RangeError(
      `balance: ${planes.length + 1} runs with different masses are needed, got ${different.length} in ${file}: two runs with the same masses tell the same (${runs
        .filter((run) => !different.includes(run))
        .map(({ line }) => `line ${line}`)
        .join(", ")})`,
    );
}

/** V₀ and H of one pickup as real numbers: re, im of V₀, then of each H. */
function fitPickup(
  { runs, uncertainties, planes, file }: BalanceRuns,
  s: number,
): ReturnType<typeof leastSquares> {
  const rows: number[][] = [];
  const y: number[] = [];
  const weights: number[] = [];
  runs.forEach(({ attached, readings }, k) => {
    rows.push([1, 0, ...attached.flatMap(({ re, im }) => [re, -im])]);
    rows.push([0, 1, ...attached.flatMap(({ re, im }) => [im, re])]);
    y.push(readings[s]!.re, readings[s]!.im);
    const weight = 1 / uncertainties[k]![s]! ** 2;
    weights.push(weight, weight);
  });
  try {
    return leastSquares(rows, y, { weights, knownUncertainty: true });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new RangeError(
      `balance: the masses of ${file} cannot tell ${planes.length === 1 ? "the plane's answer" : "the two planes apart"}: in every run they stand in the same proportion`,
    );
  }
}

function correctionFrom(coefficients: readonly (readonly number[])[], planes: number): readonly Complex[] {
  const at = (list: readonly number[], i: number): Complex => ({ re: list[2 * i]!, im: list[2 * i + 1]! });
  const matrix = coefficients.map((list) => Array.from({ length: planes }, (_, p) => at(list, p + 1)));
  const right = coefficients.map((list) => times({ re: -1, im: 0 }, at(list, 0)));
  return solveComplex("balance", matrix, right);
}

/** The covariance of each plane's correction, from that of the coefficients by central differences. */
function carried(
  coefficients: readonly (readonly number[])[],
  fits: readonly ReturnType<typeof leastSquares>[],
  planes: number,
): readonly VectorCovariance[] {
  const sums = Array.from({ length: planes }, () => ({ re: 0, im: 0, both: 0 }));
  coefficients.forEach((list, s) => {
    const slopes = list.map((value, j) => {
      const step = 1e-6 * (Math.abs(value) || fits[s]!.standardUncertainties[j]! || 1);
      const moved = (by: number): readonly Complex[] =>
        correctionFrom(
          coefficients.map((other, t) => (t === s ? other.map((v, k) => (k === j ? v + by : v)) : other)),
          planes,
        );
      const [up, down] = [moved(step), moved(-step)];
      return up.map(
        ({ re, im }, p): Complex => ({
          re: (re - down[p]!.re) / (2 * step),
          im: (im - down[p]!.im) / (2 * step),
        }),
      );
    });
    const { covariance } = fits[s]!;
    for (let p = 0; p < planes; p++)
      for (let j = 0; j < list.length; j++)
        for (let k = 0; k < list.length; k++) {
          const [a, b, v] = [slopes[j]![p]!, slopes[k]![p]!, covariance[j]![k]!];
          sums[p]!.re += a.re * b.re * v;
          sums[p]!.im += a.im * b.im * v;
          sums[p]!.both += a.re * b.im * v;
        }
  });
  return sums;
}

function warningsOf(runs: BalanceRuns, scatters: boolean): string[] {
  const warnings: string[] = [];
  if (scatters)
    warnings.push(
      "The runs do not answer the masses in proportion within their stated uncertainty, so the uncertainty of the correction is widened: look for looseness, a rub, another speed, or a phase counted the other way.",
    );
  // A trial that changes nothing measures only noise.
  const weak = runs.runs.filter(({ attached, readings }, k) =>
    k > 0 && attached.some((mass) => size(mass) > 0)
      ? readings.every((reading, s) => {
          const first = runs.runs[0]!.readings[s]!;
          return Math.hypot(reading.re - first.re, reading.im - first.im) < 3 * runs.uncertainties[k]![s]!;
        })
      : false,
  );
  if (weak.length > 0)
    warnings.push(
      `Line ${weak.map(({ line }) => line).join(", ")}: the mass changed no reading by three times its uncertainty; a larger trial mass would tell more.`,
    );
  return warnings;
}
