import {
  type AnyQuantity,
  isQuantity,
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
} from "../../quantity/index.js";
import { coverageFactor } from "../coverage-factor.js";
import { alike, dimensionOf, siOf } from "./plain-value.js";

/**
 * A reading of an instrument whose display or vernier goes in steps (type B).
 *
 * u = step / √12: anywhere within half a step of what is shown
 *
 * @param reading  what is shown
 * @param step     smallest step shown or estimated, of the same kind, > 0
 * @returns the reading with its standard uncertainty, taken as known
 * @throws TypeError   the two are of different kinds
 * @throws RangeError  the step is not above 0
 * @example fromResolution(inch(2.4375), inch(0.0001)).standardUncertainty.in("thou") // 0.028868
 * @source JCGM 100:2008 (GUM), F.2.2.1
 */
export function fromResolution<V extends AnyQuantity | number>(reading: V, step: V): Measured<V> {
  above0("fromResolution", "step", reading, step);
  return measured(reading, alike(reading, siOf(step) / Math.sqrt(12)) as V);
}

/** How a certificate states its uncertainty. */
export type CertificateStatement =
  /** With a coverage factor, as in "k = 2". */
  | { readonly k: number; readonly degreesOfFreedom?: number }
  /** With a share covered, as in "95 %": a t distribution where degrees of freedom are given, else normal. */
  | { readonly coverage: number; readonly degreesOfFreedom?: number };

/**
 * A value from a calibration certificate (type B).
 *
 * u = U / k; for a share covered, k is its two-sided factor
 *
 * @param value      what the certificate states
 * @param expanded   its expanded uncertainty U, of the same kind, > 0
 * @param statement  `{ k: 2 }`, or `{ coverage: 0.95 }`; degrees of freedom where stated, default Infinity
 * @returns the value with its standard uncertainty
 * @throws TypeError   value and uncertainty are of different kinds
 * @throws RangeError  the uncertainty or k is not above 0, or the coverage not between 0 and 1
 * @example fromCertificate(mm(50.000623), micrometre(0.075), { k: 3 }).standardUncertainty.in("micrometre") // 0.025
 * @source JCGM 100:2008 (GUM), 4.3.3 and 4.3.4; the example is that of H.1.3.1
 */
export function fromCertificate<V extends AnyQuantity | number>(
  value: V,
  expanded: V,
  statement: CertificateStatement,
): Measured<V> {
  above0("fromCertificate", "expanded uncertainty", value, expanded);
  const { degreesOfFreedom = Number.POSITIVE_INFINITY } = statement;
  const k = "k" in statement ? statement.k : coverageFactor(statement.coverage, degreesOfFreedom);
  if (!(k > 0 && k < Number.POSITIVE_INFINITY))
    throw new RangeError(`fromCertificate: k must be more than 0, got ${k}`);
  return measured(value, alike(value, siOf(expanded) / k) as V, degreesOfFreedom);
}

/**
 * A value of which only limits are known (type B, rectangular).
 *
 * u = a/√3; ν = ½ (Δu/u)⁻² when the limits are known to within the share Δu/u
 *
 * @param value      the middle of the limits
 * @param halfWidth  half the distance between them, a, of the same kind, > 0
 * @param doubt      how far the limits may be off as a share of the half width, from 0 (default, exact) to 1 [-]
 * @returns the value with its standard uncertainty and degrees of freedom
 * @throws TypeError   value and half width are of different kinds
 * @throws RangeError  the half width is not above 0, or the doubt is not from 0 to 1
 * @example fromLimits(perC(0), perC(1e-6), 0.1).degreesOfFreedom // 50
 * @source JCGM 100:2008 (GUM), 4.3.7 and G.4.2, equation G.3; the example is that of H.1.6
 */
export function fromLimits<V extends AnyQuantity | number>(
  value: V,
  halfWidth: V,
  doubt: number = 0,
): Measured<V> {
  above0("fromLimits", "half width", value, halfWidth);
  if (!(doubt >= 0 && doubt <= 1))
    throw new RangeError(`fromLimits: doubt must be from 0 to 1, got ${doubt}`);
  // Rounded to 12 digits, so that a doubt of 0.1 gives 50 and not 49.999999999999986.
  const dof = doubt === 0 ? Number.POSITIVE_INFINITY : Number((0.5 / doubt ** 2).toPrecision(12));
  return measured(value, alike(value, siOf(halfWidth) / Math.sqrt(3)) as V, dof);
}

/**
 * The temperature of a shop that swings about its mean (type B, arcsine).
 *
 * u = amplitude / √2, about a mean swing of 0
 *
 * @param amplitude  from the mean to the hottest or coldest, > 0
 * @returns a temperature difference from the mean with its standard uncertainty
 * @throws TypeError   it is no temperature difference
 * @throws RangeError  it is not above 0
 * @example fromTemperatureSwing(deltaC(0.5)).standardUncertainty.in("deltaC") // 0.3536
 * @source JCGM 100:2008 (GUM), H.1.3.4 (the example)
 */
export function fromTemperatureSwing(
  amplitude: Quantity<"temperature difference">,
): Measured<Quantity<"temperature difference">> {
  if (!isQuantity(amplitude, "temperature difference"))
    throw new TypeError(
      `fromTemperatureSwing: amplitude must be a temperature difference (deltaC, deltaF), got ${String(amplitude)}`,
    );
  const zero = quantityFromSi("temperature difference", 0, amplitude.writtenIn);
  above0("fromTemperatureSwing", "amplitude", zero, amplitude);
  return measured(
    zero,
    quantityFromSi("temperature difference", amplitude.si / Math.SQRT2, amplitude.writtenIn),
  );
}

function above0(
  where: string,
  name: string,
  value: AnyQuantity | number,
  width: AnyQuantity | number | undefined,
): void {
  if (width === undefined || dimensionOf(width) !== dimensionOf(value))
    throw new TypeError(`${where}: ${name} must be of the kind of ${value}, got ${width}`);
  if (!(siOf(width) > 0 && siOf(width) < Number.POSITIVE_INFINITY))
    throw new RangeError(`${where}: ${name} must be more than 0, got ${width}`);
}
