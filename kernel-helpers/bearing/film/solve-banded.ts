/**
 * Solves a symmetric positive definite system with three diagonals: the main one, the one next to it, and one a band
 * further on. Unknowns marked as held are 0. By Cholesky within the band.
 *
 * @param diagonal  main diagonal
 * @param beside  to the next unknown
 * @param ahead  to the unknown a band further on
 * @param right  right side
 * @param held  1 where the unknown is held at 0
 * @param band  how far `ahead` reaches
 * @source G. H. Golub & C. F. Van Loan, Matrix Computations, 3rd edition, 1996, section 4.3.5 (from memory)
 */
export function solveBanded(
  diagonal: Float64Array,
  beside: Float64Array,
  ahead: Float64Array,
  right: Float64Array,
  held: Uint8Array,
  band: number,
): Float64Array {
  const size = diagonal.length;
  const width = band + 1;
  // factor[i·width + k] is L(i, i − band + k); k = band is the diagonal.
  const factor = new Float64Array(size * width);
  const x = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const row = i * width;
    if (held[i] === 1) {
      factor[row + band] = 1;
      continue;
    }
    const free = (j: number): boolean => j >= 0 && held[j] === 0;
    if (free(i - 1)) factor[row + band - 1] = beside[i - 1]!;
    if (free(i - band)) factor[row] = factor[row]! + ahead[i - band]!;
    const first = Math.max(0, i - band);
    let square = diagonal[i]!;
    for (let j = first; j < i; j++) {
      const at = row + j - i + band;
      const other = j * width;
      let sum = factor[at]!;
      // Products of the two rows where both reach; the row of j begins a band before j.
      for (let k = Math.max(first, j - band); k < j; k++)
        sum -= factor[row + k - i + band]! * factor[other + k - j + band]!;
      const value = sum / factor[other + band]!;
      factor[at] = value;
      square -= value * value;
    }
    factor[row + band] = Math.sqrt(square);
  }
  for (let i = 0; i < size; i++) {
    const row = i * width;
    let sum = held[i] === 1 ? 0 : right[i]!;
    for (let j = Math.max(0, i - band); j < i; j++) sum -= factor[row + j - i + band]! * x[j]!;
    x[i] = sum / factor[row + band]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j <= Math.min(size - 1, i + band); j++)
      sum -= factor[j * width + i - j + band]! * x[j]!;
    x[i] = sum / factor[i * width + band]!;
  }
  return x;
}
