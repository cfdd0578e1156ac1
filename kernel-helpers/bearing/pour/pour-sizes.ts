import type { PourOptions } from "./pour-types.js";

/** Iron and steel, 20 to 100 °C; Machinery's Handbook (from memory). */
export const ironExpansion = 11.5e-6;
export const ironSpecificHeat = 460;
export const steelDensity = 7850;

/** Diameters of a pour [m]. */
export interface PourSizes {
  readonly finished: number;
  /** Of the mandrel, at the temperature of the shop. */
  readonly mandrel: number;
  /** Of the mandrel, as hot as the metal finds it. */
  readonly mandrelHot: number;
  /** Bore found when cold. */
  readonly leastBore: number;
  readonly largestBore: number;
}

/**
 * Diameters of a pour: the mandrel turned so that even the largest bore the casting may come to leaves the allowance.
 *
 * Held by the shell, the lining follows it (αᵢ·ΔTᵢ) and its wall alone takes all its shrinkage, by volume
 * 3α·ΔT − 2αᵢ·ΔTᵢ: the bore comes out largest. Free of the shell, it shrinks as a ring, α·ΔT: least. ΔT counts from the
 * solidus to the shop.
 *
 * Valid when: thin wall, shell much stiffer than the lining; the riser feeds what shrinks while freezing.
 *
 * @param options  of the pour [m], [K]
 * @returns diameters [m]
 * @throws RangeError  as `pourPlan`
 * @source shrinkage as bounds from the two ends: elementary; no published figure known for poured boxes
 */
export function pourSizes(options: PourOptions): PourSizes {
  const { alloy, journal, clearance, allowance, shellBore, shellPreheat, mandrelPreheat, shop } = options;
  const finished = journal.value.si + clearance.si;
  const cooling = alloy.solidus.kelvin - shop.kelvin;
  const free = alloy.expansion.si * cooling;
  const shell = ironExpansion * (shellPreheat.kelvin - shop.kelvin);
  const thinning = Math.max(0, 3 * free - 2 * shell);
  /** Largest cold bore when the mandrel's hot diameter is this: R_b' = S'/2 − wall'. */
  const largest = (hot: number): number => {
    const hotShell = shellBore.si * (1 + shell);
    return shellBore.si - (hotShell - hot) * (1 - thinning);
  };
  // Linear in the hot diameter: wanted is finished − allowance.
  const wanted = finished - allowance.si;
  const hotShell = shellBore.si * (1 + shell);
  const mandrelHot = hotShell - (shellBore.si - wanted) / (1 - thinning);
  return Object.freeze({
    finished,
    mandrelHot,
    mandrel: mandrelHot / (1 + ironExpansion * (mandrelPreheat.kelvin - shop.kelvin)),
    leastBore: mandrelHot * (1 - free),
    largestBore: largest(mandrelHot),
  });
}
