import { chiSquareSurvival } from "./chi-square-distribution.js";
import { CompensatedSum } from "./compensated-sum.js";
import { requireAgreeingRepeats, requireScatter } from "./refusals.js";

/** A point in the plane of a fit. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A straight line fitted to readings, with what is known of its uncertainty. */
export interface LineFit {
  readonly kind: "line fit";
  /**
   * Which errors were reckoned with: those of y, equal (ordinary) or each its own (weighted); those of x and y,
   * each its own (errors in both), in one ratio (Deming) or alike (orthogonal).
   */
  readonly method: "ordinary" | "weighted" | "errors in both" | "Deming" | "orthogonal";
  /** The point the line was made to pass, or null. */
  readonly through: Point | null;
  /** Slope b [unit of y / unit of x]. */
  readonly slope: number;
  /** Intercept a, the height of the line at x = 0 [unit of y]. */
  readonly intercept: number;
  /** Standard uncertainty of the slope [unit of y / unit of x]. */
  readonly uSlope: number;
  /** Standard uncertainty of the intercept [unit of y]. */
  readonly uIntercept: number;
  /** Covariance of intercept and slope [unit of y² / unit of x]. */
  readonly covariance: number;
  /** The point of the line where height and slope are uncorrelated: the weighted middle of the readings. */
  readonly centre: Point;
  /** Standard uncertainty of the height at the centre [unit of y]. */
  readonly uCentre: number;
  /** Reading less line, upright (along y), in the order given [unit of y]. */
  readonly residuals: readonly number[];
  /** Root of Σ residual² / degrees of freedom, unweighted [unit of y]; null with no degree of freedom. */
  readonly residualStandardDeviation: number | null;
  /** Readings less parameters fitted [-]. */
  readonly degreesOfFreedom: number;
  /** Σ (residual / its standard uncertainty)² [-]; null where no uncertainty was given. */
  readonly chiSquare: number | null;
  /**
   * Chance that honest noise of the given size scatters at least so much [-]; null without chiSquare or
   * degree of freedom.
   */
  readonly chiSquareProbability: number | null;
  /** Scatter seen over scatter expected, √(chiSquare / degrees of freedom) [-]; null where the above is. */
  readonly noiseRatio: number | null;
  /** True when the uncertainties were taken from, or scaled by, the scatter of the readings. */
  readonly scaled: boolean;
  /** Number of readings. */
  readonly points: number;
}

/** What a fitting method found, before the bookkeeping all methods share. */
export interface LineCore {
  /** The helper whose name a refusal begins with. */
  readonly where: string;
  readonly method: LineFit["method"];
  readonly through: Point | null;
  readonly slope: number;
  readonly centre: Point;
  /** Variance of the height at the centre and of the slope, for weights as given. */
  readonly varianceCentre: number;
  readonly varianceSlope: number;
  /** Weight of each upright residual: 1/variance where known, else 1. */
  readonly weights: ArrayLike<number>;
  readonly uncertaintyKnown: boolean;
  readonly scaled: boolean;
  /** What to give where the scatter tells nothing, e.g. "u". */
  readonly uName: string;
  /** True where repeats that contradict each other are let through; default false. */
  readonly keepsContradictions?: boolean;
}

/**
 * Completes a fit: residuals, chi-square, scale, and the uncertainties carried from the centre to x = 0. Refuses what
 * has no honest uncertainty: no scatter to learn it from, or repeats that contradict the one stated.
 */
export function lineFitOf(core: LineCore, x: readonly number[], y: readonly number[]): LineFit {
  const { slope, centre, through } = core;
  const n = x.length;
  const residuals = new Float64Array(n);
  const [squares, weighted] = [new CompensatedSum(), new CompensatedSum()];
  for (let i = 0; i < n; i++) {
    const residual = y[i]! - centre.y - slope * (x[i]! - centre.x);
    residuals[i] = residual;
    squares.add(residual * residual);
    weighted.add(core.weights[i]! * residual * residual);
  }
  if (core.scaled)
    requireScatter(
      { where: core.where, model: "the line", give: core.uName },
      residuals,
      (i) => Math.abs(y[i]!) + Math.abs(slope * x[i]!),
    );
  else if (core.keepsContradictions !== true) requireAgreeingRepeats(core.where, x, y, core.weights);
  // A list that cannot be changed is made when it is asked for: of a million readings that takes longer than the fit.
  let list: readonly number[] | undefined;
  const degreesOfFreedom = n - (through === null ? 2 : 1);
  const weightedSquares = weighted.value;
  const scale = core.scaled ? weightedSquares / degreesOfFreedom : 1;
  const varianceSlope = core.varianceSlope * scale;
  const varianceCentre = core.varianceCentre * scale;
  const judged = core.uncertaintyKnown && degreesOfFreedom > 0;
  return Object.freeze({
    kind: "line fit",
    method: core.method,
    through: through === null ? null : Object.freeze({ ...through }),
    slope,
    intercept: centre.y - slope * centre.x,
    uSlope: Math.sqrt(varianceSlope),
    uIntercept: Math.sqrt(varianceCentre + centre.x ** 2 * varianceSlope),
    covariance: -centre.x * varianceSlope,
    centre: Object.freeze({ ...centre }),
    uCentre: Math.sqrt(varianceCentre),
    get residuals(): readonly number[] {
      list ??= Object.freeze(Array.from(residuals));
      return list;
    },
    residualStandardDeviation: degreesOfFreedom > 0 ? Math.sqrt(squares.value / degreesOfFreedom) : null,
    degreesOfFreedom,
    chiSquare: core.uncertaintyKnown ? weightedSquares : null,
    chiSquareProbability: judged ? chiSquareSurvival(weightedSquares, degreesOfFreedom) : null,
    noiseRatio: judged ? Math.sqrt(weightedSquares / degreesOfFreedom) : null,
    scaled: core.scaled,
    points: x.length,
  });
}
