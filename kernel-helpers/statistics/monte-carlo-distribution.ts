import { type AnyQuantity, type Measured, measured } from "../quantity/index.js";
import { alike, dimensionOf, type Plain, siOf } from "./uncertain/plain-value.js";

/** The form of a distribution. */
export type DistributionShape =
  | "normal"
  | "student t"
  | "rectangular"
  | "inexact rectangular"
  | "triangular"
  | "arcsine";

/** What is known of an input, as a distribution. All are symmetric about the centre. */
export interface Distribution<V extends AnyQuantity | number> {
  readonly kind: "distribution";
  readonly shape: DistributionShape;
  readonly centre: V;
  /** Standard deviation of a normal one, scale of a t, half the width of the others. */
  readonly width: V;
  /** How far each limit of an inexact rectangular one may be off. */
  readonly limitsWithin?: V;
  /** Of a t. */
  readonly degreesOfFreedom?: number;
}

/**
 * A normal distribution: estimate and standard uncertainty known, nothing else.
 *
 * @param centre               the estimate
 * @param standardUncertainty  one standard deviation, of the same kind, ≥ 0
 * @returns the distribution
 * @throws TypeError   the two are of different kinds
 * @throws RangeError  the standard uncertainty is negative
 * @example normalAbout(inch(2.4375), inch(0.0002)).width // 0.0002 in
 * @source JCGM 101:2008, 6.4.7
 */
export function normalAbout<V extends AnyQuantity | number>(
  centre: V,
  standardUncertainty: V,
): Distribution<V> {
  return distribution("normalAbout", "normal", centre, standardUncertainty);
}

/**
 * A scaled and shifted t distribution: mean of a few readings.
 *
 * Its standard deviation is scale·√(ν/(ν − 2)), larger than the scale, and infinite for ν ≤ 2.
 *
 * @param centre            the mean
 * @param scale             standard deviation of the mean, s/√n, of the same kind, ≥ 0
 * @param degreesOfFreedom  ν, > 0 and finite [-]
 * @returns the distribution
 * @throws TypeError   centre and scale are of different kinds
 * @throws RangeError  the scale is negative, or the degrees of freedom are not positive and finite
 * @example studentTAbout(inch(2.4375), inch(0.0002), 4).degreesOfFreedom // 4
 * @source JCGM 101:2008, 6.4.9
 */
export function studentTAbout<V extends AnyQuantity | number>(
  centre: V,
  scale: V,
  degreesOfFreedom: number,
): Distribution<V> {
  if (!(degreesOfFreedom > 0 && degreesOfFreedom < Number.POSITIVE_INFINITY))
    throw new RangeError(
      `studentTAbout: degrees of freedom must be more than 0 and finite, got ${degreesOfFreedom}`,
    );
  return distribution("studentTAbout", "student t", centre, scale, { degreesOfFreedom });
}

/**
 * A rectangular distribution: between two limits, nothing more is known.
 *
 * @param centre     the middle
 * @param halfWidth  half the distance between the limits, of the same kind, ≥ 0
 * @param limitsWithin  how far either limit may itself be off (known no better than that), ≥ 0 and ≤ halfWidth;
 *   left out, the limits are exact
 * @returns the distribution
 * @throws TypeError   they are of different kinds
 * @throws RangeError  one is negative, or the limits may be off by more than the half width
 * @example Number(asMeasured(rectangularAbout(0, 1)).standardUncertainty) // 0.57735
 * @source JCGM 101:2008, 6.4.2, and 6.4.3 for inexact limits
 */
export function rectangularAbout<V extends AnyQuantity | number>(
  centre: V,
  halfWidth: V,
  limitsWithin?: V,
): Distribution<V> {
  if (limitsWithin === undefined) return distribution("rectangularAbout", "rectangular", centre, halfWidth);
  if (dimensionOf(limitsWithin) !== dimensionOf(centre))
    throw new TypeError(
      `rectangularAbout: limitsWithin must be of the kind of the centre, got ${limitsWithin} and ${centre}`,
    );
  if (!(siOf(limitsWithin) >= 0 && siOf(limitsWithin) <= siOf(halfWidth)))
    throw new RangeError(
      `rectangularAbout: limitsWithin must be from 0 to the half width ${halfWidth}, got ${limitsWithin}`,
    );
  return distribution("rectangularAbout", "inexact rectangular", centre, halfWidth, { limitsWithin });
}

