import { type Harmonic, type HarmonicCovariance, harmonicOf, leastSquares } from "../statistics/index.js";
import { scattersTooMuch } from "./scatter-test.js";

/** The centre of the surface at one place along the shaft [m]. */
export interface SurfaceCentre {
  readonly position: number;
  readonly wave: Harmonic;
  readonly covariance: HarmonicCovariance;
}

/** The axis of a shaft: a straight line with a bow, in both directions across. */
export interface ShaftAxis {
  /** Where the axis lies at a position, with the covariance of that. */
  readonly at: (position: number) => Vector;
  /** The straight line through the bow's ends. */
  readonly lineAt: (position: number) => Vector;
  /** The bow in the middle over that line; undefined from two stations. */
  readonly bow: Vector | undefined;
  readonly noiseRatio: number | undefined;
  readonly degreesOfFreedom: number;
  /** Factor on all variances: 1, or noiseRatio² where the centres scatter about the axis more than stated [-]. */
  readonly widened: number;
}

/** A vector across the shaft [m] and its covariance [m²]. */
export interface Vector {
  readonly cosine: number;
  readonly sine: number;
  readonly covariance: HarmonicCovariance;
  readonly degreesOfFreedom: number;
}

/**
 * The axis through the centres of sound surfaces: per direction across, a + b ξ + h (1 − ξ²), ξ from −1 to 1 between
 * the ends given; h the bow, zero at the ends by definition, so that a ± b is the straight line there.
 *
 * Valid when: the shaft bows smoothly; a kink shows in part. From two stations a straight line only.
 *
 * @param centres  centres of the surface at stations taken for sound, at least 2 different positions
 * @param first  where the bow begins [m]
 * @param last  where it ends [m]
 * @source two weighted least squares of one design, see `leastSquares`; widening: ISO/TS 28037:2010, annex E
 */
export function shaftAxis(centres: readonly SurfaceCentre[], first: number, last: number): ShaftAxis {
  const bowed = centres.length > 2;
  const row = (position: number): number[] => {
    const xi = last === first ? 0 : (2 * (position - first)) / (last - first) - 1;
    return bowed ? [1, xi, 1 - xi * xi] : [1, xi];
  };
  const design = centres.map(({ position }) => row(position));
  const fitOf = (part: "cosine" | "sine"): ReturnType<typeof leastSquares> =>
    leastSquares(
      design,
      centres.map(({ wave }) => wave[part]),
      { weights: centres.map(({ covariance }) => 1 / covariance[part]), knownUncertainty: true },
    );
  const [c, s] = [fitOf("cosine"), fitOf("sine")];
  const dof = c.degreesOfFreedom + s.degreesOfFreedom;
  const chiSquare = c.residualSumOfSquares + s.residualSumOfSquares;
  const tooMuch = scattersTooMuch(chiSquare, dof);
  const noiseRatio = dof > 0 ? Math.sqrt(chiSquare / dof) : undefined;
  const widened = tooMuch ? noiseRatio! ** 2 : 1;
  const vector = (weights: readonly number[]): Vector => ({
    cosine: dot(weights, c.coefficients),
    sine: dot(weights, s.coefficients),
    covariance: {
      cosine: quadratic(weights, c.covariance) * widened,
      sine: quadratic(weights, s.covariance) * widened,
      both: 0,
    },
    degreesOfFreedom: tooMuch ? dof : Number.POSITIVE_INFINITY,
  });
  return {
    at: (position) => vector(row(position)),
    lineAt: (position) => vector(row(position).map((v, i) => (i === 2 ? 0 : v))),
    bow: bowed ? vector([0, 0, 1]) : undefined,
    noiseRatio,
    degreesOfFreedom: dof,
    widened,
  };
}

/** A vector as a wave of order 1: its length, direction and chance. */
export function waveOf({ cosine, sine, covariance, degreesOfFreedom }: Vector): Harmonic {
  return harmonicOf(1, cosine, sine, covariance, degreesOfFreedom);
}

/**
 * Centre of the surface less axis. What was used to find the axis shares its noise, V = V(centre) − V(axis); what was
 * not used adds up. The correlation of the two directions across is left out: it is 0 for equally spaced angles.
 *
 * @returns undefined where the axis passes through this centre whatever it is, so that nothing is left to judge
 */
export function offAxis(
  { position, wave, covariance }: SurfaceCentre,
  axis: ShaftAxis,
  used: boolean,
): Vector | undefined {
  if (used && axis.degreesOfFreedom === 0) return undefined;
  const there = axis.at(position);
  const join = (own: number, other: number): number =>
    used ? own * axis.widened - other : own * axis.widened + other;
  const both = {
    cosine: join(covariance.cosine, there.covariance.cosine),
    sine: join(covariance.sine, there.covariance.sine),
    both: 0,
  };
  if (Math.min(both.cosine, both.sine) < 1e-6 * covariance.cosine) return undefined;
  return {
    cosine: wave.cosine - there.cosine,
    sine: wave.sine - there.sine,
    covariance: both,
    degreesOfFreedom: there.degreesOfFreedom,
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, v, i) => sum + v * b[i]!, 0);
}

function quadratic(a: readonly number[], matrix: readonly (readonly number[])[]): number {
  return a.reduce((sum, v, i) => sum + v * dot(matrix[i]!, a), 0);
}
