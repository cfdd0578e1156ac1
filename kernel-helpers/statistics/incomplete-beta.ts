import { continuedFraction } from "./continued-fraction.js";
import { deviance, stirlingError } from "./stirling.js";

/** The two shares of a distribution on either side of a point; each is computed without cancellation. */
export interface Tails {
  /** Probability below the point [-]. */
  readonly lower: number;
  /** Probability above the point [-]. */
  readonly upper: number;
}

/**
 * Regularised incomplete beta function and its complement.
 *
 * Iₓ(a, b) = 1/B(a, b) ∫₀ˣ tᵃ⁻¹ (1−t)ᵇ⁻¹ dt and 1 − Iₓ(a, b)
 *
 * The smaller side is computed, by a continued fraction whose leading factor xᵃ(1−x)ᵇ/B(a, b) is written with
 * Stirling remainders instead of differences of large logarithms; so small tails keep their digits.
 * Valid when: a, b > 0, 0 ≤ x ≤ 1. y = 1 − x is passed by the caller, who often knows it to more digits.
 *
 * @param a first parameter [-], > 0
 * @param b second parameter [-], > 0
 * @param x where to cut [-]
 * @param y 1 − x [-]
 * @returns the two sides [-]
 * @example incompleteBeta(2, 3, 0.25, 0.75) // { lower: 0.26171875, upper: 0.73828125 }
 * @source continued fraction: A. R. DiDonato, A. H. Morris, ACM Transactions on Mathematical Software 18
 * (1992) 360-373, eq. 9; leading factor: C. Loader, Fast and Accurate Computation of Binomial Probabilities,
 * 2000 (both from memory)
 */
export function incompleteBeta(a: number, b: number, x: number, y: number): Tails {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (y <= 0) return { lower: 1, upper: 0 };
  if (x < (a + 1) / (a + b + 2)) {
    const lower = smallerSide(a, b, x, y);
    return { lower, upper: 1 - lower };
  }
  const upper = smallerSide(b, a, y, x);
  return { lower: 1 - upper, upper };
}

function smallerSide(a: number, b: number, x: number, y: number): number {
  const n = a + b;
  const exponent =
    stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n * x) - deviance(b, n * y);
  // xᵃyᵇ / (a B(a, b)): the binomial term at a in n = a + b trials, times b/n
  const factor = Math.sqrt(b / (2 * Math.PI * n * a)) * Math.exp(exponent);
  const fraction = continuedFraction(
    "incompleteBeta",
    (k) => {
      const odd = a + 2 * k - 1;
      return (((a + k - 1) * (n + k - 1)) / odd) * ((k * (b - k)) / odd) * x * x;
    },
    (k) => {
      // a·y − b·x is a − (a+b)x without its cancellation: so a large a loses no digits.
      const shift = a * y - b * x + 1 + k * (1 + y);
      const tail = ((a + k) * shift) / (a + 2 * k + 1);
      return k === 0 ? tail : k + (k * (b - k) * x) / (a + 2 * k - 1) + tail;
    },
  );
  return factor * a * fraction;
}
