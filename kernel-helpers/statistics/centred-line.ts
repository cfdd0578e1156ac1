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
 * Weighted sums of squares and products about the weighted middle, in two passes with compensated sums, so
 * that a large offset of x or y costs no digits.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param weights weight of each reading, > 0
 * @returns the sums; never mutates its inputs
 * @source T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983) 242-247 (two-pass
 * algorithm; from memory)
 */
export function centredSums(
  x: readonly number[],
  y: readonly number[],
  weights: ArrayLike<number>,
): CentredSums {
  // Weighted middles: reckoned from the first reading, then once corrected.
  const near = meansFrom({ x: x[0]!, y: y[0]! }, x, y, weights);
  const middle = meansFrom(near, x, y, weights);
  const [xx, xy, yy] = [new CompensatedSum(), new CompensatedSum(), new CompensatedSum()];
  for (let i = 0; i < x.length; i++) {
    const dx = x[i]! - middle.x;
    const dy = y[i]! - middle.y;
    const weighted = weights[i]! * dx;
    xx.add(weighted * dx);
    xy.add(weighted * dy);
    yy.add(weights[i]! * dy * dy);
  }
  return { ...middle, xx: xx.value, xy: xy.value, yy: yy.value };
}

/** The weighted middles, reckoned from a place near them, and the sum of weights. */
function meansFrom(
  near: { readonly x: number; readonly y: number },
  x: readonly number[],
  y: readonly number[],
  weights: ArrayLike<number>,
): Pick<CentredSums, "w" | "x" | "y"> {
  const [w, wx, wy] = [new CompensatedSum(), new CompensatedSum(), new CompensatedSum()];
  for (let i = 0; i < x.length; i++) {
    const weight = weights[i]!;
    w.add(weight);
    wx.add(weight * (x[i]! - near.x));
    wy.add(weight * (y[i]! - near.y));
  }
  return { w: w.value, x: near.x + wx.value / w.value, y: near.y + wy.value / w.value };
}
