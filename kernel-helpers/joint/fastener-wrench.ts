import { type Angle, type Force, type Length, quantityFromSi, type Torque } from "../quantity/index.js";

/**
 * The pull at the end of a wrench that gives a torque.
 *
 * F = T / (L sin β), β between pull and wrench
 *
 * Valid when: L is from the nut's centre to the middle of the hand, extension counted in.
 *
 * @param torque  T on the nut [N·m], ≥ 0
 * @param length  L of wrench and extension [m], > 0
 * @param angle  β between the pull and the wrench [rad], above 0 to below 180°; 90° without it
 * @returns pull F [N]
 * @throws RangeError  a value is outside its bound
 * @example wrenchPull(lbfInch(1500), inch(30)).in("lbf") // 50
 * @source statics of the lever
 */
export function wrenchPull(torque: Torque, length: Length, angle?: Angle): Force {
  if (!(torque.si >= 0)) throw new RangeError(`wrenchPull: torque must be 0 or more, got ${torque}`);
  return quantityFromSi("force", torque.si / arm("wrenchPull", length, angle), forceUnit(length));
}

/**
 * The torque that a pull at the end of a wrench gives.
 *
 * T = F L sin β, as `wrenchPull`
 *
 * @param pull  F [N], ≥ 0
 * @param length  L of wrench and extension [m], > 0
 * @param angle  β between the pull and the wrench [rad]; 90° without it
 * @returns torque T [N·m]
 * @throws RangeError  a value is outside its bound
 * @example wrenchTorque(lbf(50), inch(30)).in("lbfFoot") // 125
 * @source statics of the lever
 */
export function wrenchTorque(pull: Force, length: Length, angle?: Angle): Torque {
  if (!(pull.si >= 0)) throw new RangeError(`wrenchTorque: pull must be 0 or more, got ${pull}`);
  const inch = forceUnit(length) === "lbf";
  return quantityFromSi(
    "torque or energy",
    pull.si * arm("wrenchTorque", length, angle),
    inch ? "lbfFoot" : "newtonMetre",
  );
}

function arm(where: string, length: Length, angle: Angle | undefined): number {
  if (!(length.si > 0)) throw new RangeError(`${where}: length must be more than 0, got ${length}`);
  if (length.si > 5)
    throw new RangeError(`${where}: length must be that of a wrench, not above 5 m (200 in), got ${length}`);
  const sine = angle === undefined ? 1 : Math.sin(angle.si);
  if (!(sine > 0 && (angle?.si ?? 1) < Math.PI))
    throw new RangeError(`${where}: angle must lie between 0° and 180°, got ${angle}`);
  return length.si * sine;
}

function forceUnit({ writtenIn }: Length): "lbf" | "newton" {
  return writtenIn === "inch" || writtenIn === "foot" || writtenIn === "thou" ? "lbf" : "newton";
}
