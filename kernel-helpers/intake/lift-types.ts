import type { Angle, Length, Mass, Measured } from "../quantity/index.js";

/** One leg of the sling: how it hangs, what it pulls, and what its tag allows. */
export interface LiftLeg {
  readonly name: string;
  /** Of the leg from HORIZONTAL; 90° hangs straight. */
  readonly angle: Angle;
  /** The pull in the leg, as the mass that would hang straight from it. */
  readonly pull: Measured<Mass>;
  readonly verdict: LiftVerdict;
}

export type LiftVerdict = "holds" | "does not hold" | "cannot tell yet";

/** A load in its slings, judged by the tags of the user's own gear. */
export interface Lift {
  readonly kind: "lift";
  readonly what: string;
  readonly mass: Measured<Mass>;
  readonly legs: readonly LiftLeg[];
  /** What the tag of the sling allows a leg in the hitch used. */
  readonly slingTag: Mass;
  readonly hitch: string;
  /** What the hook, the hoist and what they hang from allow: the least of their tags. */
  readonly hookTag: Mass;
  /** The largest pull of a leg that is reckoned with, 95 % one-sided. */
  readonly most: Mass;
  readonly mostAtHook: Mass;
  readonly slingVerdict: LiftVerdict;
  readonly hookVerdict: LiftVerdict;
  /** The hook above the line of the slings' points; undefined where it is as high as wanted, over one straight leg. */
  readonly hookHeight?: Length;
  readonly breaks: readonly string[];
  readonly warnings: readonly string[];
}
