import { centredSums } from "./centred-line.js";
import { requireFinite, requireFiniteList, requireSameLength, requireSpread } from "./check.js";
import { compensatedSum } from "./compensated-sum.js";
import { type LineFit, lineFitOf } from "./line-fit.js";

/** What is known about the errors of x and y, alike for all points. */
export interface DemingOptions {
  /** Variance of the error of y over that of x, λ = u²(y)/u²(x) [unit of y² / unit of x²]. */
  readonly ratio: number;
  /**
   * Known standard uncertainty of each x [unit of x]; that of y is then √λ times it. Without it both are judged by
   * the scatter.
   */
  readonly ux?: number;
}

/** What is known about the errors of x and y where both are alike. */
export interface OrthogonalOptions {
  /** Known standard uncertainty of each x and each y [unit of both]; without it, judged by the scatter. */
  readonly u?: number;
}

/**
 * Straight line by least squares with errors in both x and y, their variances in one known ratio (Deming).
 *
 * Minimises Σ (y − a − b x)² / (λ + b²); b = [d + √(d² + 4 λ Sxy²)] / (2 Sxy), d = Syy − λ Sxx;
 * variances as in `fitLineBothErrors`, of which this is the case u(x) = ux, u(y) = √λ ux, in closed form
 *
 * λ → ∞ gives the line of y on x, λ → 0 that of x on y, λ = 1 the orthogonal line.
 *
 * Valid when: errors are independent, of one size for all x and one for all y. Else `fitLineBothErrors`. Points
 * that lie along y, or scatter alike in all directions (in units of the errors), have no one line and are refused.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param options.ratio λ, variance of the error of y over that of x, > 0 [unit of y² / unit of x²]
 * @param options.ux known standard uncertainty of each x, > 0 [unit of x]
 * @returns the line, method "Deming"; residuals are upright, chiSquare is the minimised sum over ux²
 * @throws RangeError fewer than 3 points (2 with ux), unequal lengths, all x alike, ratio or ux not > 0, no one
 * line, a value that is not finite, without ux no scatter, or with it repeats at one x that contradict it
 * @example fitLineDeming([0, 1, 2], [0.1, 0.9, 2.1], { ratio: 4 }).slope // 1.0026723646658608
 * @source W. E. Deming, Statistical Adjustment of Data, Wiley 1943 (from memory); variances: D. York et al.,
 * American Journal of Physics 72 (2004) 367-375, eqs. 13
 */
export function fitLineDeming(x: readonly number[], y: readonly number[], options: DemingOptions): LineFit {
  return demingLine("fitLineDeming", "Deming", x, y, options.ratio, "ux", options.ux);
}

/**
 * Straight line by total least squares: the sum of the squared distances square to the line is least.
 *
 * b = [d + √(d² + 4 Sxy²)] / (2 Sxy), d = Syy − Sxx; `fitLineDeming` with λ = 1
 *
 * Valid when: x and y have the same unit and errors of the same size. It does not depend on which is called x.
 *
 * @param x positions [m, or any unit]
 * @param y readings [the same unit]
 * @param options.u known standard uncertainty of each x and y, > 0 [the same unit]
 * @returns the line, method "orthogonal"; residuals are upright, chiSquare is that of the distances
 * @throws RangeError fewer than 3 points (2 with u), unequal lengths, all x alike, u not > 0, no one line, a value
 * that is not finite, without u no scatter, or with it repeats at one x that contradict it
 * @example fitLineOrthogonal([0, 1, 2], [0.1, 0.9, 2.1]).slope // 1.006688888641981
 * @source K. Pearson, Philosophical Magazine (6) 2 (1901) 559-572
 */
export function fitLineOrthogonal(
  x: readonly number[],
  y: readonly number[],
  options: OrthogonalOptions = {},
): LineFit {
  return demingLine("fitLineOrthogonal", "orthogonal", x, y, 1, "u", options.u);
}

function demingLine(
  where: string,
  method: "Deming" | "orthogonal",
  x: readonly number[],
  y: readonly number[],
  ratio: number,
  uName: string,
  ux: number | undefined,
): LineFit {
  const atLeast = ux === undefined ? 3 : 2;
  requireFiniteList(where, "x", x, atLeast);
  requireFiniteList(where, "y", y, atLeast);
  requireSameLength(where, "x", x, "y", y);
  requireSpread(where, x);
  requirePositive(where, "ratio", ratio);
  if (ux !== undefined) requirePositive(where, uName, ux);
  const ones = new Array<number>(x.length).fill(1);
  const sums = centredSums(x, y, ones);
  const slope = demingSlope(where, sums, ratio);
  // Weight of an upright residual, and the points moved onto the line: ξ = x̄ + β.
  const variance = (ux ?? 1) ** 2 * (ratio + slope * slope);
  const beta = x.map((v, i) => (ratio * (v - sums.x) + slope * (y[i]! - sums.y)) / (ratio + slope * slope));
  return lineFitOf(
    {
      where,
      uName,
      method,
      through: null,
      slope,
      centre: { x: sums.x, y: sums.y },
      varianceCentre: variance / x.length,
      varianceSlope: variance / compensatedSum(beta.map((b) => b * b)),
      weights: ones.map(() => 1 / variance),
      uncertaintyKnown: ux !== undefined,
      scaled: ux === undefined,
    },
    x,
    y,
  );
}

/** The closed form, by whichever of its two shapes loses no digits. */
function demingSlope(
  where: string,
  { xx, xy, yy }: { readonly xx: number; readonly xy: number; readonly yy: number },
  ratio: number,
): number {
  const difference = yy - ratio * xx;
  if (xy === 0 && difference >= 0)
    throw new RangeError(
      `${where}: the points must have one direction, got points that lie along y or scatter alike in all directions`,
    );
  const root = Math.hypot(difference, 2 * Math.sqrt(ratio) * xy);
  return difference < 0 ? (2 * ratio * xy) / (root - difference) : (difference + root) / (2 * xy);
}

function requirePositive(where: string, name: string, value: number): void {
  requireFinite(where, name, value);
  if (value <= 0) throw new RangeError(`${where}: ${name} must be greater than 0, got ${value}`);
}
