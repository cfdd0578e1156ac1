import {
  type Angle,
  type Force,
  isQuantity,
  type Length,
  type Mass,
  type Measured,
  quantityFromSi,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";

const gravity = 9.80665;

/** How a body hangs from one point. */
export interface Hang {
  readonly kind: "hang";
  /** How far it leans until its centre of mass is under the point. */
  readonly lean: Angle;
  /** With the point below the centre of mass it turns over. */
  readonly turnsOver: boolean;
}

/**
 * How far a body leans when it is lifted at a point that is not over its centre of mass.
 *
 * tan φ = e/h
 *
 * Valid when: the body hangs freely from one point that it can turn about.
 *
 * @param off  level distance of the point from the centre of mass, ≥ 0 [m]
 * @param above  how high the point lies over the centre of mass; negative below it [m]
 * @returns lean [rad], and whether the body turns over
 * @throws RangeError  a distance below 0, or the point is the centre of mass
 * @example hangOf(inch(1), inch(10)).lean.in("degree") // 5.7106
 * @source statics
 */
export function hangOf(off: Length, above: Length): Hang {
  if (!isQuantity(off, "length") || !(off.si >= 0))
    throw new RangeError(`hangOf: off must be a length of 0 or more, got ${off}`);
  if (!isQuantity(above, "length") || (off.si === 0 && above.si === 0))
    throw new RangeError(
      `hangOf: the point must lie apart from the centre of mass: there the body stays as it is turned, got ${above} above`,
    );
  return Object.freeze({
    kind: "hang",
    lean: quantityFromSi("angle", Math.atan2(off.si, above.si), "degree"),
    turnsOver: above.si < 0,
  });
}

/** What tips a standing body. */
export interface Tipping {
  readonly kind: "tipping";
  /** How far its base may be lifted on one side before it falls. */
  readonly lean: Angle;
  /** The least level push that tips it, where it does not slide first; 95 %, one-sided, by the uncertainty of the mass. */
  readonly push: Force;
}

/**
 * How far a standing body may lean, and what push tips it.
 *
 * tan φ = b/h, F = m·g·b/z, with the least that the mass may be: m − 1.645·u
 *
 * Valid when: the base is stiff and level, and the body does not slide first.
 *
 * @param body.mass  exact, or with its standard uncertainty, > 0 [kg]
 * @param body.edge  level distance from the centre of mass to the nearest edge of the base, > 0 [m]
 * @param body.height  of the centre of mass over the base, > 0 [m]
 * @param body.pushedAt  height of the push over the base, > 0 [m]
 * @returns lean [rad] and push [N]
 * @throws RangeError  a value is not above 0
 * @example tippingOf({ mass: pound(180), edge: inch(3), height: inch(15), pushedAt: inch(30) }).push.in("lbf") // 18
 * @source statics
 */
export function tippingOf(body: {
  readonly mass: Mass | Measured<Mass>;
  readonly edge: Length;
  readonly height: Length;
  readonly pushedAt: Length;
}): Tipping {
  const { edge, height, pushedAt } = body;
  const mass = leastOf(body.mass);
  for (const [name, value] of Object.entries({ mass, edge, height, pushedAt }))
    if (!isQuantity(value) || !(value.si > 0))
      throw new RangeError(`tippingOf: ${name} must be above 0, with its unit, got ${value}`);
  return Object.freeze({
    kind: "tipping",
    lean: quantityFromSi("angle", Math.atan2(edge.si, height.si), "degree"),
    push: quantityFromSi(
      "force",
      (mass.si * gravity * edge.si) / pushedAt.si,
      mass.writtenIn === "pound" ? "lbf" : "newton",
    ),
  });
}

function leastOf(mass: Mass | Measured<Mass>): Mass {
  if (isQuantity(mass)) return mass;
  const { value, standardUncertainty, degreesOfFreedom } = mass as Measured<Mass>;
  const least = value.si - coverageFactor(0.9, degreesOfFreedom) * standardUncertainty.si;
  return quantityFromSi("mass", least, value.writtenIn);
}
