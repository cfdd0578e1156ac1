import { requireFiniteList, requireSameLength, uncertaintyList } from "./check.js";
import { leastSquares } from "./least-squares.js";
import { requireAgreeingRepeats, requireScatter } from "./refusals.js";

/** One wave round a circle: cosine·cos(nθ) + sine·sin(nθ) = amplitude·cos n(θ − phase). */
export interface Harmonic {
  /** Number of waves in one turn, n [-]. */
  readonly order: number;
  /** Coefficients of cos nθ and sin nθ [unit of y]. */
  readonly cosine: number;
  readonly sine: number;
  /** Half the height from trough to crest [unit of y]. Noise makes it too large, never too small: see chance. */
  readonly amplitude: number;
  /** Standard uncertainty of the amplitude, to first order [unit of y]. */
  readonly uAmplitude: number;
  /** Angle of the first crest, from 0 to below 2π/n [rad]. */
  readonly phase: number;
  /** Standard uncertainty of the phase, at most π/(n√3), that of an angle of which nothing is known [rad]. */
  readonly uPhase: number;
  /** Chance that noise alone gives so large an amplitude or more [-]. */
  readonly chance: number;
  readonly degreesOfFreedom: number;
}

/** Variances and covariance of the two coefficients of a wave [unit of y²]. */
export interface HarmonicCovariance {
  readonly cosine: number;
  readonly sine: number;
  readonly both: number;
}

/** A mean and waves fitted to readings round a circle. */
export interface HarmonicFit {
  readonly kind: "harmonic fit";
  /** The height without the waves [unit of y]. */
  readonly mean: number;
  readonly uMean: number;
  readonly harmonics: readonly Harmonic[];
  /** One a harmonic [unit of y²]. */
  readonly covariances: readonly HarmonicCovariance[];
  /** Reading less fit, in the order given [unit of y]. */
  readonly residuals: readonly number[];
  /** Readings less coefficients [-]. */
  readonly degreesOfFreedom: number;
  /** Σ (residual/u)² [-]; null where no uncertainty was given. */
  readonly chiSquare: number | null;
}

/** Which waves are fitted, and how good the readings are. */
export interface FitHarmonicsOptions {
  /** Numbers of waves in a turn, each a whole number of at least 1. */
  readonly orders: readonly number[];
  /** Known standard uncertainty of each reading, or one for all [unit of y]; without it the scatter judges. */
  readonly u?: number | readonly number[];
}

/**
 * Mean and waves of readings taken round a circle, by least squares.
 *
 * y(θ) = m + Σ (aₙ cos nθ + bₙ sin nθ); amplitude = √(a² + b²), phase = atan2(b, a)/n. Order 1 is the
 * least-squares circle to first order in its eccentricity.
 *
 * Real or noise: T = (a b) V⁻¹ (a b)ᵀ; chance = e^(−T/2) with known u (chi-square, 2 degrees of freedom), else
 * (1 + T/ν)^(−ν/2), which is F with 2 and ν.
 *
 * Valid when: errors in y alone, independent. Angles need not be equally spaced. Waves left out of `orders` fall
 * on those fitted: of N equally spaced readings order N − n looks like order n.
 *
 * @param angles where round the circle [rad]
 * @param y readings [any one unit]
 * @param options.orders numbers of waves in a turn [-]
 * @param options.u standard uncertainty of a reading, > 0 [unit of y]
 * @returns mean, waves with amplitude [unit of y], phase [rad] and the chance of each [-]
 * @throws RangeError an order is no whole number ≥ 1 or stands twice, fewer different angles than coefficients, angles that
 * cannot tell the orders apart, unequal lengths, u not > 0, a value that is not finite, without u readings that lie on
 * the waves exactly, or with it repeats of one angle that contradict it
 * @example fitHarmonics([0, 1, 2, 3].map((k) => (k * Math.PI) / 2), [3, 1, -1, 1], { orders: [1], u: 0.1 }).harmonics[0].amplitude // 2
 * @source K. V. Mardia, P. E. Jupp, Directional Statistics, 2000 (from memory); tests: of a linear model, textbook
 */
