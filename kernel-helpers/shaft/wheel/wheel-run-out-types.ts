import type { Angle, AnyQuantity, Length, Measured, UnitSystem } from "../../quantity/index.js";

/** How a mounted wheel was read. */
export interface WheelRunOutOptions {
  /** From the axis to where the face of the rim was read. */
  readonly faceRadius: Length;
  /** From the axis to where the face of the hub was read; needed where the table has a column "hub face". */
  readonly hubFaceRadius?: Length | undefined;
  /** Standard uncertainty of one reading; goes before the instrument's that a remark of the table names. */
  readonly readingUncertainty?: Length;
}

/** What goes so many times a turn, besides offset or lean. */
export interface RingLobes {
  /** 2 for an oval, 3 for three lobes. */
  readonly order: number;
  /** Twice the wave's amplitude. */
  readonly peakToValley: Measured<Length>;
  /** Chance that noise gives so much [-]. */
  readonly chance: number;
}

/** One ring of indicator readings, split. */
export interface RingRunOut {
  /** Largest less smallest, as read. */
  readonly tir: Length;
  /** Once a turn, half the swing it makes: eccentricity on radius, or half the swing of the face. */
  readonly once: Measured<Length>;
  readonly towards: Measured<Angle>;
  /** Chance that noise gives so much [-]. */
  readonly chance: number;
  /** Whether that chance is below 1 %. */
  readonly real: boolean;
  /** What is left without it, peak to valley, noise and all. */
  readonly rest: Length;
  /** Of what is left, the waves that stand out of the noise (chance below 1 %), the largest first. */
  readonly lobes: readonly RingLobes[];
  readonly readingCount: number;
}

/** A vector across the axis: how much, and towards which mark. */
export interface Towards<Q extends AnyQuantity | number> {
  readonly amount: Measured<Q>;
  readonly towards: Measured<Angle>;
  readonly chance: number;
  readonly real: boolean;
}

/** Run-out of a wheel on its shaft. */
export interface WheelRunOut {
  readonly kind: "wheel run-out";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  /** Rim against the axis: eccentric (offset) and out of round. */
  readonly rim: RingRunOut;
  /** Face against the axis: leaning (wobble) and uneven; undefined where the face was not read. */
  readonly face: RingRunOut | undefined;
  /** How far the wheel leans from square: swing of the face once a turn over the radius where it was read. */
  readonly lean: Measured<Angle> | undefined;
  /** The same of the hub, where it was read: how the wheel sits on its shaft. */
  readonly hub: RingRunOut | undefined;
  readonly hubFace: RingRunOut | undefined;
  readonly hubLean: Measured<Angle> | undefined;
  /** Rim against its own hub: what the wheel was made with, and no other seat mends; undefined without the hub. */
  readonly ownOffset: Towards<Length> | undefined;
  readonly ownLean: Towards<Angle> | undefined;
  readonly warnings: readonly string[];
}
