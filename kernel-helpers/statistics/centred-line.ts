import { compensatedSum, compensatedSumOf } from "./compensated-sum.js";

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
  weights: readonly number[],
): CentredSums {
  const n = x.length;
  const w = compensatedSum(weights);
  const meanX = middle(x, weights, w);
  const meanY = middle(y, weights, w);
  const dx = (i: number): number => x[i]! - meanX;
  const dy = (i: number): number => y[i]! - meanY;
  return {
    w,
    x: meanX,
    y: meanY,
    xx: compensatedSumOf(n, (i) => weights[i]! * dx(i) * dx(i)),
    xy: compensatedSumOf(n, (i) => weights[i]! * dx(i) * dy(i)),
    yy: compensatedSumOf(n, (i) => weights[i]! * dy(i) * dy(i)),
  };
}

/** Weighted mean: reckoned from the first value, then once corrected. */
function middle(values: readonly number[], weights: readonly number[], total: number): number {
  const from = (start: number): number =>
    start + compensatedSumOf(values.length, (i) => weights[i]! * (values[i]! - start)) / total;
  return from(from(values[0]!));
}