export function fitHarmonics(
  angles: readonly number[],
  y: readonly number[],
  options: FitHarmonicsOptions,
): HarmonicFit {
  const where = "fitHarmonics";
  const { orders, u } = options;
  requireFiniteList(where, "orders", orders, 1);
  for (const order of orders) {
    if (!Number.isInteger(order) || order < 1)
      throw new RangeError(`${where}: orders must be whole numbers of at least 1, got ${order}`);
  }
  if (new Set(orders).size < orders.length)
    throw new RangeError(`${where}: each order must stand once, got ${orders.join(", ")}`);
  requireFiniteList(where, "angles", angles, 0);
  requireFiniteList(where, "y", y, 0);
  requireSameLength(where, "angles", angles, "y", y);
  const coefficients = 1 + 2 * orders.length;
  const different = countDirections(angles);
  if (different < coefficients)
    throw new RangeError(
      `${where}: ${coefficients} different angles are needed for ${orders.length} orders, got ${different}`,
    );
  if (u === undefined && y.length === coefficients)
    throw new RangeError(
      `${where}: without u at least ${coefficients + 1} readings are needed, got ${y.length}`,
    );
  const weights =
    u === undefined ? undefined : uncertaintyList(where, "u", u, y.length).map((ui) => 1 / ui ** 2);
  const design = angles.map((angle) => [
    1,
    ...orders.flatMap((n) => [Math.cos(n * angle), Math.sin(n * angle)]),
  ]);
  if (weights !== undefined)
    requireAgreeingRepeats(where, angles.map(oneTurn), y, weights, { x: "angle", y: "y" });
  const fit = leastSquares(design, y, { weights: weights ?? y.map(() => 1), knownUncertainty: true });
  if (weights === undefined)
    requireScatter({ where, model: "the waves", give: "u" }, fit.residuals, (i) =>
      design[i]!.reduce((size, d, j) => size + Math.abs(d * fit.coefficients[j]!), Math.abs(y[i]!)),
    );
  const variance = weights === undefined ? fit.residualStandardDeviation! ** 2 : 1;
  const dof = u === undefined ? fit.degreesOfFreedom : Number.POSITIVE_INFINITY;
  const covariances = orders.map((_, k) => {
    const [i, j] = [1 + 2 * k, 2 + 2 * k];
    return Object.freeze({
      cosine: fit.covariance[i]![i]! * variance,
      sine: fit.covariance[j]![j]! * variance,
      both: fit.covariance[i]![j]! * variance,
    });
  });
  return Object.freeze({
    kind: "harmonic fit",
    mean: fit.coefficients[0]!,
    uMean: fit.standardUncertainties[0]! * Math.sqrt(variance),
    harmonics: Object.freeze(
      orders.map((order, k) =>
        harmonicOf(order, fit.coefficients[1 + 2 * k]!, fit.coefficients[2 + 2 * k]!, covariances[k]!, dof),
      ),
    ),
    covariances: Object.freeze(covariances),
    residuals: fit.residuals,
    degreesOfFreedom: fit.degreesOfFreedom,
    chiSquare: u === undefined ? null : fit.residualSumOfSquares,
  });
}

/**
 * A wave from its two coefficients: amplitude and phase with their uncertainties, and the chance of noise.
 *
 * u²(A) = (a² Vaa + 2ab Vab + b² Vbb)/A², u²(nφ) = (b² Vaa − 2ab Vab + a² Vbb)/A⁴. A vector in a plane is order 1.
 *
 * Valid when: A is several times u(A); below, the phase is nearly free and `chance` tells so.
 *
 * @param order number of waves in a turn, n ≥ 1 [-]
 * @param cosine coefficient a [unit of y]
 * @param sine coefficient b [unit of y]
 * @param covariance their variances and covariance [unit of y²]
 * @param degreesOfFreedom behind the covariance [-], Infinity where it is known
 * @returns the wave
 * @example harmonicOf(1, 3, 4, { cosine: 1, sine: 1, both: 0 }, Infinity).amplitude // 5
 * @source JCGM 100:2008 (GUM), 5.2.2, equation 13
 */
export function harmonicOf(
  order: number,
  cosine: number,
  sine: number,
  covariance: HarmonicCovariance,
  degreesOfFreedom: number,
): Harmonic {
  const { cosine: aa, sine: bb, both: ab } = covariance;
  const amplitude = Math.hypot(cosine, sine);
  const [c, s] = amplitude === 0 ? [Math.SQRT1_2, Math.SQRT1_2] : [cosine / amplitude, sine / amplitude];
  const along = c * c * aa + 2 * c * s * ab + s * s * bb;
  const across = s * s * aa - 2 * c * s * ab + c * c * bb;
  const free = Math.PI / (order * Math.sqrt(3));
  const uPhase = amplitude === 0 ? free : Math.sqrt(Math.max(0, across)) / (amplitude * order);
  const turn = (2 * Math.PI) / order;
  const phase = Math.atan2(sine, cosine) / order;
  const squared = (cosine ** 2 * bb - 2 * cosine * sine * ab + sine ** 2 * aa) / (aa * bb - ab * ab);
  return Object.freeze({
    order,
    cosine,
    sine,
    amplitude,
    uAmplitude: Math.sqrt(Math.max(0, along)),
    // −0.0…1 turn back to just below a whole turn must not round up to it.
    phase: phase < 0 ? (phase + turn) % turn : phase,
    uPhase: Math.min(uPhase, free),
    chance: chanceOf(squared, degreesOfFreedom),
    degreesOfFreedom,
  });
}

/** An angle within one turn, to the last digits that matter: whole turns apart are one place. */
function oneTurn(angle: number): number {
  const turn = 2 * Math.PI;
  return (Math.round((angle - turn * Math.floor(angle / turn)) * 1e9) / 1e9) % (Math.round(turn * 1e9) / 1e9);
}

function chanceOf(squared: number, dof: number): number {
  return dof === Number.POSITIVE_INFINITY
    ? Math.exp(-squared / 2)
    : Math.exp((-dof / 2) * Math.log1p(squared / dof));
}

/** Number of different directions among angles; whole turns apart are one. */
export function countDirections(angles: readonly number[]): number {
  requireFiniteList("countDirections", "angles", angles, 0);
  const kept: number[] = [];
  for (const angle of angles) {
    if (!kept.some((other) => Math.abs(Math.sin((angle - other) / 2)) < 2.5e-9)) kept.push(angle);
  }
  return kept.length;
}
