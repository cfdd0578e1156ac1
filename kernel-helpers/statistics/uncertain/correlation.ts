/** The correlation coefficient of two inputs, by their names; −1 to 1. */
export type Correlation = readonly [string, string, number];

/** How far below 0 rounding may bring a pivot of a matrix that is only just no contradiction. */
const roundingOfPivot = 1e-12;

/**
 * The correlation matrix of inputs of which some pairs are correlated, the others not.
 *
 * @throws RangeError  a name is not known, a pair stands twice or is one of an input with itself, a
 * coefficient lies beyond ±1, or together they contradict each other
 */
export function correlationMatrix(
  where: string,
  names: readonly string[],
  pairs: readonly Correlation[],
): readonly (readonly number[])[] {
  const matrix: number[][] = names.map((_, i) => names.map((_, j) => (i === j ? 1 : 0)));
  const seen = new Set<string>();
  for (const [a, b, r] of pairs) {
    const [i, j] = [names.indexOf(a), names.indexOf(b)] as const;
    if (i < 0 || j < 0)
      throw new RangeError(`${where}: correlation must name two of ${names.join(", ")}, got ${a} and ${b}`);
    if (i === j) throw new RangeError(`${where}: an input is not correlated with itself, got ${a} and ${b}`);
    if (!(r >= -1 && r <= 1))
      throw new RangeError(`${where}: correlation of ${a} and ${b} must lie from −1 to 1, got ${r}`);
    const key = [i, j].sort().join();
    if (seen.has(key))
      throw new RangeError(`${where}: correlation of ${a} and ${b} must stand once, got two`);
    seen.add(key);
    matrix[i]![j] = r;
    matrix[j]![i] = r;
  }
  choleskyFactor(where, names, matrix);
  return Object.freeze(matrix.map((row) => Object.freeze(row)));
}

/**
 * The lower triangular factor L of a correlation matrix, R = L Lᵀ; columns are 0 where inputs are fully tied.
 *
 * @throws RangeError  the coefficients contradict each other: no inputs can be correlated so
 * @source Cholesky's method, for a semidefinite matrix: N. J. Higham, Accuracy and Stability of Numerical
 * Algorithms, 2nd edition, 2002, section 10.3 (from memory)
 */
export function choleskyFactor(
  where: string,
  names: readonly string[],
  matrix: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  const size = matrix.length;
  const factor = matrix.map(() => new Array<number>(size).fill(0));
  const left = (i: number, j: number): number => {
    let sum = matrix[i]![j]!;
    for (let k = 0; k < j; k++) sum -= factor[i]![k]! * factor[j]![k]!;
    return sum;
  };
  const contradiction = (): RangeError =>
    new RangeError(`${where}: the correlations of ${names.join(", ")} contradict each other`);
  for (let j = 0; j < size; j++) {
    const pivot = left(j, j);
    if (pivot < -roundingOfPivot) throw contradiction();
    const tied = pivot <= roundingOfPivot;
    for (let i = j; i < size; i++) {
      const rest = left(i, j);
      // A coefficient below the square root of the bound is all that rounding can leave of 0.
      if (tied && Math.abs(rest) > Math.sqrt(roundingOfPivot)) throw contradiction();
      factor[i]![j] = tied ? 0 : rest / Math.sqrt(pivot);
    }
  }
  return factor;
}
