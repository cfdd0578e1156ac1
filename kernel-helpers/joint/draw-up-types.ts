import type { Material } from "../handbook/index.js";
import type { Length, Measured, Torque } from "../quantity/index.js";
import type { TaperFit } from "../survey/index.js";
import type { FitInput } from "./fit-input.js";
import type { HubFit } from "./hub-fit-types.js";
import type { Spread } from "./spread.js";

/** A tapered hub to be drawn up on its shaft. */
export interface DrawUpInput {
  /** The shaft's taper, surveyed: stations grow towards its large end. */
  readonly shaft: TaperFit;
  /** The hub's bore, surveyed: stations from the hub's small face towards its large one. */
  readonly bore: TaperFit;
  readonly hub: {
    readonly material: Material;
    readonly outside: Length;
    /** Face to face. */
    readonly length: Length;
    readonly keywayDepth?: Length | undefined;
  };
  readonly shaftMaterial: Material;
  /** Between hub and shaft while it is drawn up and when it works [-]. */
  readonly friction: FitInput<number>;
  /** Interference wanted half-way along the hub, on DIAMETER; default that of practice. */
  readonly wanted?: { readonly low: Length; readonly high: Length } | undefined;
  /** How well the gauge tells the way from first contact: standard uncertainty along the axis. */
  readonly gauge: Length;
  /** Station that the hub's large face must not pass: a shoulder, a collar, the taper's end. */
  readonly shoulder?: Length | undefined;
  /**
   * Station where the nut or its washer comes up against the shaft: the taper's small end, or the end of the thread. The
   * hub's small face must stand before it, or the nut pulls on the shaft and not on the hub.
   */
  readonly nutStop?: Length | undefined;
  readonly nut?: {
    /** As the handbook names it. */
    readonly thread: string;
    /** Nut factor K in T = K F d [-]. */
    readonly factor: { readonly low: number; readonly high: number };
  };
  /** Torque the hub must carry without its key. */
  readonly torque?: Torque | undefined;
}

/** Where a stop stands against the way the hub has to go. */
export interface DrawUpStop {
  readonly what: "shoulder" | "nut's stop";
  /** Way left when the hub sits; below 0 it bottoms first. */
  readonly left: Spread<Length>;
  /** Share of the cases in which it bottoms before it has the least interference wanted [-]. */
  readonly chanceFirst: number;
}

/** A tapered hub drawn up: where it sits, how tight, what it carries, and what stops it. */
export interface DrawUp {
  readonly kind: "draw-up";
  /** Diameter per length [-]. */
  readonly shaftTaper: Measured<number>;
  readonly boreTaper: Measured<number>;
  readonly hubLength: Length;
  /** Station of the hub's small face at first contact, pushed on by hand. */
  readonly firstContact: Spread<Length>;
  readonly bearsFirst: "all along" | "at its large end" | "at its small end";
  /** Gap at the other end at first contact, on diameter. */
  readonly gap: Spread<Length>;
  /** Way beyond first contact after which it bears all along. */
  readonly bearsAllAfter: Spread<Length>;
  /** On diameter, half-way along. */
  readonly wanted: { readonly low: Length; readonly high: Length };
  /** How far to draw it up beyond first contact: for the least, the middle and the most of what is wanted. */
  readonly drawUp: { readonly low: Length; readonly middle: Length; readonly high: Length };
  /** Station of the small face when it is drawn up by the middle. */
  readonly seat: Spread<Length>;
  /** What the middle draw-up gives, as a mean along the hub. */
  readonly interference: Measured<Length>;
  readonly fit: HubFit;
  /** Torque on the nut that draws it there; undefined without a nut. */
  readonly nutTorque: { readonly low: Torque; readonly high: Torque } | undefined;
  /** Stress in the thread over its yield at the high end of the pull [-]; undefined without a nut. */
  readonly threadLoad: number | undefined;
  readonly stops: readonly DrawUpStop[];
  readonly torqueNeeded: Torque | undefined;
  /** Share of the cases in which friction carries the torque asked for [-]; undefined without one. */
  readonly chanceCarries: number | undefined;
  readonly verdict: "holds" | "bottoms first" | "does not hold" | "cannot tell yet";
  /** What stands behind the verdict, one sentence each. */
  readonly reasons: readonly string[];
  readonly warnings: readonly string[];
}