/**
 * A triangular distribution: between two limits, values near the middle are more likely.
 *
 * @param centre     the middle
 * @param halfWidth  half the distance between the limits, of the same kind, ≥ 0
 * @returns the distribution
 * @throws TypeError   the two are of different kinds
 * @throws RangeError  the half width is negative
 * @example Number(asMeasured(triangularAbout(0, 1)).standardUncertainty) // 0.40825
 * @source JCGM 101:2008, 6.4.5
 */
export function triangularAbout<V extends AnyQuantity | number>(centre: V, halfWidth: V): Distribution<V> {
  return distribution("triangularAbout", "triangular", centre, halfWidth);
}

/**
 * An arcsine (U-shaped) distribution: something swings to and fro between two limits, such as the temperature
 * of a heated shop.
 *
 * @param centre     the middle
 * @param halfWidth  amplitude of the swing, of the same kind, ≥ 0
 * @returns the distribution
 * @throws TypeError   the two are of different kinds
 * @throws RangeError  the half width is negative
 * @example Number(asMeasured(arcsineAbout(0, 1)).standardUncertainty) // 0.70711
 * @source JCGM 101:2008, 6.4.6
 */
export function arcsineAbout<V extends AnyQuantity | number>(centre: V, halfWidth: V): Distribution<V> {
  return distribution("arcsineAbout", "arcsine", centre, halfWidth);
}

/**
 * A distribution as a measured value, for linear propagation: its centre and standard deviation.
 *
 * u = w for a normal, w/√3 rectangular, √(w²/3 + d²/9) with limits within ±d, w/√6 triangular, w/√2 arcsine. Of
 * a t it is the scale with its degrees of freedom, as the GUM has it, not the larger standard deviation.
 *
 * @param of  the distribution
 * @returns centre, standard uncertainty and, of a t, degrees of freedom (else Infinity)
 * @example asMeasured(arcsineAbout(deltaC(0), deltaC(0.5))).standardUncertainty.in("deltaC") // 0.3536
 * @source JCGM 100:2008 (GUM), 4.3.7 and 4.3.9; JCGM 101:2008, 6.4
 */
export function asMeasured<V extends AnyQuantity | number>(of: Distribution<V>): Measured<V> {
  const w = siOf(of.width);
  const within = of.limitsWithin === undefined ? 0 : siOf(of.limitsWithin);
  const u: Readonly<Record<DistributionShape, number>> = {
    normal: w,
    "student t": w,
    rectangular: w / Math.sqrt(3),
    "inexact rectangular": Math.sqrt((w * w) / 3 + (within * within) / 9),
    triangular: w / Math.sqrt(6),
    arcsine: w / Math.SQRT2,
  };
  return measured(of.centre, alike(of.width, u[of.shape]) as V, of.degreesOfFreedom);
}

/**
 * The distribution that stands for a measured value: a t when its degrees of freedom are finite, else normal.
 *
 * @example distributionOf(measured(inch(1), inch(0.001), 9)).shape // "student t"
 * @source JCGM 101:2008, 6.4.7.1 and 6.4.9.2
 */
export function distributionOf<V extends AnyQuantity | number>(of: Measured<V>): Distribution<V> {
  const { value, standardUncertainty, degreesOfFreedom } = of;
  return degreesOfFreedom === Number.POSITIVE_INFINITY
    ? normalAbout(value, standardUncertainty)
    : studentTAbout(value, standardUncertainty, degreesOfFreedom);
}

/** Whether a value is a distribution. */
export function isDistribution(value: unknown): value is Distribution<Plain> {
  return typeof value === "object" && value !== null && (value as { kind?: unknown }).kind === "distribution";
}

function distribution<V extends AnyQuantity | number>(
  where: string,
  shape: DistributionShape,
  centre: V,
  width: V,
  more: Partial<Distribution<V>> = {},
): Distribution<V> {
  if (dimensionOf(centre) !== dimensionOf(width))
    throw new TypeError(`${where}: centre and width must be of one kind, got ${centre} and ${width}`);
  if (!Number.isFinite(siOf(centre)))
    throw new RangeError(`${where}: centre must be a finite number, got ${centre}`);
  if (!(siOf(width) >= 0 && siOf(width) < Number.POSITIVE_INFINITY))
    throw new RangeError(`${where}: width must be 0 or more, got ${width}`);
  return Object.freeze({ kind: "distribution", shape, centre, width, ...more });
}
