import { type Angle, type Density, type Length, type Mass, quantityFromSi } from "../../quantity/index.js";
import { direction, polar } from "./complex.js";
import { drilledDepth } from "./drilled-depth.js";

/** The drill, and what it goes into. */
export interface DrilledHolesOptions {
  /** DIAMETER of the drill. */
  readonly drill: Length;
  readonly density: Density;
  /** No hole may go deeper, its point not counted: what must stay of the rim decides. */
  readonly deepest: Length;
  /** Angle of the drill's point; default 118°. */
  readonly point?: number;
}

/** Holes that take as much away as a correcting mass on the other side would add. */
export interface DrilledHoles {
  readonly kind: "drilled holes";
  /** Half a turn from where the mass would be added: the heavy side. */
  readonly angle: Angle;
  readonly count: number;
  readonly drill: Length;
  /** Of each hole, without its point. */
  readonly depth: Length;
  readonly deepest: Length;
  /** Taken out by each. */
  readonly each: Mass;
  readonly mass: Mass;
}

/** More than this is no drilling job. */
const most = 100;

/**
 * Holes to drill on the heavy side instead of a mass added opposite: the fewest that stay above a depth, all alike.
 *
 * n = the least count for which `drilledDepth(m/n)` ≤ deepest
 *
 * Valid when: all holes lie in one row along the axis, at the angle given and with their middle at the radius for which
 * the mass was reckoned. Spread round the rim by ± α they do a little less, sin(α)/α of it.
 *
 * @param mass  that would be added, > 0 [kg]
 * @param angle  where it would be added [rad]
 * @param options.drill  diameter, > 0 [m]
 * @param options.density  of the rim, > 0 [kg/m³]
 * @param options.deepest  > 0 [m]
 * @param options.point  of the drill [deg]
 * @returns count and depth [m], at the heavy side [rad]
 * @throws RangeError  a value not above 0, a drill whose point alone takes more than a hole's share, or more than 100 holes
 * @example
 * const iron = quantity(0.26, "poundPerCubicInch");
 * drilledHoles(ounce(1), degree(280), { drill: inch(0.5), density: iron, deepest: inch(0.5) }).count // 3
 * @source volume of a cylinder and a cone
 */
export function drilledHoles(mass: Mass, angle: Angle, options: DrilledHolesOptions): DrilledHoles {
  const { drill, density, deepest, point } = options;
  if (!(deepest.si > 0)) throw new RangeError(`drilledHoles: deepest must be above 0, got ${deepest}`);
  for (let count = 1; count <= most; count++) {
    const each = mass.over(count);
    const depth = drilledDepth(each, drill, density, point);
    if (depth.si > deepest.si) continue;
    return Object.freeze<DrilledHoles>({
      kind: "drilled holes",
      angle: quantityFromSi("angle", direction(polar(1, angle.si + Math.PI)), "degree"),
      count,
      drill,
      depth,
      deepest,
      each,
      mass,
    });
  }
  throw new RangeError(
    `drilledHoles: ${mass} takes more than ${most} holes of ${drill} down to ${deepest}: a larger drill, or add the mass opposite`,
  );
}
