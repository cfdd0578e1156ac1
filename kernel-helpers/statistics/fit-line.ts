import { centredSums } from "./centred-line.js";
import {
  requireFinite,
  requireFiniteList,
  requireSameLength,
  requireSpread,
  uncertaintyList,
} from "./check.js";
import { CompensatedSum } from "./compensated-sum.js";
import { type LineFit, lineFitOf, type Point } from "./line-fit.js";

/** What is known about the readings of a straight line. */
export interface FitLineOptions {
  /**
   * Known standard uncertainty of each y, or one for all [unit of y]. Without it, equal and judged by the
   * scatter.
   */
  readonly u?: number | readonly number[];
  /** A point the line must pass, taken as exact. */
  readonly through?: Point;
  /**
   * True when only the ratios of u are known: uncertainties are then scaled by the scatter. Default false.
   */
  readonly scaleByScatter?: boolean;
}

/**
 * Straight line by least squares, errors in y alone.
 *
 * Minimises Σ wᵢ (yᵢ − a − b xᵢ)², w = 1/u² or 1; b = Σ w(x−x̄)(y−ȳ) / Σ w(x−x̄)², u²(b) = s²/Σ w(x−x̄)²,
 * u²(height at x̄) = s²/Σ w; s² = 1 with known u, else Σ w r²/(n−2)
 * Through a point (x₀, y₀): b = Σ w(x−x₀)(y−y₀) / Σ w(x−x₀)², n−1 degrees of freedom.
 *
 * Valid when: x is free of error (else fitLineBothErrors) and the errors of y are independent. One point, or
 * all x alike, define no line and are refused. Without u at least 3 points are needed (2 through a given
 * point), since two leave no scatter to judge by.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param options.u standard uncertainty of each y, or one for all [unit of y]
 * @param options.through point the line must pass [units of x and y]
 * @param options.scaleByScatter whether u is known up to a common factor only [-]
 * @returns the line; slope [unit of y / unit of x], intercept [unit of y]
 * @throws RangeError too few points, unequal lengths, all x alike, u not > 0, or a value that is not finite
 * @example fitLine([1, 2, 3, 4, 5, 6], [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], { u: 0.5 }).slope // 1.757142857142857
 * @source ISO/TS 28037:2010, clause 6 (known uncertainties) and annex E (unknown common uncertainty); through
 * a point: NIST StRD, NoInt1 and NoInt2, model y = B₁x
 */
export function fitLine(x: readonly number[], y: readonly number[], options: FitLineOptions = {}): LineFit {
  const where = "fitLine";
  const { u, through, scaleByScatter = false } = options;
  const scaled = u === undefined || scaleByScatter;
  const atLeast = (through === undefined ? 2 : 1) + (scaled ? 1 : 0);
  requireFiniteList(where, "x", x, atLeast);
  requireFiniteList(where, "y", y, atLeast);
  requireSameLength(where, "x", x, "y", y);
  if (through !== undefined) {
    requireFinite(where, "through.x", through.x);
    requireFinite(where, "through.y", through.y);
  }
  const weights =
    u === undefined
      ? new Float64Array(x.length).fill(1)
      : Float64Array.from(uncertaintyList(where, "u", u, x.length), (ui) => 1 / ui ** 2);
  const common = {
    method: u === undefined || typeof u === "number" ? ("ordinary" as const) : ("weighted" as const),
    weights,
    uncertaintyKnown: u !== undefined,
    scaled,
  };

  if (through !== undefined) {
    const [sumXX, sumXY] = [new CompensatedSum(), new CompensatedSum()];
    for (let i = 0; i < x.length; i++) {
      const dx = x[i]! - through.x;
      sumXX.add(weights[i]! * dx * dx);
      sumXY.add(weights[i]! * dx * (y[i]! - through.y));
    }
    const xx = sumXX.value;
    if (!(xx > 0))
      throw new RangeError(`${where}: some x must differ from through.x, got ${through.x} for all of them`);
    const slope = sumXY.value / xx;
    return lineFitOf(
      { ...common, through, slope, centre: through, varianceCentre: 0, varianceSlope: 1 / xx },
      x,
      y,
    );
  }

  requireSpread(where, x);
  const sums = centredSums(x, y, weights);
  return lineFitOf(
    {
      ...common,
      through: null,
      slope: sums.xy / sums.xx,
      centre: { x: sums.x, y: sums.y },
      varianceCentre: 1 / sums.w,
      varianceSlope: 1 / sums.xx,
    },
    x,
    y,
  );
}
