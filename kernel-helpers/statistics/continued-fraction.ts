/** Stands in for a partial denominator that happens to be exactly 0. */
const tiny = 1e-300;
const mostTerms = 1_000_000;

/**
 * Value of the continued fraction 1/(b₀ + a₁/(b₁ + a₂/(b₂ + …))) by Lentz's method, to the last digit.
 *
 * @param where name of the caller, for the error message
 * @param numerator aₖ for k = 1, 2, … [-]
 * @param denominator bₖ for k = 0, 1, 2, … [-]
 * @returns the value [-]
 * @throws Error when it has not settled after a million terms
 * @example continuedFraction("example", () => 1, () => 1) // 0.618033988749895, the golden ratio less 1
 * @source W. J. Lentz, Applied Optics 15 (1976) 668-671, in the form of Thompson & Barnett (1986) (from
 * memory)
 */
export function continuedFraction(
  where: string,
  numerator: (k: number) => number,
  denominator: (k: number) => number,
): number {
  let value = denominator(0) || tiny;
  let c = value;
  let d = 0;
  for (let k = 1; k <= mostTerms; k++) {
    const a = numerator(k);
    const b = denominator(k);
    d = 1 / (b + a * d || tiny);
    c = b + a / c || tiny;
    const step = c * d;
    value *= step;
    if (Math.abs(step - 1) <= Number.EPSILON) return 1 / value;
  }
  throw new Error(`${where}: the continued fraction did not settle after ${mostTerms} terms`);
}
