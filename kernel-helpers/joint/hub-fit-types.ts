import type { FitFriction, Material } from "../handbook/index.js";
import type {
  Force,
  Length,
  Measured,
  Pressure,
  TemperatureDifference,
  ThermalExpansion,
  Torque,
} from "../quantity/index.js";
import type { FitInput } from "./fit-input.js";
import type { Spread } from "./spread.js";

/** A hub on its shaft, as it stands on the bench. */
export interface HubOnShaft {
  /** Diameter of the seat; of a taper half-way along the hub. */
  readonly diameter: Length;
  /** In contact, along the axis. */
  readonly length: Length;
  /** Diameter per length [-]; left out: a straight fit. */
  readonly taper?: number | Measured<number>;
  /** DIAMETRAL interference. */
  readonly interference: FitInput<Length>;
  readonly hub: {
    readonly material: Material;
    readonly outside: Length;
    /** Depth of a keyway in the bore, from the bore; left out: none. */
    readonly keywayDepth?: Length | undefined;
  };
  readonly shaft: { readonly material: Material; readonly bore?: Length | undefined };
  /** Of the surfaces, by the handbook or as a range. */
  readonly friction: FitFriction | FitInput<number>;
}

/** How many cases are drawn, and where the random numbers start. */
export interface HubFitOptions {
  /** 1000 to 200 000, default 20 000 [-]. */
  readonly cases?: number;
  /** The same seed gives the same result; default 1 [-]. */
  readonly seed?: number;
}

/** What would be gained by knowing one input. */
export interface Narrowing {
  readonly input: HubFitInput;
  /** What is known of it now, ends of the range or of the 95 % interval, in words with units. */
  readonly known: string;
  /** Width of the press-off range if it were known exactly. */
  readonly width: Force;
  /** By how much the range would narrow, 0 to 1 [-]. */
  readonly gain: number;
}

export type HubFitInput =
  | "interference"
  | "friction"
  | "taper"
  | "hub modulus"
  | "hub Poisson's ratio"
  | "shaft modulus";

/** A hub's fit: pressure, stress, forces, torque, each as the range that the inputs allow. */
export interface HubFit {
  readonly kind: "hub fit";
  readonly diameter: Length;
  readonly length: Length;
  /** Diameter per length [-], 0 for a straight fit. */
  readonly taper: number;
  readonly hub: {
    readonly material: string;
    readonly outside: Length;
    readonly keywayDepth?: Length | undefined;
    readonly expansion: ThermalExpansion;
  };
  readonly shaft: {
    readonly material: string;
    readonly bore?: Length | undefined;
    readonly expansion: ThermalExpansion;
  };
  /** On diameter. */
  readonly interference: Spread<Length>;
  readonly friction: Spread<number>;
  readonly pressure: Spread<Pressure>;
  readonly pressOn: Spread<Force>;
  /** Below 0 the taper lets go of itself. */
  readonly pressOff: Spread<Force>;
  /** Torque at which it slips without a key. */
  readonly torque: Spread<Torque>;
  /** How much warmer than a cold shaft the hub must be to come loose. */
  readonly opening: Spread<TemperatureDifference>;
  /** The hub at its bore, by the rule of its metal. */
  readonly hubStress: {
    readonly rule: "largest tension" | "largest shear";
    /** The stress judged: hoop tension, or hoop less radial stress. */
    readonly stress: Spread<Pressure>;
    readonly strength: Pressure;
    readonly strengthIs: "tensile strength" | "yield";
    /** Share of the cases in which the stress stays below the strength [-]. */
    readonly chanceHolds: number;
    readonly verdict: "holds" | "does not hold" | "cannot tell yet";
  };
  /** Friction above which a taper holds itself [-], and the share of cases in which it does. */
  readonly selfHolding: { readonly above: number; readonly chance: number };
  /** Share of the cases without any interference [-]. */
  readonly chanceLoose: number;
  /** What to measure, the most useful first. */
  readonly narrowing: readonly Narrowing[];
  readonly cases: number;
  readonly seed: number;
  readonly warnings: readonly string[];
}
