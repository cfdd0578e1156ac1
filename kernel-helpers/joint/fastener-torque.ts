import type { NutFactor, StandardThread } from "../handbook/index.js";
import { type Force, type Length, quantityFromSi, type Torque } from "../quantity/index.js";

/**
 * Torque that tightens a nut to a preload, by the nut factor.
 *
 * T = K F d
 *
 * Valid when: K is known for this thread and seat. Bolts tightened alike differ by 30 % in preload; take a range.
 *
 * @param preload  tension F in the stud [N], ≥ 0
 * @param diameter  nominal diameter d of the thread [m], > 0
 * @param factor  nut factor K [-], > 0
 * @returns torque T [N·m]
 * @throws RangeError  a value is outside its bound
 * @example nutTorque(lbf(25000), inch(0.75), 0.2).in("lbfInch") // 3750
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th ed., eq. 8-27 and example 8-3, p. 439
 */
export function nutTorque(preload: Force, diameter: Length, factor: number): Torque {
  if (!(preload.si >= 0)) throw new RangeError(`nutTorque: preload must be 0 or more, got ${preload}`);
  if (!(diameter.si > 0)) throw new RangeError(`nutTorque: diameter must be more than 0, got ${diameter}`);
  if (!(factor > 0)) throw new RangeError(`nutTorque: nut factor must be more than 0, got ${factor}`);
  return torque(factor * preload.si * diameter.si, preload);
}

/** A nut on its thread and seat. */
export interface NutFriction {
  readonly thread: StandardThread;
  /** Tension in the stud [N]. */
  readonly preload: Force;
  /** In the thread [-]. */
  readonly friction: number;
  /** Under the nut [-]; as in the thread without it. */
  readonly seatFriction?: number;
  /** Mean diameter of the ring the nut bears on; 1.25 of the thread's without it, as of a hexagon. */
  readonly seatDiameter?: Length;
}

/**
 * Torque on a nut from friction in its thread and under it, to tighten or to loosen it.
 *
 * T = F [ ½ d₂ (f / cos α ± tan λ) / (1 ∓ f tan λ / cos α) + ½ f_c d_c ],  upper signs tighten
 *
 * with tan λ = p/(π d₂), α half the flank angle. To loosen takes less than to tighten by twice the share that the lead
 * p/2π has, and less than nothing where the thread does not hold by itself.
 *
 * Valid when: single-start thread; friction at rest; nut and seat flat and square.
 *
 * @param nut.preload  tension F [N], ≥ 0
 * @param nut.friction  f in the thread [-], > 0; nut.seatFriction  f_c under the nut [-], > 0
 * @param nut.seatDiameter  mean diameter d_c of the seat [m]
 * @param way  "tighten" or "loosen"
 * @returns the torque in all, and the share of it that goes through the thread into the stud [N·m]
 * @throws RangeError  a value is outside its bound
 * @example screwTorque({ thread: threadNamed("3/4-16 UNF"), preload: lbf(25000), friction: 0.15 }, "tighten").whole.in("lbfInch") // 3551.1
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th ed., eq. 8-5, 8-6 and 8-26 (from memory); seat 1.25 d
 * from the same, eq. 8-26
 */
export function screwTorque(
  nut: NutFriction,
  way: "tighten" | "loosen",
): { readonly whole: Torque; readonly inStud: Torque } {
  const { thread, preload, friction, seatFriction = friction } = nut;
  const seatDiameter = nut.seatDiameter ?? thread.majorDiameter.times(1.25);
  if (!(preload.si >= 0)) throw new RangeError(`screwTorque: preload must be 0 or more, got ${preload}`);
  for (const [name, value] of [
    ["friction", friction],
    ["seat friction", seatFriction],
  ] as const)
    if (!(value > 0 && value < 1))
      throw new RangeError(`screwTorque: ${name} must lie between 0 and 1, got ${value}`);
  if (!(seatDiameter > thread.rootDiameter))
    throw new RangeError(`screwTorque: the seat must be wider than the stud's root, got ${seatDiameter}`);
  const d2 = thread.pitchDiameter.si;
  const lead = thread.pitch.si / (Math.PI * d2);
  const drag = friction / Math.cos((thread.flankAngle / 2) * (Math.PI / 180));
  const sign = way === "tighten" ? 1 : -1;
  const inStud = ((preload.si * d2) / 2) * ((drag + sign * lead) / (1 - sign * drag * lead));
  const underNut = (preload.si * seatFriction * seatDiameter.si) / 2;
  return Object.freeze({ whole: torque(inStud + underNut, preload), inStud: torque(inStud, preload) });
}

/** The torque range of a nut factor for a range of preload: least of both to most of both. */
export function torqueRange(
  preload: { readonly low: Force; readonly high: Force },
  diameter: Length,
  factor: NutFactor,
): { readonly low: Torque; readonly high: Torque } {
  return Object.freeze({
    low: nutTorque(preload.low, diameter, factor.low),
    high: nutTorque(preload.high, diameter, factor.high),
  });
}

/** Shown in the system of the preload it follows from. */
function torque(si: number, { writtenIn }: Force): Torque {
  const inch = writtenIn === "lbf" || writtenIn === "shortTonForce" || writtenIn === "longTonForce";
  return quantityFromSi("torque or energy", si, inch ? "lbfFoot" : "newtonMetre");
}
