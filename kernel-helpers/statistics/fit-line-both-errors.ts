import { requireFiniteList, requireSameLength, requireSpread, uncertaintyList } from "./check.js";
import { compensatedSum } from "./compensated-sum.js";
import { type LineFit, lineFitOf } from "./line-fit.js";

/** What is known about the errors of both coordinates. */
export interface BothErrorsOptions {
  /** Standard uncertainty of each x, or one for all [unit of x], ≥ 0. */
  readonly ux: number | readonly number[];
  /** Standard uncertainty of each y, or one for all [unit of y], ≥ 0. */
  readonly uy: number | readonly number[];
  /** Correlation of the errors of x and y within a point [-], between −1 and 1; default 0. */
  readonly correlation?: number | readonly number[];
  /**
   * True when ux and uy are known up to a common factor only: uncertainties are scaled by the scatter.
   * Default false.
   */
  readonly scaleByScatter?: boolean;
}

/** The slope has settled when one more step moves it by less than this share of what it could matter. */
const settledBelow = 1e-14;
const mostSteps = 1000;

/**
 * Straight line by least squares with errors in both x and y, each point with its own.
 *
 * Minimises Σ Wᵢ (yᵢ − a − b xᵢ)², W = 1/(u²(y) + b² u²(x) − 2 b r u(x) u(y)), by York's iteration
 * b ← Σ Wβ(y−ȳ) / Σ Wβ(x−x̄), β = W[(x−x̄)u²(y) + b(y−ȳ)u²(x) − (b(x−x̄) + y−ȳ) r u(x) u(y)];
 * u²(b) = 1/Σ W(ξ−ξ̄)², u²(height at ξ̄) = 1/Σ W, ξ = x̄ + β being the points moved onto the line
 *
 * Valid when: errors are independent from point to point and every point has ux or uy above 0. A line along y
 * (endless slope) is out of reach; swap x and y. The iteration ends when the slope moves by less than 1e-14
 * of itself (or of its uncertainty); if it has not after 1000 steps, it throws instead of giving a line.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param options.ux standard uncertainty of each x, or one for all [unit of x]
 * @param options.uy standard uncertainty of each y, or one for all [unit of y]
 * @param options.correlation correlation of the two errors of a point [-]
 * @param options.scaleByScatter whether ux and uy are known up to a common factor only [-]
 * @returns the line, method "errors in both"; residuals are upright, chiSquare is the minimised sum
 * @throws RangeError fewer than 2 points (3 when scaled), unequal lengths, all x alike, an uncertainty below
 * 0 or both 0, a correlation outside −1 to 1, a value that is not finite, no scatter where it is to scale, or
 * repeats at one x that contradict the uncertainties stated (`repeatsTest`)
 * @throws Error the iteration did not settle
 * @example fitLineBothErrors([0, 1, 2], [0.1, 0.9, 2.1], { ux: 0.1, uy: 0.1 }).slope // 1.006688888641981
 * @source D. York, Canadian Journal of Physics 44 (1966) 1079-1086; D. York, N. M. Evensen, M. Lopez
 * Martinez, J. De Basabe Delgado, American Journal of Physics 72 (2004) 367-375, eqs. 13
 */
