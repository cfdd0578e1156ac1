import type { Angle, Length, Measured, UnitSystem } from "../quantity/index.js";

/** How far a shaft is from round, from diameters: largest less smallest, ON DIAMETER. Odd lobes do not show in it. */
export interface Ovality {
  readonly kind: "ovality";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  /** First and last station used. */
  readonly from: Length;
  readonly to: Length;
  readonly stationCount: number;
  /** Different directions read, opposite ones being one diameter [-]. */
  readonly angleCount: number;
  /** "measured" from 3 or more directions; from two it is the least the ovality can be: "at least". */
  readonly bound: "measured" | "at least";
  /** Largest less smallest diameter of the oval. */
  readonly ovality: Measured<Length>;
  /** Where the largest diameter lies, from 0 to below 180°; undefined from two directions, or where it is not real. */
  readonly largestAt: Measured<Angle> | undefined;
  /** Where the smallest lies: 90° further. */
  readonly smallestAt: Measured<Angle> | undefined;
  /** Chance that a round shaft reads so oval [-]. */
  readonly chance: number;
  /** Whether that chance is below 5 %. */
  readonly real: boolean;
  readonly text: string;
  readonly warnings: readonly string[];
}

/** How the shaft was held and turned while an indicator read it. */
export type SetUp =
  | { readonly held: "between centres" }
  /** The indicator stands over the vee, on its bisector, opposite to it. */
  | { readonly held: "in a vee block"; readonly included: Angle };

/** Lobes of one number round a section. All heights are ON RADIUS, from valley to crest. */
export interface Lobes {
  /** 2 is an oval, 3 three lobes, … */
  readonly count: number;
  /** What the set-up makes of them: 1 between centres, the vee's factor in a vee block [-]. */
  readonly factor: number;
  /** Height valley to crest on radius: twice the amplitude; undefined where the vee cannot see them. */
  readonly height: Measured<Length> | undefined;
  /** Angle of the first crest. */
  readonly crestAt: Measured<Angle> | undefined;
  /** Chance that noise gives so much [-]. */
  readonly chance: number;
  /** Whether that chance, shared among all numbers looked for, is below 5 %. */
  readonly real: boolean;
}

/** The roundness of one section from indicator readings round it. Everything is ON RADIUS unless it says otherwise. */
export interface Roundness {
  readonly kind: "roundness";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly station: Length | undefined;
  readonly setUp: SetUp;
  readonly readingCount: number;
  readonly angleCount: number;
  /** Total indicator reading: largest less smallest reading, as read. */
  readonly tir: Length;
  /**
   * Between centres: distance and direction of the least-squares circle's centre from the line of centres; the
   * surface stands highest there. Undefined in a vee block, which cannot see it.
   */
  readonly eccentricity: Measured<Length> | undefined;
  readonly direction: Measured<Angle> | undefined;
  /**
   * Roundness deviation: peak to valley about the least-squares circle. Between centres from the readings; in a
   * vee block from the lobes it can see, so that it is the least it can be.
   */
  readonly deviation: Measured<Length>;
  readonly deviationIs: "measured" | "at least";
  readonly lobes: readonly Lobes[];
  /** Scatter about circle and lobes over the stated uncertainty; undefined with no degree of freedom. */
  readonly noiseRatio: number | undefined;
  readonly text: string;
  readonly warnings: readonly string[];
}
