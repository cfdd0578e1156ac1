import { type Pressure, quantityFromSi } from "../../quantity/index.js";
import { enduranceLimit } from "./endurance-limit.js";
import { type FatigueCriterion, fatigueFactorOfSafety } from "./fatigue-criteria.js";
import { fatigueNumbers } from "./fatigue-factors.js";
import type { ShaftDuty, ShaftPlace } from "./safety-types.js";
import { sectionLeft } from "./section-left.js";

/** A place as plain SI numbers: what a solver or a simulation evaluates again and again. */
export interface SafetyNumbers {
  /** [m] */
  readonly diameter: number;
  readonly bore: number;
  /** [N·m] */
  readonly moment: number;
  readonly steadyMoment: number;
  readonly torque: number;
  readonly torqueSwing: number;
  /** [Pa] */
  readonly tensile: number;
  readonly yield: number;
  /** By how much the fatigue stress concentration may be off, 1 for not at all [-]. */
  readonly notch: number;
  /** By how much the endurance limit may be off, 1 for not at all [-]. */
  readonly endurance: number;
}

/** Stresses [Pa] and factors of safety [-] of a place. */
export interface SafetyOfNumbers {
  readonly alternating: number;
  readonly mean: number;
  readonly largest: number;
  readonly fatigue: number;
  readonly yielding: number;
}

/** What hangs on diameter [m] and tensile strength [Pa] alone: fatigue factors [-] and endurance limit [Pa]. */
export interface NotchNumbers {
  readonly diameter: number;
  readonly tensile: number;
  readonly bending: number;
  readonly torsion: number;
  readonly endurance: number;
}

/** Fatigue factors and endurance limit of a place, as plain numbers. */
export function notchNumbers(
  feature: ShaftPlace["feature"],
  diameter: number,
  tensile: number,
  duty: Pick<ShaftDuty, "temperature" | "reliability" | "surface">,
): NotchNumbers {
  const strength: Pressure = quantityFromSi("pressure", tensile);
  const size = quantityFromSi("length", diameter);
  const { bending, torsion } = fatigueNumbers(feature, size, strength);
  const endurance = enduranceLimit(strength, { ...duty, diameter: size }).value.si;
  return { diameter, tensile, bending, torsion, endurance };
}

/**
 * Stresses and factors of safety of a round section in bending and torsion, from plain numbers.
 *
 * σ_a = √((K_f 32 M_a d/π(d⁴ − b⁴))² + 3 (K_fs 16 T_a d/π(d⁴ − b⁴))²), σ_m likewise with M_m and T_m; n of fatigue by
 * the criterion. Largest: of the sums, without K, over the share of the section that the feature leaves; n of yielding =
 * S_y/σ_max. A ductile steel evens out a peak before the section yields, so that K is no matter of yielding.
 *
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equations 7-3 to 7-6, 7-15 and 7-16 (which keeps
 * K in yielding, as the safe side); static loads of ductile steel without K: the same, section 3-13
 */
export function safetyOfNumbers(
  numbers: SafetyNumbers,
  feature: ShaftPlace["feature"],
  duty: Pick<ShaftDuty, "temperature" | "reliability" | "surface"> & { readonly criterion: FatigueCriterion },
  known?: NotchNumbers,
): SafetyOfNumbers {
  const { diameter: d, bore, tensile } = numbers;
  const k =
    known?.diameter === d && known.tensile === tensile ? known : notchNumbers(feature, d, tensile, duty);
  const section = (Math.PI * (d ** 4 - bore ** 4)) / d;
  const bendingPer = (32 * k.bending * numbers.notch) / section;
  const shearPer = (Math.sqrt(3) * 16 * k.torsion * numbers.notch) / section;
  const alternating = Math.hypot(bendingPer * numbers.moment, shearPer * numbers.torqueSwing);
  const mean = Math.hypot(bendingPer * numbers.steadyMoment, shearPer * numbers.torque);
  const left = sectionLeft(feature, d);
  const largest = Math.hypot(
    (32 / section / left.bending) * (numbers.moment + numbers.steadyMoment),
    ((Math.sqrt(3) * 16) / section / left.torsion) * (numbers.torque + numbers.torqueSwing),
  );
  return {
    alternating,
    mean,
    largest,
    fatigue: fatigueFactorOfSafety(duty.criterion, {
      alternating,
      mean,
      endurance: k.endurance * numbers.endurance,
      tensile,
      yield: numbers.yield,
    }),
    yielding: numbers.yield / largest,
  };
}
