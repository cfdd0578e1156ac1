import {
  countDirections,
  type Harmonic,
  harmonicOf,
  leastSquares,
  studentTCdf,
} from "../statistics/index.js";
import type { DiameterReading } from "./profile-types.js";

/** An oval fitted to diameters at some stations. */
export interface OvalFit {
  readonly bound: "measured" | "at least";
  readonly directions: number;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Half the ovality on diameter [m], as a wave of order 2, with the uncertainties widened by a factor. */
  readonly ovalWith: (widened: number, dof: number) => Harmonic;
}

/** Number of different directions among diameters; opposite angles read one diameter. */
export function countDiameters(readings: readonly DiameterReading[]): number {
  return countDirections(readings.map(({ angle }) => 2 * angle!.si));
}

/**
 * One oval for all stations, each with a mean of its own: D = D̄ₖ + a cos 2θ + b sin 2θ; with two directions only their
 * difference, D = D̄ₖ ± d/2. The means are taken out beforehand (weighted), which leaves the same least squares.
 *
 * @param stations  readings by station, each with an angle and at two different directions at least
 * @throws RangeError  the directions lie so that one wave of order 2 cannot be told from none
 * @source R. Frisch, F. V. Waugh, Econometrica 1 (1933) 387-401 (taking out means; from memory)
 */
export function fitOval(stations: readonly (readonly DiameterReading[])[]): OvalFit {
  const all = stations.flat();
  const directions = countDiameters(all);
  const first = all[0]!.angle!.si;
  const columns =
    directions === 2
      ? [(angle: number) => (Math.abs(Math.sin(angle - first)) < 5e-9 ? 0.5 : -0.5)]
      : [(angle: number) => Math.cos(2 * angle), (angle: number) => Math.sin(2 * angle)];
  const like = all[0]!.diameter.si;
  const y: number[] = [];
  const design: number[][] = [];
  const weights: number[] = [];
  for (const readings of stations) {
    const w = readings.map(({ standardUncertainty: u }) => 1 / u.si ** 2);
    const centred = (values: readonly number[]): number[] => {
      const total = w.reduce((sum, wi) => sum + wi, 0);
      const mean = values.reduce((sum, v, i) => sum + w[i]! * v, 0) / total;
      return values.map((v) => v - mean);
    };
    const waves = columns.map((column) => centred(readings.map(({ angle }) => column(angle!.si))));
    y.push(...centred(readings.map(({ diameter }) => diameter.si - like)));
    design.push(...readings.map((_, i) => waves.map((wave) => wave[i]!)));
    weights.push(...w);
  }
  requireTold(design);
  const fit = leastSquares(design, y, { weights, knownUncertainty: true });
  const common = {
    directions,
    chiSquare: fit.residualSumOfSquares,
    degreesOfFreedom: fit.degreesOfFreedom - stations.length,
  };
  const [a, b] = fit.coefficients;
  if (directions > 2)
    return {
      ...common,
      bound: "measured",
      ovalWith: (widened, dof) => {
        const scaled = (i: number, j: number): number => fit.covariance[i]![j]! * widened ** 2;
        return harmonicOf(2, a!, b!, { cosine: scaled(0, 0), sine: scaled(1, 1), both: scaled(0, 1) }, dof);
      },
    };
  const second = all.find(({ angle }) => Math.abs(Math.sin(angle!.si - first)) >= 5e-9)!.angle!.si;
  const lever = 2 * Math.abs(Math.sin(second - first));
  return {
    ...common,
    bound: "at least",
    ovalWith: (widened, dof) => {
      const u = fit.standardUncertainties[0]! * widened;
      return {
        order: 2,
        cosine: a! / lever,
        sine: 0,
        amplitude: Math.abs(a!) / lever,
        uAmplitude: u / lever,
        phase: 0,
        uPhase: Math.PI / (2 * Math.sqrt(3)),
        chance: 2 * studentTCdf(-Math.abs(a!) / u, dof),
        degreesOfFreedom: dof,
      };
    },
  };
}

/** Each station by itself may read a pair of directions that sees the same part of the oval. */
function requireTold(design: readonly (readonly number[])[]): void {
  if (design[0]!.length < 2) return;
  const sum = (i: number, j: number): number => design.reduce((all, row) => all + row[i]! * row[j]!, 0);
  const [cc, ss, cs] = [sum(0, 0), sum(1, 1), sum(0, 1)];
  if (cc * ss - cs * cs > 1e-9 * (cc + ss) ** 2) return;
  throw new RangeError(
    "ovalityOf: three different directions at one station are needed to tell where the oval lies, got pairs that all see the same part of it",
  );
}
