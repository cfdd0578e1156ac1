import { type Angle, isQuantity, type Mass, quantityFromSi } from "../quantity/index.js";

/**
 * The pull in each of several equal sling legs, as the mass that would hang straight from it.
 *
 * T = m/(n·sin θ), θ from HORIZONTAL: at 60° a leg of two pulls 0.577 of the load, at 45° 0.707, at 30° all of it
 *
 * Valid when: the legs are equally long, stand at one angle and share the load equally. Four legs on a stiff load do not:
 * then two carry it all, and n is 2.
 *
 * @param mass  of the load, > 0 [kg]
 * @param angle  of the legs from horizontal, above 0 to 90° [rad]
 * @param legs  that carry, 1 or more [-]
 * @returns pull in one leg [kg]
 * @throws RangeError  a value out of its range
 * @example slingPull(pound(1000), degree(30), 2).in("pound") // 1000
 * @source statics; riggers' tables after ASME B30.9 and OSHA 29 CFR 1910.184 print the same by the same angle (read in public
 * reprints)
 */
export function slingPull(mass: Mass, angle: Angle, legs: number): Mass {
  if (!isQuantity(mass, "mass") || !(mass.si > 0))
    throw new RangeError(`slingPull: mass must be above 0, with its unit, got ${mass}`);
  if (!isQuantity(angle, "angle") || !(angle.si > 0 && angle.si <= Math.PI / 2 + 1e-12))
    throw new RangeError(`slingPull: angle from horizontal must lie above 0° up to 90°, got ${angle}`);
  if (!(Number.isInteger(legs) && legs >= 1))
    throw new RangeError(`slingPull: legs must be a whole number from 1, got ${legs}`);
  return quantityFromSi("mass", mass.si / (legs * Math.sin(angle.si)), mass.writtenIn);
}
