import type { Angle, Length, Torque } from "../quantity/index.js";
import type { DrawUp } from "./draw-up-types.js";
import type { Hand, ThreadHand, Turning } from "./hand-types.js";

/** A nut that has drawn up a hub, and what keeps it there. */
export interface NutLockInput {
  /** As seen on the thread, with what running calls for. */
  readonly hand: ThreadHand;
  readonly drawUp: DrawUp;
  /** As the handbook names it. */
  readonly thread: string;
  /** What locks it, in words: "split pin", "tab washer against a flat". */
  readonly lock: string;
  /** In how many places of a turn the lock catches: slots times holes, or the flats a tab can lie against. */
  readonly places: number;
}

/** How a nut is tightened, which way running turns it, and whether its lock meets the draw-up wanted. */
export interface NutLock {
  readonly kind: "nut lock";
  readonly lock: string;
  readonly places: number;
  readonly seen: Hand;
  /** Seen facing the nut. */
  readonly tighten: Turning;
  readonly loosen: Turning;
  /** What running does to a nut whose lock is forgotten; and braking, where a brake acts. */
  readonly running: "tightens it" | "loosens it";
  readonly braking: "tightens it" | "loosens it" | undefined;
  /** How far the nut turns from first contact, for the draw-up that is wanted; what thread and hub give is not in it. */
  readonly turn: { readonly low: Angle; readonly middle: Angle; readonly high: Angle };
  readonly torque: DrawUp["nutTorque"];
  /** From one place of the lock to the next: turn, way along the axis, and what it adds to the interference. */
  readonly step: { readonly angle: Angle; readonly way: Length; readonly interference: Length };
  /** Torque the next place adds at most, in proportion to the interference; undefined without a torque. */
  readonly stepTorque: Torque | undefined;
  /** Share of the places where the hub may happen to stand from which one lies within the draw-up wanted [-]. */
  readonly chancePlace: number;
  readonly verdict: "locks" | "may fall between two places";
  readonly reasons: readonly string[];
}
