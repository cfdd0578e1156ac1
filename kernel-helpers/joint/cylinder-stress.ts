import { type Length, type Pressure, quantityFromSi } from "../quantity/index.js";
import { requireQuantity, requireSmaller } from "./fit-check.js";

/** A thick cylinder under pressure, measured by its diameters. */
export interface CylinderLoad {
  /** Diameter of the bore; 0 for a solid shaft. */
  readonly bore: Length;
  readonly outside: Length;
  readonly pressureInside: Pressure;
  readonly pressureOutside: Pressure;
}

/** Stresses at one place of the wall; tension is positive. */
export interface CylinderStress {
  readonly hoop: Pressure;
  readonly radial: Pressure;
}

/**
 * Hoop and radial stress in a thick cylinder (Lamé).
 *
 * σ = A ∓ B/r²;  A = (p_i r_i² − p_o r_o²)/(r_o² − r_i²),  B = (p_o − p_i) r_i² r_o²/(r_o² − r_i²);
 * hoop A − B/r², radial A + B/r². DIAMETERS are given and halved here.
 *
 * Valid when: the wall is elastic, of one material, far from the ends. Tension is positive.
 *
 * @param cylinder  diameters [m] and pressures [Pa]
 * @param at        diameter at which the stress is wanted, from the bore to the outside [m]
 * @returns hoop and radial stress [Pa]
 * @throws RangeError  the bore is not smaller than the outside, a pressure is negative, or the place is not in the wall
 * @example
 * const ring = { bore: mm(400), outside: mm(500), pressureInside: megapascal(12.3), pressureOutside: megapascal(0) };
 * cylinderStress(ring, mm(400)).hoop.in("megapascal") // 56.0
 * @source A. C. Ugural & S. K. Fenster, Advanced Strength and Applied Elasticity, 4th edition, section 8.2,
 * equations 8.8 to 8.13 (equation numbers from memory)
 */
export function cylinderStress(cylinder: CylinderLoad, at: Length): CylinderStress {
  const { bore, outside, pressureInside, pressureOutside } = cylinder;
  const where = "cylinderStress";
  requireQuantity(where, "bore", bore, "length", "0 or more");
  requireQuantity(where, "outside", outside, "length", "more than 0");
  requireSmaller(where, ["bore", bore], ["outside", outside]);
  requireQuantity(where, "pressureInside", pressureInside, "pressure", "0 or more");
  requireQuantity(where, "pressureOutside", pressureOutside, "pressure", "0 or more");
  requireQuantity(where, "at", at, "length", "0 or more");
  // A part in 10¹² is left for the rounding of converted units.
  if (at.si < bore.si * (1 - 1e-12) || at.si > outside.si * (1 + 1e-12))
    throw new RangeError(`${where}: at must lie in the wall, from ${bore} to ${outside}, got ${at}`);
  const [ri, ro, r] = [bore.si / 2, outside.si / 2, at.si / 2];
  const [pi, po] = [pressureInside.si, pressureOutside.si];
  const wall = ro ** 2 - ri ** 2;
  const a = (pi * ri ** 2 - po * ro ** 2) / wall;
  // A solid shaft has no B: the stress is the same everywhere.
  const b = ri === 0 ? 0 : ((po - pi) * ri ** 2 * ro ** 2) / (wall * r ** 2);
  const stress = (si: number): Pressure =>
    quantityFromSi("pressure", si, pressureInside.writtenIn ?? pressureOutside.writtenIn);
  return Object.freeze({ hoop: stress(a - b), radial: stress(a + b) });
}
