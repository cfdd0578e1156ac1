import { normalCdf } from "./normal-distribution.js";

/** Even number of steps of Simpson's rule; halving them moves no result by more than 1e-10. */
const steps = 2000;
/** The normal density beyond so many standard deviations is below 1e-22. */
const reach = 10;

/**
 * Chance that a vector in a plane, known to lie about a point with the same normal noise in both directions, is
 * shorter than a given length (Rice distribution).
 *
 * P(|V| < R) = ∫ φ((x − a)/σ)/σ · (2Φ(√(R² − x²)/σ) − 1) dx over −R…R
 *
 * Valid when: both components have the same standard deviation and are independent. To about 1e-10.
 *
 * @param length R, ≥ 0 [any one unit]
 * @param distance a, of the point from the origin, ≥ 0 [same unit]
 * @param sigma standard deviation of each component, > 0 [same unit]
 * @returns the chance, 0 to 1 [-]
 * @throws RangeError a value is not finite, negative, or sigma is not above 0
 * @example riceCdf(1, 0, 1).toFixed(6) // "0.393469"
 * @source S. O. Rice, Mathematical analysis of random noise, Bell System Technical Journal 24, 1945, section 3.10
 * (from memory); the integral follows from the definition
 */
export function riceCdf(length: number, distance: number, sigma: number): number {
  if (!(length >= 0 && distance >= 0 && sigma > 0 && [length, distance, sigma].every(Number.isFinite)))
    throw new RangeError(
      `riceCdf: length and distance must be 0 or more and sigma above 0, got ${length}, ${distance} and ${sigma}`,
    );
  const from = Math.max(-length, distance - reach * sigma);
  const to = Math.min(length, distance + reach * sigma);
  if (from >= to) return 0;
  // x = middle + half·sin t: the square root at the ends of −R…R would slow the rule down otherwise.
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  const at = (t: number): number => {
    const x = middle + half * Math.sin(t);
    const density = Math.exp(-0.5 * ((x - distance) / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI));
    const across = 2 * normalCdf(Math.sqrt(Math.max(0, length * length - x * x)) / sigma) - 1;
    return density * across * half * Math.cos(t);
  };
  const step = Math.PI / steps;
  let sum = at(-Math.PI / 2) + at(Math.PI / 2);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * at(-Math.PI / 2 + i * step);
  return Math.min(1, (sum * step) / 3);
}
