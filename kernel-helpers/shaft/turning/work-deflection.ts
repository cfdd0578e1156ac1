import { type Force, type Length, type Pressure, quantityFromSi } from "../../quantity/index.js";

/** A plain bar between two centres, and the force that pushes it off the tool. */
export interface WorkBetweenCentres {
  readonly diameter: Length;
  /** From centre to centre. */
  readonly betweenCentres: Length;
  /** Young's modulus. */
  readonly modulus: Pressure;
  /** Radial force of the cut. */
  readonly force: Force;
}

/**
 * How much larger, ON DIAMETER, a journal comes out at a place, because the work springs away from the tool there.
 *
 * twice the deflection under the tool of a bar on two supports: 2·F x²(L − x)²/(3 E I L), I = π d⁴/64
 *
 * Valid when: plain bar, centres that do not give, no steady. Real centres and an old tailstock give more, most at
 * their own end.
 *
 * @param work  the bar and the force; diameter, betweenCentres [m] > 0, modulus [Pa] > 0, force [N] ≥ 0
 * @param at  distance of the tool from a centre, within the length [m]
 * @returns growth of the diameter [m]
 * @throws RangeError  a size is not above 0, the force is below 0, or the place is not between the centres
 * @example
 * const work = { diameter: inch(1), betweenCentres: inch(30), modulus: quantity(30e6, "psi"), force: lbf(10) };
 * growthBySpringing(work, inch(15)).in("thou").toFixed(3) // "7.639"
 * @source simply supported beam with one load, e.g. Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-9-6
 */
export function growthBySpringing(work: WorkBetweenCentres, at: Length): Length {
  const { force, stiffness } = checked("growthBySpringing", work);
  const [x, length] = [at.si, work.betweenCentres.si];
  if (!(x >= 0 && x <= length))
    throw new RangeError(
      `growthBySpringing: the tool must be between the centres, 0 to ${work.betweenCentres}, got ${at}`,
    );
  const growth = (2 * force * x ** 2 * (length - x) ** 2) / (3 * stiffness * length);
  return quantityFromSi("length", growth, smallUnitOf(work.diameter));
}

/**
 * The longest free length between supports, centre or steady, at which the work springs no more than allowed half-way.
 *
 * l = (24 E I ΔD / F)^(1/3), from ΔD = 2·F l³/(48 E I), ΔD on diameter
 *
 * Valid when: each free length is taken as resting freely on its supports, which is on the safe side of a bar that runs
 * on beyond a steady.
 *
 * @param work  the bar and the force > 0 [N]; its length between centres does not count
 * @param allowed  growth of the diameter, > 0 [m]
 * @returns the length [m]
 * @throws RangeError  a size, the force or what is allowed is not above 0
 * @example
 * const work = { diameter: inch(1), betweenCentres: inch(60), modulus: quantity(30e6, "psi"), force: lbf(10) };
 * longestFreeLength(work, thou(1)).in("inch").toFixed(2) // "15.23"
 * @source as `growthBySpringing`
 */
export function longestFreeLength(work: WorkBetweenCentres, allowed: Length): Length {
  const { force, stiffness } = checked("longestFreeLength", work);
  if (!(allowed.si > 0 && force > 0))
    throw new RangeError(
      `longestFreeLength: force and what is allowed must be above 0, got ${work.force} and ${allowed}`,
    );
  const length = Math.cbrt((24 * stiffness * allowed.si) / force);
  const inchShop = smallUnitOf(work.diameter) === "thou";
  return quantityFromSi("length", length, inchShop ? "inch" : "mm");
}

function checked(where: string, work: WorkBetweenCentres): { force: number; stiffness: number } {
  for (const name of ["diameter", "betweenCentres", "modulus"] as const)
    if (!(work[name].si > 0)) throw new RangeError(`${where}: ${name} must be above 0, got ${work[name]}`);
  if (!(work.force.si >= 0)) throw new RangeError(`${where}: force must be 0 or more, got ${work.force}`);
  return { force: work.force.si, stiffness: (work.modulus.si * Math.PI * work.diameter.si ** 4) / 64 };
}

function smallUnitOf({ writtenIn }: Length): "thou" | "micrometre" {
  return writtenIn === "inch" || writtenIn === "thou" || writtenIn === "foot" ? "thou" : "micrometre";
}
