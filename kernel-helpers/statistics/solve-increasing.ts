/**
 * The positive number at which an increasing function crosses 0, to the last digit a number can hold.
 *
 * Doubles or halves from 1 until the crossing is enclosed, then narrows by false position, with the weight of an end
 * that stays halved (Illinois), and by bisection where that is slow, until no number lies between.
 * Valid when: f increases on the positive numbers and its crossing lies between 1e-300 and 1e300; a crossing
 * outside is reported as 0 or Infinity.
 *
 * @param f increasing function of a positive number
 * @returns the crossing [unit of f's argument]
 * @example solveIncreasing((x) => x * x - 2) // 1.4142135623730951
 * @source G. Dahlquist, Å. Björck, Numerical Methods, 1974, section 6.4 (from memory)
 */
export function solveIncreasing(f: (x: number) => number): number {
  let low = 1;
  let high = 1;
  let [below, above] = [f(1), f(1)];
  while (above < 0) {
    [low, below] = [high, above];
    high *= 2;
    if (high > 1e300) return Number.POSITIVE_INFINITY;
    above = f(high);
  }
  while (low === high || below > 0) {
    if (low !== high) [high, above] = [low, below];
    low /= 2;
    if (low < 1e-300) return 0;
    below = f(low);
  }
  let stayed: "low" | "high" | undefined;
  for (let width = high - low, slow = 0; ; ) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    const at = slow > 2 ? middle : falsePosition(low, high, below / (below - above), middle);
    const value = f(at);
    if (value < 0) {
      [low, below] = [at, value];
      if (stayed === "high") above /= 2;
      stayed = "high";
    } else {
      [high, above] = [at, value];
      if (stayed === "low") below /= 2;
      stayed = "low";
    }
    slow = high - low > width / 2 ? slow + 1 : 0;
    width = high - low;
  }
}

/** A place at a share of the way; kept a few digits off the ends, so that both close in on the crossing. */
function falsePosition(low: number, high: number, share: number, middle: number): number {
  const step = 2 * Number.EPSILON * high;
  if (high - low < 4 * step || Number.isNaN(share)) return middle;
  return Math.min(Math.max(low + share * (high - low), low + step), high - step);
}
