import { type Angle, type Measured, measured, quantityFromSi } from "../quantity/index.js";

/**
 * The half angle of a taper: between its surface and its axis. The included angle, between opposite surfaces, is
 * twice that.
 *
 * α = atan(C/2), u(α) = u(C)/2 / (1 + C²/4)
 *
 * Valid when: C is on diameter. A taper on radius would give about twice the angle.
 *
 * @param taper  diameter change per length C with its uncertainty [-]
 * @returns half angle [rad], shown in degrees, with the sign of the taper
 * @example halfAngleOf(measured(1 / 12, 0)).value.in("degree") // 2.385944030388813
 * @source geometry: the radius changes by C/2 for each length along the axis
 */
export function halfAngleOf(taper: Measured<number>): Measured<Angle> {
  const angleOf = (si: number): Angle => quantityFromSi("angle", si, "degree");
  return measured(
    angleOf(Math.atan(taper.value / 2)),
    angleOf(taper.standardUncertainty / 2 / (1 + taper.value ** 2 / 4)),
    taper.degreesOfFreedom,
  );
}
