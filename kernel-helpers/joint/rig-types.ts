import type { Material } from "../handbook/index.js";
import type { Force, Length, Pressure, Quantity, Torque, Volume } from "../quantity/index.js";
import type { Spread } from "./spread.js";

/** The section of a cross-beam: flat bars on edge side by side, or what a table gives for a rolled section. */
export type BeamSection =
  | {
      /** Across the load, of one bar. */
      readonly width: Length;
      /** In the direction of the load. */
      readonly height: Length;
      /** How many bars side by side; default 1 [-]. */
      readonly bars?: number;
    }
  | { readonly sectionModulus: Volume; readonly secondMoment: Quantity<"second moment of area"> };

/**
 * A rig that presses a hub off its shaft: a jack between a cross-beam and the shaft's end, tie rods from the beam
 * to a bearing plate behind the hub.
 */
export interface Rig {
  readonly jack: {
    readonly capacity: Force;
    /** Whole travel of the ram. */
    readonly stroke: Length;
    /** How far it stands out already; default 0. */
    readonly extended?: Length | undefined;
  };
  readonly rods: {
    /** As the handbook names it: "1-8 UNC", "M24 × 3". */
    readonly thread: string;
    /** Proof strength of the rod and its nut, the lesser. */
    readonly proof: Pressure;
    /** All of them, half on each side; default 2 [-]. */
    readonly count?: number;
    /** Between centres, across the shaft. */
    readonly span: Length;
    /** Free length between the nuts. */
    readonly length: Length;
  };
  readonly beam: { readonly section: BeamSection; readonly material: Material };
  readonly plate: {
    /** Across the line of the rods. */
    readonly width: Length;
    readonly thickness: Length;
    /** Width of the slot or hole that lets the shaft through. */
    readonly slot: Length;
    readonly material: Material;
  };
  readonly hub: {
    /** Outside diameter of the face that the plate bears on. */
    readonly face: Length;
    readonly length: Length;
    readonly material: Material;
  };
  readonly shaft: {
    /** At the end that the jack pushes on: the thread's root. */
    readonly end: Length;
    readonly material: Material;
  };
  /** How far the jack may stand off the shaft's axis; default 0. */
  readonly offCentre?: Length | undefined;
  /** How far the hub must move before it is free. */
  readonly release: Length;
}

/** The share of its strength that each part may be loaded to [-]. */
export interface RigFactors {
  /** Of the jack's rated capacity. */
  readonly jack: number;
  /** Of the rods' proof load. */
  readonly rods: number;
  /** Of the yield of beam, plate and shaft. */
  readonly bending: number;
  /** Of the compressive strength of a brittle hub's face, or of another's yield. */
  readonly hubFace: number;
}

export type RigPart = "jack" | "tie rods" | "cross-beam" | "bearing plate" | "hub face" | "shaft end";

/** One part of the rig against the force it is to bear. */
export interface RigCheck {
  readonly part: RigPart;
  /** What is compared: "force of the jack", "tension of one rod", "bending stress", … */
  readonly what: string;
  /** At the force asked for. */
  readonly load: Force | Pressure;
  readonly capacity: Force | Pressure;
  /** The force of the press at which it would be loaded to its capacity. */
  readonly pressForce: Force;
  /** Capacity over load [-]; below 1 it does not stand. */
  readonly margin: number;
  readonly verdict: "stands" | "does not stand";
  /** How the capacity comes about, in words. */
  readonly basis: string;
}

/** A press rig judged. */
export interface PressRig {
  readonly kind: "press rig";
  readonly rig: {
    readonly jack: { readonly capacity: Force; readonly stroke: Length; readonly extended: Length };
    readonly rods: {
      readonly thread: string;
      readonly count: number;
      readonly span: Length;
      readonly length: Length;
      readonly diameter: Length;
    };
    /** In the direction of the load; undefined for a rolled section. */
    readonly beamHeight: Length | undefined;
    readonly plate: { readonly width: Length; readonly thickness: Length; readonly slot: Length };
    readonly hub: { readonly face: Length; readonly length: Length; readonly material: string };
    readonly shaftEnd: Length;
    readonly offCentre: Length;
  };
  /** The press-off force it is asked for. */
  readonly needed: Spread<Force>;
  /** The force the checks are made at: the high end of what is needed. */
  readonly force: Force;
  readonly checks: readonly RigCheck[];
  readonly weakest: RigPart;
  /** The force the weakest part allows. */
  readonly rating: Force;
  /** Share of the cases in which the rating is enough [-]. */
  readonly chance: number;
  readonly verdict: "stands" | "does not stand" | "cannot tell yet";
  /** The least thickness of the bearing plate at the force asked for. */
  readonly plateThickness: Length;
  /** How the rig gives way at its rating, and what springs back when the hub lets go. */
  readonly spring: {
    readonly beam: Length;
    readonly rods: Length;
    readonly energy: Torque;
  };
  readonly ram: {
    /** Travel that is left. */
    readonly left: Length;
    /** Spring of the rig and the hub's own way. */
    readonly needed: Length;
    readonly verdict: "reaches" | "does not reach";
  };
  readonly warnings: readonly string[];
}
