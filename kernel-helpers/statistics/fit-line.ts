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
  /**
   * What to do with readings of one x that contradict each other (`repeatsTest`): "refuse" them (default), or "keep"
   * them, for a search that will put the wrong one aside.
   */
  readonly contradictions?: "refuse" | "keep";
}

/**
 * Straight line by least squares, errors in y alone.
 *
 * Minimises Σ wᵢ (yᵢ − a − b xᵢ)², w = 1/u² or 1; b = Σ w(x−x̄)(y−ȳ) / Σ w(x−x̄)², u²(b) = s²/Σ w(x−x̄)²,
 * u²(height at x̄) = s²/Σ w; s² = 1 with known u, else Σ w r²/(n−2)
 * Through a point (x₀, y₀): b = Σ w(x−x₀)(y−y₀) / Σ w(x−x₀)², n−1 degrees of freedom.
 *
 * Reckoned by QR of the design [1 x], not by normal equations of the raw x: taking x̄ from every x is the one
 * Gram–Schmidt step which makes the column of x orthogonal to that of ones (R = [√Σw, x̄√Σw; 0, √Σw(x−x̄)²]),
 * corrected for what a first middle missed and with compensated sums, so that a large offset costs no digits. Models of
 * more columns take `leastSquares`, QR by Householder's reflections.
 *
 * Valid when: x is free of error (else fitLineBothErrors) and the errors of y are independent. One point, or
 * all x alike, define no line and are refused. Without u at least 3 points are needed (2 through a given
 * point), since two leave no scatter to judge by; and they must scatter: readings that lie on a line exactly are
 * readings rounded to one step, which say nothing of their uncertainty. With u, readings of one x must agree within it
 * (`repeatsTest`), or no line has the uncertainty stated; `fitLineRobust` names the wrong one where others outvote it.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param options.u standard uncertainty of each y, or one for all [unit of y]
 * @param options.through point the line must pass [units of x and y]
 * @param options.scaleByScatter whether u is known up to a common factor only [-]
 * @param options.contradictions whether repeats that contradict each other are refused or kept
 * @returns the line; slope [unit of y / unit of x], intercept [unit of y]
 * @throws RangeError too few points, unequal lengths, all x alike, u not > 0, a value that is not finite, no scatter
 * where u is to be learnt from it, or repeats that contradict the u stated
 * @example fitLine([1, 2, 3, 4, 5, 6], [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], { u: 0.5 }).slope // 1.757142857142857
 * @source ISO/TS 28037:2010, clause 6 (known uncertainties) and annex E (unknown common uncertainty); through
 * a point: NIST StRD, NoInt1 and NoInt2, model y = B₁x; Gram–Schmidt as QR: G. H. Golub, C. F. Van Loan, Matrix
 * Computations, 3rd edition, 1996, section 5.2.7 (from memory)
 */
export function fitLine(x: readonly number[], y: readonly number[], options: FitLineOptions = {}): LineFit {
  return ordinaryLine("fitLine", x, y, options);
}

/** `fitLine` under the name of the helper that asks for it. */
export function ordinaryLine(
  where: string,
  x: readonly number[],
  y: readonly number[],
  options: FitLineOptions,
): LineFit {
  const { u, through, scaleByScatter = false, contradictions = "refuse" } = options;
  const scaled = u === undefined || scaleByScatter;
  const atLeast = (through === undefined ? 2 : 1) + (scaled ? 1 : 0);
  if (contradictions !== "refuse" && contradictions !== "keep")
    throw new RangeError(
      `${where}: contradictions must be "refuse" or "keep", got ${JSON.stringify(contradictions)}`,
    );
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
    where,
    uName: u === undefined ? "u" : "u in its true size (no scaleByScatter)",
    keepsContradictions: contradictions === "keep",
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
