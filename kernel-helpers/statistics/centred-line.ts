import { compensatedSum } from "./compensated-sum.js";

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
  const w = compensatedSum(weights);
  const meanX = middle(x, weights, w);
  const meanY = middle(y, weights, w);
  const dx = x.map((v) => v - meanX);
  const dy = y.map((v) => v - meanY);
  return {
    w,
    x: meanX,
    y: meanY,
    xx: compensatedSum(weights.map((wi, i) => wi * dx[i]! * dx[i]!)),
    xy: compensatedSum(weights.map((wi, i) => wi * dx[i]! * dy[i]!)),
    yy: compensatedSum(weights.map((wi, i) => wi * dy[i]! * dy[i]!)),
  };
}

/** Weighted mean: reckoned from the first value, then once corrected. */
function middle(values: readonly number[], weights: readonly number[], total: number): number {
  const first = values[0]!;
  const mean = first + compensatedSum(values.map((v, i) => weights[i]! * (v - first))) / total;
  return mean + compensatedSum(values.map((v, i) => weights[i]! * (v - mean))) / total;
}
