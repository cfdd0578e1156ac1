import type { CuttingSpeed, ToolMaterial } from "../../handbook/index.js";
import type { Force, Length, Measured, RotationalSpeed, Time, UnitSystem } from "../../quantity/index.js";
import type { FinishedJournal } from "../journals/index.js";
import type { TurnedRoughness } from "./turned-roughness.js";
import type { TurningStock } from "./turning-stock.js";

/** What a cross-slide's dial counts: the travel of the slide, or twice that, what comes off the diameter. */
export type DialCounts = "radius" | "diameter";

/** The lathe and its tool, as set for the cut. */
export interface LatheSetting {
  readonly tool: ToolMaterial;
  readonly noseRadius: Length;
  /** Along the work, for one turn; of the measuring and the finishing cut. */
  readonly feed: Length;
  /** Depth of a roughing cut at most, ON RADIUS. */
  readonly deepestCut: Length;
  /** Depth of the measuring and the finishing cut, ON RADIUS. */
  readonly finishingCut: Length;
  readonly dialCounts: DialCounts;
  /** One division of the dial, in what it counts. */
  readonly dialDivision: Length;
  /** The spindle speeds it has. */
  readonly speeds: readonly RotationalSpeed[];
}

export interface CutPlanInput {
  readonly stock: TurningStock;
  readonly journal: FinishedJournal;
  /** Tolerance on the finished diameter: a zone of ISO 286, e.g. "h7", or deviations from it, ON DIAMETER. */
  readonly tolerance: string | { readonly upper: Length; readonly lower: Length };
  /** Left on, ON DIAMETER, for file, emery or lapping after the last cut; 0 for none. */
  readonly leave: Length;
  /** Standard uncertainty of a diameter measured on the lathe. */
  readonly measuring: Length;
  /** Name of the metal turned, as the handbook has it. */
  readonly material: string;
  readonly lathe: LatheSetting;
  /** From centre to centre, and how far the first station, 0, lies from the centre before it. */
  readonly betweenCentres: Length;
  readonly zeroFromCentre: Length;
}

export type PassName = "rough" | "measuring" | "finishing";

/** One cut along the journal. */
export interface TurningPass {
  readonly number: number;
  readonly name: PassName;
  /** ON RADIUS. */
  readonly depth: Length;
  /** What it should measure after it. */
  readonly diameter: Measured<Length>;
  /** The dial, zero where the tool touches the highest place, to the nearest division. */
  readonly dial: Length;
  /** What the nearest division is off, ON DIAMETER: greater than 0, the work stays so much larger. */
  readonly offDivision: Length;
  /** Whether the tool still jumps over low places. */
  readonly interrupted: boolean;
  readonly speed: RotationalSpeed;
  /** Of cutting alone, one run along the journal. */
  readonly time: Time;
}

/** How a journal is turned to size. All sizes ON DIAMETER but the depths of cuts. */
export interface CutPlan {
  readonly kind: "cut plan";
  readonly name: string;
  readonly unitSystem: UnitSystem;
  readonly journal: FinishedJournal;
  readonly stock: TurningStock;
  readonly lathe: LatheSetting;
  readonly material: string;
  /** Limits of the finished journal. */
  readonly limits: { readonly smallest: Length; readonly largest: Length; readonly tolerance: string };
  /** What the micrometer must show at the end, so that the journal is within limits with 95 %. */
  readonly accept: { readonly smallest: Length; readonly largest: Length };
  /** The middle of what is accepted. */
  readonly aim: Length;
  readonly leave: Length;
  readonly passes: readonly TurningPass[];
  /** At the surface, from the handbook. */
  readonly cuttingSpeed: CuttingSpeed;
  readonly roughness: TurnedRoughness;
  /** Radial force of the finishing cut. */
  readonly radialForce: { readonly low: Force; readonly middle: Force; readonly high: Force };
  /** How much larger the journal comes out by springing, ON DIAMETER, with no steady: at the middle force. */
  readonly springing: {
    readonly atFrom: Length;
    readonly atMiddle: Length;
    readonly atTo: Length;
    /** Largest less smallest of the three, at the least, middle and most force. */
    readonly error: { readonly low: Length; readonly middle: Length; readonly high: Length };
    readonly allowed: Length;
    /** Length between centres over the diameter [-]. */
    readonly slenderness: number;
    /** Whether the error at the most force is above what is allowed, or the whole spring above the tolerance. */
    readonly steadyNeeded: boolean;
    /** The longest free length between supports that keeps within it. */
    readonly freeLength: Length;
  };
  readonly time: Time;
  readonly warnings: readonly string[];
}
