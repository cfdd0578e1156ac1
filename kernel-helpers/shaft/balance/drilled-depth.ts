import { type Density, type Length, type Mass, quantityFromSi } from "../../quantity/index.js";

/**
 * How deep to drill to take a mass away; the hole's bottom is the cone of the drill point.
 *
 * m = ρ·(π/4)d²·(depth + d/(6·tan(point/2))), depth of the full diameter; d/(6 tan) is a third of the cone's height
 *
 * Valid when: the metal round the hole may be weakened so far (rims, never spokes; no hole into a cored hollow).
 *
 * @param mass  to take away, > 0 [kg]
 * @param diameter  of the drill, > 0 [m]
 * @param density  of the metal, > 0 [kg/m³]
 * @param pointDegrees  angle of the drill point, default 118 [deg]
 * @returns depth of the full diameter [m]
 * @throws RangeError  a value not above 0, a point not between 60 and 180 deg, or a drill whose point alone takes more
 * @example drilledDepth(ounce(1), inch(0.5), quantity(0.26, "poundPerCubicInch")).in("inch").toFixed(2) // "1.17"
 * @source volume of cylinder and cone
 */
export function drilledDepth(
  mass: Mass,
  diameter: Length,
  density: Density,
  pointDegrees: number = 118,
): Length {
  for (const [name, value] of [
    ["mass", mass],
    ["diameter", diameter],
    ["density", density],
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`drilledDepth: ${name} must be above 0, got ${value}`);
  if (!(pointDegrees > 60 && pointDegrees <= 180))
    throw new RangeError(`drilledDepth: point must lie between 60 and 180 deg, got ${pointDegrees}`);
  const area = (Math.PI / 4) * diameter.si ** 2;
  const cone = diameter.si / (6 * Math.tan((pointDegrees * Math.PI) / 360));
  const depth = mass.si / (density.si * area) - cone;
  if (depth < 0)
    throw new RangeError(
      `drilledDepth: the point of a drill of ${diameter} alone takes more than ${mass}: use a smaller drill`,
    );
  return quantityFromSi("length", depth, diameter.writtenIn as never);
}
