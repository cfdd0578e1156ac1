import type { AnyQuantity, KindName, Measured, UnitName } from "../../quantity/index.js";

/** The inputs as plain SI numbers, by name. */
export type PlainNumbers = Readonly<Record<string, number>>;

/** A limit that an option must keep. */
export interface WeighedLimit {
  readonly name: string;
  /** What its margin is measured in: a kind of quantity with the unit to show, or "number". */
  readonly kind: KindName | "number";
  readonly unit?: UnitName;
  /**
   * By how much the limit is kept [SI]: above 0 it holds, below 0 it is broken. Undefined where it has no meaning for
   * the option: a new shaft need not clean up. The inputs of one drawn shaft come in one object, the same for all.
   */
  readonly margin: (inputs: PlainNumbers, option: string) => number | undefined;
}

/** Something taken for true without a reading: what it would change. */
export interface Assumption {
  /** What else might be true, e.g. "the shaft is wrought iron". */
  readonly name: string;
  /** The inputs that then have another estimate, SI; their uncertainty moves along. */
  readonly inputs: PlainNumbers;
}

export interface WeighOptionsInput {
  readonly inputs: Readonly<Record<string, Measured<AnyQuantity | number> | AnyQuantity | number>>;
  /** Names, the one to prefer first. */
  readonly options: readonly string[];
  readonly limits: readonly WeighedLimit[];
  /** The option whose choice is defended; default the first that keeps all limits with the chance wanted, else the surest. */
  readonly chosen?: string;
  /** What else might be true. */
  readonly assumptions?: readonly Assumption[];
  /** What this gave for the same input without `assumptions`: those alone are then drawn. */
  readonly weighed?: OptionsWeighed;
  /** Chance that all limits hold, for an option to be taken; default 0.95 [-]. */
  readonly wanted?: number;
  /** Default 10 000 [-]. */
  readonly draws?: number;
  readonly seed: number;
}

/** How far a weighing is. */
export interface WeighingStep {
  /** What is counted, e.g. "shafts drawn". */
  readonly what: string;
  readonly done: number;
  readonly of: number;
}

/** Whether a chance is above the one wanted: "cannot tell yet" where so many draws do not tell the two apart. */
export type WeighedVerdict = "holds" | "does not hold" | "cannot tell yet";

/** One limit of one option. */
export interface LimitKept {
  readonly name: string;
  /** At the estimates, with the standard deviation of the draws. */
  readonly margin: Measured<AnyQuantity | number>;
  /** Chance that it holds: the share of draws [-]. */
  readonly chance: number;
  /** Standard uncertainty of that share, for so many draws [-]. */
  readonly chanceUncertainty: number;
  /** Mean margin of the draws in its own standard deviations [-]; Infinity where nothing scatters. */
  readonly inDeviations: number;
}

export interface OptionWeighed {
  readonly name: string;
  /** Chance that all its limits hold together, those beyond the choice apart [-]. */
  readonly chance: number;
  /** Standard uncertainty of that share, for so many draws [-]. */
  readonly chanceUncertainty: number;
  /** That chance against the one wanted. */
  readonly verdict: WeighedVerdict;
  readonly limits: readonly LimitKept[];
  /** The limit most likely to break, of those not beyond the choice; undefined where none applies. */
  readonly weakest: string | undefined;
}

/** How far one input alone must move until the choice breaks a limit. */
export interface Flip {
  readonly input: string;
  readonly value: AnyQuantity | number;
  readonly standardUncertainty: AnyQuantity | number;
  /** How far, in its own standard uncertainties, with sign; undefined where 10 of them do not do it [-]. */
  readonly moves: number | undefined;
  /** The value it would then have. */
  readonly to: AnyQuantity | number | undefined;
  /** The limit that breaks first. */
  readonly breaks: string | undefined;
}

/** What an exact reading of one input would bring. */
export interface WorthMeasuring {
  readonly input: string;
  /** Share of the variance of the weakest limit's margin that comes from it [-]. */
  readonly share: number;
  /** Chance that the weakest limit holds, were this input known to be what it is estimated at [-]. */
  readonly chanceIfKnown: number;
}

/** Every option held against every limit, and what the choice hangs on. */
export interface OptionsWeighed {
  readonly kind: "options weighed";
  readonly draws: number;
  readonly seed: number;
  readonly wanted: number;
  readonly options: readonly OptionWeighed[];
  /** The limits that no option keeps with the chance wanted: no choice mends these, and they decide none. */
  readonly beyondChoice: readonly string[];
  /** The first that keeps all other limits with the chance wanted; undefined where none does. */
  readonly stands: string | undefined;
  readonly chosen: string;
  /** Of the chosen one, the nearest first. */
  readonly flips: readonly Flip[];
  /** Of the chosen one's weakest limit, the largest first. */
  readonly measure: readonly WorthMeasuring[];
  /** The chance of each option were something else true. */
  readonly assumptions: readonly {
    readonly name: string;
    readonly options: readonly {
      readonly name: string;
      readonly chance: number;
      readonly chanceUncertainty: number;
      readonly weakest: string | undefined;
    }[];
    /** Whether the option to take is then another one, or none; undefined where the draws do not tell. */
    readonly flips: boolean | undefined;
  }[];
}
