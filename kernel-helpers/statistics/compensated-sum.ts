import { requireFiniteList } from "./check.js";

/**
 * Sum that carries along what each addition rounds off, so that its error does not grow with the length.
 *
 * Σ vᵢ, with the lost low part of every addition kept in a second number (Neumaier's variant of Kahan's sum)
 *
 * Valid when: every value is finite and the sum does not overflow. The empty sum is 0.
 *
 * @param values the numbers to add [any one unit]
 * @returns their sum [unit of values]
 * @throws RangeError a value is not finite, or the sum overflows
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2, where plain addition gives 0
 * @source A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54 (1974)
 * 39-51, algorithm IV (from memory)
 */
export function compensatedSum(values: readonly number[]): number {
  const sum = new CompensatedSum();
  for (const value of values) sum.add(value);
  // Looked for only where something went wrong: a check of every value would take longer than the sum.
  if (!Number.isFinite(sum.value)) {
    requireFiniteList("compensatedSum", "values", values, 0);
    throw new RangeError(
      `compensatedSum: the sum must stay below 1.8e308, got an overflow of ${values.length} values`,
    );
  }
  return sum.value;
}

/**
 * A compensated sum on its way, for terms that are made one after the other.
 *
 * What an addition rounds off is found without asking which of the two is larger, so that several sums side by side
 * take no longer than one.
 *
 * @source as `compensatedSum`; the error of an addition: D. E. Knuth, The Art of Computer Programming, volume 2, 4.2.2,
 * theorem B (from memory)
 */
export class CompensatedSum {
  #sum = 0;
  #lost = 0;

  add(value: number): void {
    const next = this.#sum + value;
    const added = next - this.#sum;
    this.#lost += this.#sum - (next - added) + (value - added);
    this.#sum = next;
  }

  get value(): number {
    return this.#sum + this.#lost;
  }
}
