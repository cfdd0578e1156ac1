/** A symmetric matrix of which only a band about the diagonal is not 0; the lower half is kept, row by row. */
export interface BandedMatrix {
  readonly size: number;
  /** How far the band reaches from the diagonal. */
  readonly band: number;
  /** A(i, j) at i·(band + 1) + band − (i − j), j from i − band to i. */
  readonly values: Float64Array;
}

export function bandedMatrix(size: number, band: number): BandedMatrix {
  return { size, band, values: new Float64Array(size * (band + 1)) };
}

/** Adds to A(i, j) and so to A(j, i). */
export function addTo({ band, values }: BandedMatrix, i: number, j: number, value: number): void {
  const [low, high] = i < j ? [i, j] : [j, i];
  values[high * (band + 1) + band - (high - low)]! += value;
}

/** Holds an unknown at 0: its row and column become those of the unit matrix, times `diagonal`. */
export function hold({ size, band, values }: BandedMatrix, i: number, diagonal: number): void {
  const width = band + 1;
  values.fill(0, i * width, i * width + band);
  values[i * width + band] = diagonal;
  for (let k = i + 1; k <= Math.min(size - 1, i + band); k++) values[k * width + band - (k - i)] = 0;
}

export function times({ size, band, values }: BandedMatrix, x: Float64Array): Float64Array {
  const y = new Float64Array(size);
  const width = band + 1;
  for (let i = 0; i < size; i++) {
    const row = i * width + band - i;
    let sum = values[row + i]! * x[i]!;
    for (let j = Math.max(0, i - band); j < i; j++) {
      sum += values[row + j]! * x[j]!;
      y[j]! += values[row + j]! * x[i]!;
    }
    y[i]! += sum;
  }
  return y;
}

/**
 * Cholesky's factor L of a banded matrix, A = L Lᵀ, in the same band.
 *
 * @returns undefined where the matrix is not positive definite: what it stands for can move freely
 * @source G. H. Golub & C. F. Van Loan, Matrix Computations, 3rd edition, 1996, section 4.3.5 (from memory)
 */
export function factorOf({ size, band, values }: BandedMatrix): BandedMatrix | undefined {
  const width = band + 1;
  const l = new Float64Array(values);
  for (let i = 0; i < size; i++) {
    const row = i * width + band - i;
    const first = Math.max(0, i - band);
    for (let j = first; j <= i; j++) {
      const other = j * width + band - j;
      let sum = l[row + j]!;
      for (let k = Math.max(first, j - band); k < j; k++) sum -= l[row + k]! * l[other + k]!;
      if (j < i) l[row + j] = sum / l[other + j]!;
      else if (sum > 1e-13 * values[row + i]!) l[row + i] = Math.sqrt(sum);
      else return undefined;
    }
  }
  return { size, band, values: l };
}

/** Solves L Lᵀ x = right. */
export function solved({ size, band, values }: BandedMatrix, right: Float64Array): Float64Array {
  const width = band + 1;
  const x = new Float64Array(right);
  for (let i = 0; i < size; i++) {
    const row = i * width + band - i;
    let sum = x[i]!;
    for (let k = Math.max(0, i - band); k < i; k++) sum -= values[row + k]! * x[k]!;
    x[i] = sum / values[row + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = i * width + band - i;
    const value = x[i]! / values[row + i]!;
    x[i] = value;
    for (let k = Math.max(0, i - band); k < i; k++) x[k]! -= values[row + k]! * value;
  }
  return x;
}
