/** The fatigue criteria by the names they have in the books. */
export type FatigueCriterion = "Goodman" | "Gerber" | "ASME elliptic" | "Soderberg";

/** A stress that swings about a mean, and what the steel bears. Any one unit of stress. */
export interface SwingingStress {
  /** Half of the swing, von Mises, with its stress concentration. */
  readonly alternating: number;
  /** Mean, von Mises, with its stress concentration. */
  readonly mean: number;
  readonly endurance: number;
  readonly tensile: number;
  readonly yield: number;
}

/**
 * By how much a swinging stress may grow, alternating and mean part together, before fatigue sets in.
 *
 * Goodman: 1/n = σ_a/S_e + σ_m/S_ut · Soderberg: 1/n = σ_a/S_e + σ_m/S_y · Gerber: nσ_a/S_e + (nσ_m/S_ut)² = 1 ·
 * ASME elliptic: (nσ_a/S_e)² + (nσ_m/S_y)² = 1
 *
 * Valid when: long life is wanted and the mean stress pulls. Gerber and the ellipse run through the middle of test
 * results; Goodman lies below most of them; Soderberg never lets it yield.
 *
 * @param criterion  by name
 * @param stress     alternating and mean stress ≥ 0, not both 0; endurance limit, tensile and yield strength > 0
 * @returns the factor n [-]
 * @throws RangeError  no such criterion, or nothing is loaded
 * @example
 * const stress = { alternating: 15235, mean: 9988, endurance: 29300, tensile: 105000, yield: 82000 };
 * fatigueFactorOfSafety("Goodman", stress) // 1.626
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equations 6-45 to 6-48 (from memory; example 7-1
 * read)
 */
export function fatigueFactorOfSafety(criterion: FatigueCriterion, stress: SwingingStress): number {
  const { alternating, mean, endurance, tensile, yield: gives } = stress;
  if (alternating === 0 && mean === 0)
    throw new RangeError("fatigueFactorOfSafety: alternating or mean stress must be more than 0, got both 0");
  const a = alternating / endurance;
  switch (criterion) {
    case "Goodman":
      return 1 / (a + mean / tensile);
    case "Soderberg":
      return 1 / (a + mean / gives);
    case "ASME elliptic":
      return 1 / Math.hypot(a, mean / gives);
    case "Gerber": {
      // The positive root, in the form that stays exact when the mean stress vanishes.
      const m = mean / tensile;
      return 2 / (a + Math.sqrt(a ** 2 + 4 * m ** 2));
    }
    default:
      throw new RangeError(
        `fatigueFactorOfSafety: criterion must be "Goodman", "Gerber", "ASME elliptic" or "Soderberg", got ${JSON.stringify(criterion)}`,
      );
  }
}
