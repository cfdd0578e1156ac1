import type { FilmLines } from "./film-lines.js";
import { sumOfProducts } from "./sum-of-products.js";

/** Lines of a film without a gap, one after the other from the first, done away with. */
export interface WholeLines {
  /**
   * What is left to the line behind them, once the first `count` lines, 1 or more, are done away with.
   *
   * @returns `matrix`: what comes off the matrix of that line, along × along; `right`: what is added to its right side
   */
  leave(count: number): { readonly matrix: Float64Array; readonly right: Float64Array };
  /** Writes the pressure of the first `count` lines, where the line behind them is known or, after the last, is the border. */
  fill(count: number, pressure: Float64Array): void;
}

/**
 * Lines of an oil film with no gap in it, by its waves along the bearing: with a film thickness that does not change along
 * the bearing, cos((2k + 1)πj/2m), k = 0…m − 1, solve the differences along a line exactly, with the values
 * λ = 2 − 2·cos((2k + 1)π/2m), and each wave goes round the film by itself, three terms a line.
 *
 * Exact to rounding; m multiplications a node in place of the m² of a band.
 *
 * @param lines  equations of the film
 * @source R. W. Hockney, J. ACM 12, 1965 (waves one way, elimination the other; from memory)
 */
export function wholeLines({ around, along: m, turn, out, right }: FilmLines): WholeLines {
  const cosines = Float64Array.from({ length: 4 * m }, (_, n) => Math.cos((n * Math.PI) / (2 * m)));
  const cosine = (k: number, n: number): number => cosines[((2 * k + 1) * n) % (4 * m)]!;
  const share = (j: number): number => (j === 0 ? 0.5 : 1);
  // wave[j·m + k]: columns scaled so that Σ s_j·wave_jk·wave_jl = 1 for k = l, 0 else.
  const wave = new Float64Array(m * m);
  const scale = Math.sqrt(2 / m);
  for (let j = 0; j < m; j++) for (let k = 0; k < m; k++) wave[j * m + k] = scale * cosine(k, j);
  // How much of a push that is even along the line each wave has, and its stiffness.
  const evenly = new Float64Array(m);
  const stiffness = Float64Array.from({ length: m }, (_, k) => 2 - 2 * cosine(k, 1));
  for (let j = 0; j < m; j++) for (let k = 0; k < m; k++) evenly[k]! += share(j) * wave[j * m + k]!;

  // Elimination from the first line on: what is left of each wave's diagonal (its inverse) and of its right side.
  const inverse = new Float64Array(around * m);
  const load = new Float64Array(around * m);
  for (let i = 0, at = 0; i < around; i++)
    for (let k = 0; k < m; k++, at++) {
      const [back, last] = i === 0 ? [0, at] : [turn[i]! * inverse[at - m]!, at - m];
      const own = turn[i]! + turn[i + 1]! + out[i]! * stiffness[k]!;
      inverse[at] = 1 / (own - turn[i]! * back);
      load[at] = right[i]! * evenly[k]! + back * load[last]!;
    }

  return Object.freeze({
    leave(count: number) {
      const last = (count - 1) * m;
      const link = turn[count]!;
      // Σ_k inverse_k·cos(kj)·cos(kl) by sums and differences of j and l.
      const sums = new Float64Array(2 * m - 1);
      for (let n = 0; n < sums.length; n++)
        for (let k = 0; k < m; k++) sums[n]! += inverse[last + k]! * cosine(k, n);
      const matrix = new Float64Array(m * m);
      const added = new Float64Array(m);
      for (let j = 0; j < m; j++) {
        for (let l = 0; l < m; l++)
          matrix[j * m + l] =
            ((link * link * share(j) * share(l)) / m) * (sums[Math.abs(j - l)]! + sums[j + l]!);
        let sum = 0;
        for (let k = 0; k < m; k++) sum += wave[j * m + k]! * inverse[last + k]! * load[last + k]!;
        added[j] = link * share(j) * sum;
      }
      return { matrix, right: added };
    },
    fill(count: number, pressure: Float64Array) {
      const amount = new Float64Array(m);
      if (count < around)
        for (let j = 0; j < m; j++) {
          const weight = share(j) * pressure[count * m + j]!;
          if (weight !== 0) for (let k = 0; k < m; k++) amount[k]! += wave[j * m + k]! * weight;
        }
      for (let i = count - 1; i >= 0; i--) {
        const [row, link] = [i * m, turn[i + 1]!];
        for (let k = 0; k < m; k++) amount[k] = inverse[row + k]! * (load[row + k]! + link * amount[k]!);
        for (let j = 0; j < m; j++) pressure[row + j] = sumOfProducts(wave, j * m, amount, 0, m);
      }
    },
  });
}