export function fitLineBothErrors(
  x: readonly number[],
  y: readonly number[],
  options: BothErrorsOptions,
): LineFit {
  const where = "fitLineBothErrors";
  const { correlation = 0, scaleByScatter = false } = options;
  const atLeast = scaleByScatter ? 3 : 2;
  requireFiniteList(where, "x", x, atLeast);
  requireFiniteList(where, "y", y, atLeast);
  requireSameLength(where, "x", x, "y", y);
  requireSpread(where, x);
  const n = x.length;
  const ux = uncertaintyList(where, "ux", options.ux, n, true);
  const uy = uncertaintyList(where, "uy", options.uy, n, true);
  const r = typeof correlation === "number" ? new Array<number>(n).fill(correlation) : correlation;
  requireFiniteList(where, "correlation", r, 0);
  requireSameLength(where, "correlation", r, "x", x);
  for (let i = 0; i < n; i++) {
    if (ux[i] === 0 && uy[i] === 0)
      throw new RangeError(`${where}: ux[${i}] or uy[${i}] must be greater than 0, got 0 for both`);
    if (!(Math.abs(r[i]!) < 1))
      throw new RangeError(`${where}: correlation[${i}] must lie between -1 and 1, got ${r[i]}`);
  }

  let slope = startingSlope(x, y, ux, uy);
  for (let step = 1; step <= mostSteps; step++) {
    const next = yorkStep(x, y, ux, uy, r, slope);
    const moved = Math.abs(next.slope - slope);
    slope = next.slope;
    if (!Number.isFinite(slope)) break;
    if (moved <= settledBelow * (Math.abs(slope) + Math.sqrt(next.varianceSlope))) {
      const last = yorkStep(x, y, ux, uy, r, slope);
      return lineFitOf(
        {
          where,
          uName: "ux and uy in their true size (no scaleByScatter)",
          method: "errors in both",
          through: null,
          slope,
          centre: { x: last.x, y: last.y },
          varianceCentre: last.varianceCentre,
          varianceSlope: last.varianceSlope,
          weights: last.weights,
          uncertaintyKnown: true,
          scaled: scaleByScatter,
        },
        x,
        y,
      );
    }
  }
  throw new Error(
    `${where}: the slope did not settle in ${mostSteps} steps, last ${slope}; the points may lie along y, or carry too little slope for their errors`,
  );
}

/** Orthogonal line in units of the typical uncertainties: near the answer whichever error dominates. */
function startingSlope(
  x: readonly number[],
  y: readonly number[],
  ux: readonly number[],
  uy: readonly number[],
): number {
  const meanX = compensatedSum(x) / x.length;
  const meanY = compensatedSum(y) / y.length;
  const xx = compensatedSum(x.map((v) => (v - meanX) ** 2));
  const yy = compensatedSum(y.map((v) => (v - meanY) ** 2));
  const xy = compensatedSum(x.map((v, i) => (v - meanX) * (y[i]! - meanY)));
  const varianceX = compensatedSum(ux.map((u) => u * u));
  const varianceY = compensatedSum(uy.map((u) => u * u));
  if (xy === 0) return 0;
  if (varianceX === 0) return xy / xx;
  const ratio = varianceY / varianceX;
  const difference = yy - ratio * xx;
  return (difference + Math.sqrt(difference ** 2 + 4 * ratio * xy * xy)) / (2 * xy);
}

interface YorkStep {
  readonly slope: number;
  readonly x: number;
  readonly y: number;
  readonly varianceCentre: number;
  readonly varianceSlope: number;
  readonly weights: readonly number[];
}

/** One step of York's iteration, and the centre and variances that belong to the slope it started from. */
function yorkStep(
  x: readonly number[],
  y: readonly number[],
  ux: readonly number[],
  uy: readonly number[],
  r: readonly number[],
  b: number,
): YorkStep {
  const weights = x.map((_, i) => 1 / (uy[i]! ** 2 + b * b * ux[i]! ** 2 - 2 * b * r[i]! * ux[i]! * uy[i]!));
  // A level line through points without error in y has no weight of its own: there the iteration ends.
  if (!weights.every(Number.isFinite))
    return { slope: Number.NaN, x: 0, y: 0, varianceCentre: 0, varianceSlope: 0, weights };
  const total = compensatedSum(weights);
  const meanX = x[0]! + compensatedSum(x.map((v, i) => weights[i]! * (v - x[0]!))) / total;
  const meanY = y[0]! + compensatedSum(y.map((v, i) => weights[i]! * (v - y[0]!))) / total;
  const beta = weights.map((w, i) => {
    const dx = x[i]! - meanX;
    const dy = y[i]! - meanY;
    return w * (dx * uy[i]! ** 2 + b * dy * ux[i]! ** 2 - (b * dx + dy) * r[i]! * ux[i]! * uy[i]!);
  });
  const up = compensatedSum(beta.map((v, i) => weights[i]! * v * (y[i]! - meanY)));
  const along = compensatedSum(beta.map((v, i) => weights[i]! * v * (x[i]! - meanX)));
  const meanBeta = compensatedSum(beta.map((v, i) => weights[i]! * v)) / total;
  const spread = compensatedSum(beta.map((v, i) => weights[i]! * (v - meanBeta) ** 2));
  return {
    slope: up / along,
    x: meanX + meanBeta,
    y: meanY + b * meanBeta,
    varianceCentre: 1 / total,
    varianceSlope: 1 / spread,
    weights,
  };
}
