import type { Angle } from "../quantity/index.js";

/**
 * What a symmetrical vee block makes of a lobe: the swing of the indicator over the swing of the radius.
 *
 * F(n) = 1 + cos(n(90° + γ/2)) / sin(γ/2), γ the included angle of the vee; F < 0: the indicator falls on a lobe
 *
 * Derived thus: the shaft rests on two faces at ±(90° + γ/2) from the indicator; as it turns its centre gives way
 * by the radii there, c = (δr₁ + δr₂)/(2 sin(γ/2)), and the indicator reads δr + c. For 90° it gives 1, 2, −0.41,
 * 2, 1, 0, 2.41, 0 for 2 to 9 lobes, the sizes of the summit setting of ISO 4292:1985 (from memory).
 *
 * Valid when: the indicator stands over the vee itself, on its bisector, pointing at the axis; lobes are small
 * against the radius. Order 1, an off-centre surface, gives 0: a vee cannot see it.
 *
 * @param order  number of lobes n, whole, ≥ 1 [-]
 * @param vee  included angle γ of the vee, between 0 and 180° [rad]
 * @returns F [-]
 * @throws RangeError  the order is no whole number of at least 1, or the angle is outside its bounds
 * @example veeFactor(3, degree(60)) // 3
 * @source derived here, see above
 */
export function veeFactor(order: number, vee: Angle): number {
  if (!Number.isInteger(order) || order < 1)
    throw new RangeError(`veeFactor: order must be a whole number of at least 1, got ${order}`);
  if (!(vee.si > 0 && vee.si < Math.PI))
    throw new RangeError(`veeFactor: vee must lie between 0 and 180°, got ${vee}`);
  const contact = Math.PI / 2 + vee.si / 2;
  return 1 + Math.cos(order * contact) / Math.sin(vee.si / 2);
}
