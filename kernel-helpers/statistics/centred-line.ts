import { CompensatedSum } from "./compensated-sum.js";

/** Weighted sums of readings about their own middle. */
export interface CentredSums {
  /** Σ w. */
  readonly w: number;
  /** Weighted middle of the readings. */
  readonly x: number;
  readonly y: number;
  /** Σ w (x−x̄)², Σ w (x−x̄)(y−ȳ), Σ w (y−ȳ)². */
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * Weighted sums of squares and products about the weighted middle, so that a large offset of x or y costs no digits.
 *
 * Two passes: middles by plain sums reckoned from the first reading, which lie near the true ones; then compensated
 * sums about them. What the near middles miss is taken off: Σ w (x−x̄)² = Σ w dx² − (Σ w dx)²/Σ w, dx from the near
 * middle, a difference of a large number and a very small one.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param weights weight of each reading, > 0
 * @returns the sums; never mutates its inputs
 * @source T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983) 242-247 (corrected two-pass
 * algorithm; from memory)
 */
export function centredSums(
  x: readonly number[],
  y: readonly number[],
  weights: ArrayLike<number>,
): CentredSums {
  const near = nearMiddle(x, y, weights);
  const [sumW, sumX, sumY] = [new CompensatedSum(), new CompensatedSum(), new CompensatedSum()];
  const [sumXX, sumXY, sumYY] = [new CompensatedSum(), new CompensatedSum(), new CompensatedSum()];
  for (let i = 0; i < x.length; i++) {
    const weight = weights[i]!;
    const dx = x[i]! - near.x;
    const dy = y[i]! - near.y;
    const [wx, wy] = [weight * dx, weight * dy];
    sumW.add(weight);
    sumX.add(wx);
    sumY.add(wy);
    sumXX.add(wx * dx);
    sumXY.add(wx * dy);
    sumYY.add(wy * dy);
  }
  const w = sumW.value;
  const [missedX, missedY] = [sumX.value / w, sumY.value / w];
  return {
    w,
    x: near.x + missedX,
    y: near.y + missedY,
    xx: sumXX.value - w * missedX * missedX,
    xy: sumXY.value - w * missedX * missedY,
    yy: sumYY.value - w * missedY * missedY,
  };
}

/** Weighted middles by plain sums, reckoned from the first reading. */
function nearMiddle(
  x: readonly number[],
  y: readonly number[],
  weights: ArrayLike<number>,
): { readonly x: number; readonly y: number } {
  const [firstX, firstY] = [x[0]!, y[0]!];
  let [w, wx, wy] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    const weight = weights[i]!;
    w += weight;
    wx += weight * (x[i]! - firstX);
    wy += weight * (y[i]! - firstY);
  }
  return { x: firstX + wx / w, y: firstY + wy / w };
}
