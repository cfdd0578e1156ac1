/** A direction of turning, as seen from a side that must be said. */
export type Turning = "clockwise" | "counter-clockwise";

/** Hand of a thread: a right-hand nut goes on clockwise, seen from its outer face. */
export type Hand = "right" | "left";

/** What decides the hand a maker gives to a nut, so that running tightens it. */
export interface NutDuty {
  /** The member that drives the other through their joint: the shaft the wheel, or the wheel the shaft. */
  readonly driver: "shaft" | "wheel";
  /** Which way the machine turns, seen from the side below. */
  readonly rotation: Turning;
  /** The side that rotation was seen from: facing the nut, or from the other end of the shaft. */
  readonly seenFrom: "nut side" | "far side";
  /** Where a brake acts that matters, if there is one; "none" where the machine runs down by itself. */
  readonly brake: "none" | "driver" | "driven";
  /** How the wheel touches the nut: it drags its face, or, loose on the shaft, rolls round inside or under it. */
  readonly contact: "drag" | "rolling";
}

/** The hand that running calls for, with the reasoning step by step. */
export interface HandPrediction {
  readonly kind: "hand prediction";
  readonly duty: NutDuty;
  /** Which way the machine turns, seen facing the nut. */
  readonly rotationAtNut: Turning;
  /** The hand that starting and running tighten. */
  readonly hand: Hand;
  /** The hand that braking tightens; undefined without a brake. */
  readonly whenBraking: Hand | undefined;
  readonly steps: readonly string[];
}

/** The hand predicted against the hand seen: the thread seen wins, and a conflict is settled in writing. */
export interface ThreadHand {
  readonly kind: "thread hand";
  readonly prediction: HandPrediction;
  readonly seen: Hand;
  /** How it was seen, in the words of whoever looked. */
  readonly how: string | undefined;
  readonly agrees: boolean;
  /** Why the thread is to be believed against the prediction; undefined where they agree. */
  readonly resolved: string | undefined;
  /** Which way to turn the nut, seen facing it. */
  readonly loosen: Turning;
  readonly tighten: Turning;
  readonly text: string;
}
