import type { Angle, Length, Mass, UnitSystem } from "../../quantity/index.js";
import { add, polar } from "./complex.js";
import { type UnbalanceVector, unbalanceOf } from "./unbalance-vector.js";

/** A mass at a radius in one plane of a rotor. */
export interface PlacedMass {
  readonly mass: Mass;
  readonly radius: Length;
  readonly angle: Angle;
}

/**
 * The unbalance of several masses in one plane, taken together; what balances them lies half a turn from it.
 *
 * U = Σ m·r as vectors
 *
 * Valid when: all masses turn in one plane (no couple).
 *
 * @param masses  masses [kg] with radius [m] and angle on the rotor [rad]
 * @param units  the units the result is shown in; default inch
 * @returns mass times radius [kg·m] and its angle from 0 to below a turn [rad]
 * @throws RangeError  no mass, or a mass or radius below 0
 * @example
 * const both = [{ mass: ounce(2), radius: inch(6), angle: degree(0) }, { mass: ounce(2), radius: inch(6), angle: degree(90) }];
 * resultantUnbalance(both).angle.in("degree") // 45
 * @source T. Bevan, The Theory of Machines, 3rd edition, chapter on balancing of revolving masses (from memory)
 */
export function resultantUnbalance(
  masses: readonly PlacedMass[],
  units: UnitSystem = "inch",
): UnbalanceVector {
  if (masses.length === 0) throw new RangeError("resultantUnbalance: at least one mass is needed, got none");
  let sum = { re: 0, im: 0 };
  masses.forEach(({ mass, radius, angle }, i) => {
    if (!(mass.si >= 0 && radius.si >= 0))
      throw new RangeError(
        `resultantUnbalance: mass and radius must be 0 or more, got ${mass} at ${radius} for mass ${i + 1}`,
      );
    sum = add(sum, polar(mass.si * radius.si, angle.si));
  });
  return unbalanceOf(sum, units);
}
