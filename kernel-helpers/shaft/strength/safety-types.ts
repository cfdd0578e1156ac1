import type { Length, Measured, Pressure, Temperature, Torque } from "../../quantity/index.js";
import type { Uncertain } from "../../statistics/index.js";
import type { EnduranceLimit, SurfaceFinish } from "./endurance-limit.js";
import type { FatigueCriterion } from "./fatigue-criteria.js";
import type { FatigueFactors } from "./fatigue-factors.js";
import type { ShaftFeature } from "./feature-types.js";
import type { ShaftSteel } from "./shaft-steel.js";

/** A length known exactly, as measured, or as an uncertain value that shares its sources with others. */
export type LengthGiven = Length | Measured<Length> | Uncertain<"length">;
/** A moment or torque, likewise. */
export type TorqueGiven = Torque | Measured<Torque> | Uncertain<"torque or energy">;

/** A place of a turning shaft where it may break. */
export interface ShaftPlace {
  readonly name: string;
  /** Where along the shaft, for the table. */
  readonly station?: Length;
  /** DIAMETER of the section that carries. */
  readonly diameter: LengthGiven;
  /** DIAMETER of a bore; default none. */
  readonly bore?: LengthGiven;
  /** Bending moment of a load that stands still while the shaft turns: reversed at every turn. */
  readonly moment: TorqueGiven;
  /** Bending moment of what turns with the shaft (a heavy side): steady in the steel. Default none. */
  readonly steadyMoment?: TorqueGiven;
  /** Torque that the place carries, steady. */
  readonly torque: TorqueGiven;
  /** Half of the swing of the torque about its mean, e.g. of a plunger pump. Default none. */
  readonly torqueSwing?: TorqueGiven;
  readonly feature: ShaftFeature;
  /** As the place was or will be made; default that of the duty. */
  readonly surface?: SurfaceFinish;
}

/** What holds for the whole shaft. */
export interface ShaftDuty {
  readonly steel: ShaftSteel;
  readonly surface: SurfaceFinish;
  /** The least factor of safety that is demanded, of fatigue and of yielding [-]. */
  readonly demanded: number;
  /** Default "Goodman". */
  readonly criterion?: FatigueCriterion;
  /** Default room temperature. */
  readonly temperature?: Temperature;
  /** Share of shafts that bear more than the endurance limit reckoned with; default 0.5, with the scatter in the uncertainty. */
  readonly reliability?: number;
}

/** A factor of safety and how sure it is. */
export interface SafetyFactor {
  /** With its standard uncertainty [-]. */
  readonly factor: Measured<number>;
  /** The ends of 95 %, of a lognormal factor [-]. */
  readonly low: number;
  readonly high: number;
  /** Probability that it is below what is demanded [-]. */
  readonly chanceBelow: number;
  /** What its uncertainty comes from, the largest first: share of the variance [-]. */
  readonly shares: readonly { readonly source: string; readonly share: number }[];
}

export type SafetyVerdict = "holds" | "does not hold" | "cannot tell yet";

/** One place of a shaft held against yielding and fatigue. */
export interface ShaftSafety {
  readonly kind: "shaft safety";
  readonly name: string;
  readonly station: Length | undefined;
  readonly diameter: Measured<Length>;
  readonly bore: Measured<Length> | undefined;
  readonly moment: Measured<Torque>;
  readonly steadyMoment: Measured<Torque> | undefined;
  readonly torque: Measured<Torque>;
  readonly torqueSwing: Measured<Torque> | undefined;
  /** Von Mises: half of the swing and the mean, with stress concentration; the largest without, of the section left. */
  readonly stress: {
    readonly alternating: Measured<Pressure>;
    readonly mean: Measured<Pressure>;
    readonly largest: Measured<Pressure>;
  };
  readonly factors: FatigueFactors;
  readonly endurance: EnduranceLimit;
  readonly steel: ShaftSteel;
  readonly criterion: FatigueCriterion;
  readonly demanded: number;
  readonly reliability: number;
  readonly fatigue: SafetyFactor;
  readonly yielding: SafetyFactor;
  /** The one more likely to be below what is demanded. */
  readonly governing: "fatigue" | "yielding";
  readonly verdict: SafetyVerdict;
  readonly warnings: readonly string[];
}

/** The places of a shaft, with the weakest named. */
export interface ShaftStrength {
  readonly kind: "shaft strength";
  readonly places: readonly ShaftSafety[];
  /** Name of the place most likely to be below what is demanded. */
  readonly weakest: string;
  readonly verdict: SafetyVerdict;
  readonly demanded: number;
  readonly criterion: FatigueCriterion;
  readonly steel: ShaftSteel;
  readonly warnings: readonly string[];
}
