import type { StandardThread } from "../handbook/index.js";
import type { Angle, Length, Measured, UnitSystem } from "../quantity/index.js";

/** What was read on a screw thread. */
export interface ThreadReadings {
  readonly kind: "thread readings";
  readonly title: string;
  readonly file: string;
  /** The largest of the readings: wear takes metal away, so the least worn crest tells most. */
  readonly majorDiameter: Measured<Length>;
  readonly pitch: Measured<Length>;
  /** The most threads a length was taken over, and the standard uncertainty of such a length. */
  readonly overThreads: number;
  readonly lengthUncertainty: Length;
  /** Included angle between the flanks; undefined where it was not taken. */
  readonly flankAngle: Measured<Angle> | undefined;
  readonly unitSystem: UnitSystem;
  readonly warnings: readonly string[];
}

/** How one standard thread stands against the readings. */
export interface ThreadMatch {
  readonly thread: StandardThread;
  /** Standard major diameter less the one read: what wear, rust and the maker's tolerance have taken. */
  readonly below: Length;
  /** The most that is allowed for these. */
  readonly wearAllowed: Length;
  /** Reading less standard, in standard uncertainties of the reading [-]; 0 for a diameter within the allowance. */
  readonly diameterOff: number;
  readonly pitchOff: number;
  /** Undefined where the flank angle was not taken. */
  readonly angleOff: number | undefined;
  /** Root of the sum of the squares of these [-]. */
  readonly misfit: number;
  /** None of them is off by more than 95 % of readings would be. */
  readonly agrees: boolean;
}

/** A reading that would tell threads apart which the readings so far allow. */
export interface ThreadQuestion {
  readonly reading: "flank angle" | "pitch over a longer length" | "major diameter of an unworn crest";
  /** The names of the threads it tells apart. */
  readonly between: readonly string[];
  readonly text: string;
}

/** Which thread it may be: nearest first, and what to read where several may be. */
export interface ThreadIdentity {
  readonly kind: "thread identity";
  readonly readings: ThreadReadings;
  /** Those that agree, and the next few; nearest first. */
  readonly matches: readonly ThreadMatch[];
  /** How many standard threads were compared. */
  readonly compared: number;
  readonly next: readonly ThreadQuestion[];
  readonly text: string;
}
