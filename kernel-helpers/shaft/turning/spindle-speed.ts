import { type Length, quantityFromSi, type RotationalSpeed, type Speed } from "../../quantity/index.js";

/**
 * The speed a spindle turns at for a cutting speed at the surface.
 *
 * n = v/(π d)
 *
 * @param speed  at the surface, > 0 [m/s]
 * @param diameter  > 0 [m]
 * @returns the speed [rad/s], written in rpm
 * @throws RangeError  speed or diameter is not above 0
 * @example spindleSpeed(quantity(100, "footPerMinute"), inch(2)).in("rpm").toFixed(1) // "191.0"
 * @source geometry
 */
export function spindleSpeed(speed: Speed, diameter: Length): RotationalSpeed {
  if (!(speed.si > 0 && diameter.si > 0))
    throw new RangeError(`spindleSpeed: speed and diameter must be above 0, got ${speed} and ${diameter}`);
  return quantityFromSi("rotational speed", (2 * speed.si) / diameter.si, "rpm");
}

/** The fastest of a lathe's speeds that is not above the one wanted. */
export function speedNotAbove(
  speeds: readonly RotationalSpeed[],
  wanted: RotationalSpeed,
): RotationalSpeed | undefined {
  const slow = speeds.filter((speed) => speed.si <= wanted.si * (1 + 1e-9));
  return slow.length === 0 ? undefined : slow.reduce((a, b) => (b.si > a.si ? b : a));
}
