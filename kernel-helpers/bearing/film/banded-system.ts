/** A system whose unknowns can be held at 0, factored anew only from the first line that changed. */
export interface BandedSystem {
  /**
   * Solves with some unknowns held at 0.
   *
   * @param held  1 where the unknown is held
   * @param changedFrom  the first unknown whose `held` differs from the last call's; 0 at the first call
   * @returns the unknowns; the same array at every call
   */
  solve(held: Uint8Array, changedFrom: number): Float64Array;
}

/**
 * A symmetric positive definite system with three diagonals: the main one, the one next to it, and one a band further
 * on. By Cholesky within the band, row by row: a row's factor depends on the rows before it alone, so that the factor is
 * kept up to the first row that changed.
 *
 * @param diagonal  main diagonal
 * @param beside  to the next unknown
 * @param ahead  to the unknown a band further on
 * @param right  right side
 * @param band  how far `ahead` reaches
 * @source G. H. Golub & C. F. Van Loan, Matrix Computations, 3rd edition, 1996, section 4.3.5 (from memory)
 */
export function bandedSystem(
  diagonal: Float64Array,
  beside: Float64Array,
  ahead: Float64Array,
  right: Float64Array,
  band: number,
): BandedSystem {
  const size = diagonal.length;
  const width = band + 1;
  // factor[i·width + k] is L(i, i − band + k); k = band is the diagonal, kept as 1/L(i, i).
  const factor = new Float64Array(size * width);
  const forward = new Float64Array(size);
  const x = new Float64Array(size);
  return Object.freeze({
    solve(held: Uint8Array, changedFrom: number): Float64Array {
      for (let i = changedFrom; i < size; i++) factorRow(i, held);
      x.set(forward);
      for (let i = size - 1; i >= 0; i--) {
        if (held[i] === 1) continue;
        const row = i * width + band - i;
        const value = x[i]! * factor[row + i]!;
        x[i] = value;
        for (let j = Math.max(0, i - band); j < i; j++) x[j]! -= factor[row + j]! * value;
      }
      return x;
    },
  });

  function factorRow(i: number, held: Uint8Array): void {
    const start = i * width;
    factor.fill(0, start, start + width);
    forward[i] = 0;
    if (held[i] === 1) {
      factor[start + band] = 1;
      return;
    }
    // L(i, j) stands at row + j.
    const row = start + band - i;
    if (i >= 1 && held[i - 1] === 0) factor[row + i - 1] = beside[i - 1]!;
    if (i >= band && held[i - band] === 0)
      factor[row + i - band] = factor[row + i - band]! + ahead[i - band]!;
    let first = Math.max(0, i - band);
    while (first < i && held[first] === 1) first++;
    let square = diagonal[i]!;
    let sum = right[i]!;
    for (let j = first; j < i; j++) {
      if (held[j] === 1) continue;
      const other = j * width + band - j;
      const value =
        (factor[row + j]! - product(factor, row + first, other + first, j - first)) * factor[other + j]!;
      factor[row + j] = value;
      square -= value * value;
      sum -= value * forward[j]!;
    }
    const inverse = 1 / Math.sqrt(square);
    factor[row + i] = inverse;
    forward[i] = sum * inverse;
  }
}

/** Σ values[a + k]·values[b + k], in four sums that do not wait for each other. */
function product(values: Float64Array, a: number, b: number, count: number): number {
  let [s0, s1, s2, s3] = [0, 0, 0, 0];
  const fours = count - (count % 4);
  let k = 0;
  for (; k < fours; k += 4) {
    s0 += values[a + k]! * values[b + k]!;
    s1 += values[a + k + 1]! * values[b + k + 1]!;
    s2 += values[a + k + 2]! * values[b + k + 2]!;
    s3 += values[a + k + 3]! * values[b + k + 3]!;
  }
  for (; k < count; k++) s0 += values[a + k]! * values[b + k]!;
  return s0 + s1 + (s2 + s3);
}
