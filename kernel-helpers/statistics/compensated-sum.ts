/**
 * Sum that carries along what each addition rounds off, so that its error does not grow with the length.
 *
 * Σ vᵢ, with the lost low part of every addition kept in a second number (Neumaier's variant of Kahan's sum)
 *
 * Valid when: every value is finite and the sum does not overflow. The empty sum is 0.
 *
 * @param values the numbers to add [any one unit]
 * @returns their sum [unit of values]
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2, where plain addition gives 0
 * @source A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54 (1974)
 * 39-51, algorithm IV (from memory)
 */
export function compensatedSum(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/**
 * The compensated sum of a term for each of n places, without a list of the terms.
 *
 * @param n how many terms
 * @param term the term at a place, 0 to n − 1
 * @returns their sum
 * @source as `compensatedSum`
 */
export function compensatedSumOf(n: number, term: (i: number) => number): number {
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < n; i++) {
    const value = term(i);
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
