import { requireFinite, requireProbability } from "./check.js";
import { incompleteGamma } from "./incomplete-gamma.js";

/**
 * Probability that a standard normal variable stays below z.
 *
 * Φ(z) = ½ Q(½, z²/2) for z < 0, ½ + ½ P(½, z²/2) for z ≥ 0; the upper tail is normalCdf(−z), without
 * cancellation.
 *
 * Valid when: z is finite. Relative error below 5e-15 for |z| ≤ 8, below 1e-13 down to z = −37.
 *
 * @param z standardised value [-]
 * @returns probability Φ(z) [-]
 * @throws RangeError z is not finite
 * @example normalCdf(1.96) // 0.9750021048517795
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, eqs. 26.2.2 and 6.5.16-17
 */
export function normalCdf(z: number): number {
  requireFinite("normalCdf", "z", z);
  const tails = incompleteGamma(0.5, (z * z) / 2);
  return z < 0 ? tails.upper / 2 : 0.5 + tails.lower / 2;
}

/**
 * Value below which a standard normal variable stays with probability p.
 *
 * Φ⁻¹(p) = (p − ½) A(r) / B(r), r = 0.180625 − (p − ½)², in the middle, and C(r) / D(r), r = √(−ln tail), outside:
 * quotients of polynomials of degree 7.
 *
 * Valid when: 0 < p < 1. Relative error below 1e-15.
 *
 * @param p probability below the value [-]
 * @returns z [-]
 * @throws RangeError p is not between 0 and 1
 * @example normalQuantile(0.975) // 1.959963984540054
 * @source M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37
 * (1988) 477-484, routine PPND16 (from memory; tested against the inverse of {@link normalCdf})
 */
export function normalQuantile(p: number): number {
  requireProbability("normalQuantile", "p", p);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * quotient(middlePart, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const z = r <= 5 ? quotient(outerPart, r - 1.6) : quotient(farPart, r - 5);
  return q < 0 ? -z : z;
}

/** Coefficients above and below the line, from the constant term on, each to the last digit a number can hold. */
type Quotient = readonly [readonly number[], readonly number[]];

const middlePart: Quotient = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
    67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
];
const outerPart: Quotient = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
];
const farPart: Quotient = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
];

function quotient([above, below]: Quotient, r: number): number {
  const at = (coefficients: readonly number[]): number =>
    coefficients.reduceRight((sum, coefficient) => sum * r + coefficient, 0);
  return at(above) / at(below);
}
