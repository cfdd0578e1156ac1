import type { StandardThread } from "../handbook/index.js";
import type { Force, Length, Pressure, Torque } from "../quantity/index.js";

/** A range known only by its ends, with the reason for both. */
export interface TorqueSpan {
  readonly low: Torque;
  readonly high: Torque;
  readonly because: string;
}

/** What one wrench asks of the arm. */
export interface WrenchRow {
  /** Nut's centre to the middle of the hand. */
  readonly length: Length;
  /** Pull that breaks the nut loose, if it is kind and if it is not. */
  readonly pullLow: Force;
  readonly pullHigh: Force;
  /** Pull at which the stud's stop limit is reached. */
  readonly pullAtStop: Force;
  /** One person's strong pull may pass the stop limit on this wrench. */
  readonly onePersonCanPassTheLimit: boolean;
}

/** The mark a growing pull meets first. */
export type FirstReached = "nut breaks loose" | "stop limit of the stud" | "not known which";

/** How hard a nut may be pulled, and what happens first. */
export interface NutRemoval {
  readonly kind: "nut removal";
  readonly thread: StandardThread;
  readonly state: string;
  /** Tension left in the stud, as a range. */
  readonly preload: { readonly low: Force; readonly high: Force; readonly because: string };
  /** What the last fitter may have tightened it with. */
  readonly tightening: TorqueSpan;
  readonly breakLoose: TorqueSpan;
  /** First yield of the stud's root at the least strength and the greatest tension. */
  readonly rootYields: Torque;
  readonly yield: Pressure;
  /** Nobody pulls beyond this torque. */
  readonly stopLimit: Torque;
  /** What the limit would be if the stud held the least tension: nobody knows that it does. */
  readonly stopLimitIfSlack: Torque;
  readonly stopShare: number;
  /** A person's steady and strong pull at the end of a wrench. */
  readonly onePerson: { readonly steady: Force; readonly strong: Force };
  readonly wrenches: readonly WrenchRow[];
  /** The longest wrench on which one person's strong pull stays below the stop limit. */
  readonly longestSafeWrench: Length;
  readonly first: FirstReached;
  readonly text: string;
}
