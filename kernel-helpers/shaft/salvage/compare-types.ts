import type { Babbitt } from "../../handbook/index.js";
import type { AnyQuantity, Measured, RotationalSpeed } from "../../quantity/index.js";
import type { ShaftModel, ShaftStretch } from "../beam/index.js";
import type { BearingService, KeyStrength, SafetyVerdict, ShaftStrength } from "../strength/index.js";
import type { ShaftCase } from "./shaft-case.js";

/** Two states of one shaft under one load case. */
export interface CompareShaftsInput {
  readonly shaft: ShaftCase;
  /** Of the whole shaft, from end to end. A diameter that is the same object in both is one input of both. */
  readonly before: readonly ShaftStretch[];
  readonly after: readonly ShaftStretch[];
  readonly material: ShaftModel["material"];
  /** The speed it runs at. */
  readonly speed?: RotationalSpeed;
  /** How far the shaft may lean in a box [-]; default 0.001. */
  readonly slopeAllowed?: number;
  /** How far the running speed is to stay from every whirl, as a share of that; default 0.2 [-]. */
  readonly keepAway?: number;
  /** How many critical speeds; default 3. */
  readonly modes?: number;
  /** With it the pressure in the boxes is compared too. */
  readonly bearing?: { readonly metal: Babbitt; readonly service: BearingService };
  /** With it the factors of safety are compared too, place by place, in the same order. */
  readonly strength?: { readonly before: ShaftStrength; readonly after: ShaftStrength };
  /** With it the keys, by name. */
  readonly keys?: readonly {
    readonly name: string;
    readonly before: KeyStrength;
    readonly after: KeyStrength;
  }[];
}

/** What a figure tells of, and so in what it is shown. */
export type ComparedMeasure =
  | "moment"
  | "force"
  | "deflection"
  | "slope"
  | "pressure"
  | "speed"
  | "share"
  | "factor";

/** A figure of one state. */
export interface ComparedValue {
  readonly value: Measured<AnyQuantity | number>;
  /** The ends of its 95 % [SI]. */
  readonly low: number;
  readonly high: number;
  /** Undefined where nothing limits it. */
  readonly verdict: SafetyVerdict | undefined;
}

/** One figure of both states. */
export interface ComparedFigure {
  readonly name: string;
  readonly measure: ComparedMeasure;
  readonly before: ComparedValue;
  readonly after: ComparedValue;
  /**
   * after/before − 1 [-]. What both states owe to the same load, mass and metal is taken away from its uncertainty;
   * undefined where it was not reckoned (factors of safety).
   */
  readonly change: { readonly value: number; readonly standardUncertainty: number | undefined };
  readonly limit: { readonly value: AnyQuantity | number; readonly side: "at most" | "at least" } | undefined;
}

/** A shaft before and after a cut, figure by figure. */
export interface ShaftsCompared {
  readonly kind: "shafts compared";
  readonly loadCase: string;
  readonly figures: readonly ComparedFigure[];
  /**
   * "holds": after the cut every limit is kept; "the cut breaks a limit" that was not broken before; "broken as made":
   * what is broken was broken before the cut too.
   */
  readonly verdict: "holds" | "the cut breaks a limit" | "broken as made" | "cannot tell yet";
  readonly warnings: readonly string[];
}
