import { requireFiniteList, requireSameLength, uncertaintyList } from "./check.js";
import { leastSquares } from "./least-squares.js";
import { requireAgreeingRepeats, requireScatter } from "./refusals.js";
import { studentTCdf } from "./student-t-distribution.js";

/** How far readings bow away from a straight line. */
export interface Curvature {
  readonly kind: "curvature";
  /**
   * Height of the bow at mid-length over the chord of its ends [unit of y]: positive stands up (barrel),
   * negative is hollow.
   */
  readonly sag: number;
  /** Standard uncertainty of the sag [unit of y]. */
  readonly uSag: number;
  /** Coefficient c of c·x² in the parabola [unit of y / unit of x²]. */
  readonly quadratic: number;
  /** Standard uncertainty of c [unit of y / unit of x²]. */
  readonly uQuadratic: number;
  /** sag / uSag [-]. */
  readonly tValue: number;
  /** Chance that straight readings with this noise bow at least so much either way (two-sided) [-]. */
  readonly probability: number;
  /** Degrees of freedom behind uSag [-]; Infinity with known u. */
  readonly degreesOfFreedom: number;
}

/**
 * Tests whether readings along a length bow: a barrel or hollow instead of a straight line.
 *
 * Fits y = c₀ + c₁ξ + c₂ξ² with ξ from −1 to 1 over the length; sag = −c₂, tested by t = sag/u(sag)
 *
 * Valid when: the bow is about as a parabola; a kink or a wave shows in part only (see runsTest). Errors in y
 * alone, independent. With known u the t-value is judged by the normal distribution, else by Student's with n
 * − 3.
 *
 * @param x positions [unit of x]
 * @param y readings, or residuals about a line (the answer is the same) [unit of y]
 * @param u known standard uncertainty of each y, or one for all [unit of y]; without it the scatter judges
 * @returns sag with its uncertainty, and the probability of so large a bow by chance
 * @throws RangeError fewer than 3 different x, fewer than 4 readings without u, unequal lengths, u not > 0,
 * readings without u that lie on a parabola exactly, repeats that contradict u, or a value that is not finite
 * @example curvature([0, 1, 2], [0, 1, 0], 0.5).sag // 1
 * @source N. R. Draper, H. Smith, Applied Regression Analysis, 3rd edition, 1998, chapter 12 (polynomials;
 * from memory)
 */
export function curvature(
  x: readonly number[],
  y: readonly number[],
  u?: number | readonly number[],
): Curvature {
  const where = "curvature";
  const atLeast = u === undefined ? 4 : 3;
  requireFiniteList(where, "x", x, atLeast);
  requireFiniteList(where, "y", y, atLeast);
  requireSameLength(where, "x", x, "y", y);
  const different = new Set(x).size;
  if (different < 3)
    throw new RangeError(`${where}: x must take at least 3 different values, got ${different}`);
  const weights =
    u === undefined ? undefined : uncertaintyList(where, "u", u, x.length).map((ui) => 1 / (ui * ui));
  const low = x.reduce((a, b) => Math.min(a, b));
  const high = x.reduce((a, b) => Math.max(a, b));
  const half = (high - low) / 2;
  const design = x.map((v) => {
    const xi = (v - low - half) / half;
    return [1, xi, xi * xi];
  });
  const offset = y[0]!;
  if (weights !== undefined) requireAgreeingRepeats(where, x, y, weights);
  const heights = y.map((v) => v - offset);
  // Ones for weights leave the covariance unscaled, so that an exact parabola is refused under this helper's name.
  const fit = leastSquares(design, heights, {
    weights: weights ?? x.map(() => 1),
    knownUncertainty: true,
  });
  if (weights === undefined)
    requireScatter({ where, model: "a parabola", give: "u" }, fit.residuals, (i) =>
      design[i]!.reduce(
        (size, d, j) => size + Math.abs(d * fit.coefficients[j]!),
        Math.abs(y[i]!) + Math.abs(offset),
      ),
    );
  const scale = weights === undefined ? fit.residualStandardDeviation! : 1;
  const sag = -fit.coefficients[2]!;
  const uSag = fit.standardUncertainties[2]! * scale;
  const degreesOfFreedom = u === undefined ? fit.degreesOfFreedom : Number.POSITIVE_INFINITY;
  const tValue = sag / uSag;
  return Object.freeze({
    kind: "curvature",
    sag,
    uSag,
    quadratic: -sag / half ** 2,
    uQuadratic: uSag / half ** 2,
    tValue,
    probability: 2 * studentTCdf(-Math.abs(tValue), degreesOfFreedom),
    degreesOfFreedom,
  });
}
