import { isQuantity, type Length, type Pressure } from "../../quantity/index.js";

/**
 * How much of an elastic stress concentration a steel feels in fatigue.
 *
 * q = 1/(1 + √a/√r); bending √a = 0.246 − 3.08e-3 S + 1.51e-5 S² − 2.67e-8 S³, torsion √a = 0.190 − 2.51e-3 S +
 * 1.35e-5 S² − 2.67e-8 S³ [√in], S tensile strength [ksi]; K_f = 1 + q (K_t − 1)
 *
 * Valid when: steel; 50 to 220 ksi. A softer one is taken as of 50 ksi, which is the safe side.
 *
 * @param radius   of the notch [m], > 0
 * @param tensile  tensile strength [Pa], up to 220 ksi
 * @returns q in bending and in torsion, 0 to 1 [-]
 * @throws RangeError  a value is not above 0, or the steel stronger than the curves reach
 * @example notchSensitivity(inch(0.11), ksi(105)).bending // 0.851
 * @source H. Neuber's formula, constants of Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equations
 * 6-34 and 6-35 (from memory; bending read in a public copy)
 */
export function notchSensitivity(
  radius: Length,
  tensile: Pressure,
): { readonly bending: number; readonly torsion: number } {
  if (!isQuantity(radius, "length") || !(radius.si > 0))
    throw new RangeError(`notchSensitivity: radius must be a length above 0, got ${String(radius)}`);
  if (!isQuantity(tensile, "pressure") || !(tensile.si > 0) || tensile.in("ksi") > 220)
    throw new RangeError(
      `notchSensitivity: tensile must be a strength above 0 and up to 220 ksi, got ${String(tensile)}`,
    );
  const s = Math.max(50, tensile.in("ksi"));
  const root = Math.sqrt(radius.in("inch"));
  const q = (a0: number, a1: number, a2: number): number =>
    1 / (1 + (a0 - a1 * s + a2 * s ** 2 - 2.67e-8 * s ** 3) / root);
  return Object.freeze({ bending: q(0.246, 3.08e-3, 1.51e-5), torsion: q(0.19, 2.51e-3, 1.35e-5) });
}
