/**
 * The positive number at which an increasing function crosses 0, to the last digit a number can hold.
 *
 * Doubles or halves from 1 until the crossing is enclosed, then bisects until no number lies between.
 * Valid when: f increases on the positive numbers and its crossing lies between 1e-300 and 1e300; a crossing
 * outside is reported as 0 or Infinity.
 *
 * @param f increasing function of a positive number
 * @returns the crossing [unit of f's argument]
 * @example solveIncreasing((x) => x * x - 2) // 1.4142135623730951
 * @source common practice, no source
 */
export function solveIncreasing(f: (x: number) => number): number {
  let low = 1;
  let high = 1;
  while (f(high) < 0) {
    low = high;
    high *= 2;
    if (high > 1e300) return Number.POSITIVE_INFINITY;
  }
  while (low === high || f(low) > 0) {
    if (low !== high) high = low;
    low /= 2;
    if (low < 1e-300) return 0;
  }
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
}
