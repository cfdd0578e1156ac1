import { type Force, type Length, type Pressure, quantityFromSi, type Torque } from "../quantity/index.js";

/** Shear yield over tensile yield by the energy of distortion [-]. */
const shearShare = 1 / Math.sqrt(3);

/**
 * Torque at which the root of a stud begins to give way, under the tension it carries.
 *
 * T = π d³ τ / 16,  τ = √((S² − σ²)/3),  σ = 4F/(π d²)
 *
 * At this torque the skin of the root yields; it twists off some way above (a fully yielded round bar bears 4/3 of it).
 *
 * Valid when: sound steel or wrought iron, no crack, no groove deeper than the thread. A crack or a rusted waist gives
 * way far below.
 *
 * @param stud.rootDiameter  d at the bottom of the thread [m], > 0
 * @param stud.yield  yield strength S in tension; take the least the metal may have [Pa], > 0
 * @param stud.tension  F that the stud carries at the same time [N], ≥ 0; 0 without it
 * @returns torque of first yield [N·m]
 * @throws RangeError  a value is outside its bound, or the tension alone makes the root yield
 * @example studYieldTorque({ rootDiameter: inch(1), yield: psi(30000) }).in("lbfInch") // 3400.87
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th ed., eq. 3-37 (shear of a round bar) and 5-14
 * (distortion energy) (from memory)
 */
export function studYieldTorque(stud: {
  readonly rootDiameter: Length;
  readonly yield: Pressure;
  readonly tension?: Force;
}): Torque {
  const { rootDiameter, tension } = stud;
  if (!(rootDiameter.si > 0))
    throw new RangeError(`studYieldTorque: root diameter must be more than 0, got ${rootDiameter}`);
  if (!(stud.yield.si > 0))
    throw new RangeError(`studYieldTorque: yield strength must be more than 0, got ${stud.yield}`);
  if (tension !== undefined && !(tension.si >= 0))
    throw new RangeError(`studYieldTorque: tension must be 0 or more, got ${tension}`);
  const d = rootDiameter.si;
  const sigma = (4 * (tension?.si ?? 0)) / (Math.PI * d ** 2);
  if (sigma >= stud.yield.si)
    throw new RangeError(
      `studYieldTorque: the tension must leave the root below its yield strength of ${stud.yield}, got ${tension}`,
    );
  const shear = shearShare * Math.sqrt(stud.yield.si ** 2 - sigma ** 2);
  return quantityFromSi(
    "torque or energy",
    (Math.PI * d ** 3 * shear) / 16,
    rootDiameter.writtenIn === "inch" ? "lbfFoot" : "newtonMetre",
  );
}
