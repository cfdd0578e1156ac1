import type { Length, Measured, UnitSystem } from "../quantity/index.js";
import type { LineFit } from "../statistics/index.js";
import type { Instrument } from "./table.js";

/** What repeated readings of one place say of an instrument in one hand. */
export interface RepeatabilityStudy {
  readonly kind: "repeatability study";
  readonly title: string;
  readonly file: string;
  readonly unitSystem: UnitSystem;
  readonly instrument: Instrument | undefined;
  readonly count: number;
  /** Mean of the readings; u = s/√n, or that of the resolution where the readings are limited by it. */
  readonly mean: Measured<Length>;
  /** Standard deviation of one reading, n − 1. */
  readonly standardDeviation: Length;
  readonly degreesOfFreedom: number;
  /** Its 95 % interval by chi-square; undefined where the resolution hides the scatter. */
  readonly interval: { readonly low: Length; readonly high: Length } | undefined;
  /** Standard uncertainty to reckon with for one reading: s and the resolution together. */
  readonly readingUncertainty: Length;
  /** Whether the step read off is too coarse to show the scatter. */
  readonly resolutionLimited: boolean;
  /** Whether the stated repeatability lies within the interval; undefined where none is stated or no interval given. */
  readonly asStated: boolean | undefined;
  /** Change from one reading to the next by a straight line, and its chance without drift; undefined where limited. */
  readonly drift:
    | { readonly perReading: Measured<Length>; readonly chance: number; readonly real: boolean }
    | undefined;
  readonly text: string;
  readonly warnings: readonly string[];
}

/** Two instruments, or two people, at the same places. */
export interface InstrumentComparison {
  readonly kind: "instrument comparison";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly first: string;
  readonly second: string;
  readonly count: number;
  /** Mean of second less first. */
  readonly bias: Measured<Length>;
  /** Chance of so large a bias where there is none (paired t). */
  readonly chance: number;
  readonly biased: boolean;
  /** Standard deviation of the differences, n − 1. */
  readonly standardDeviation: Length;
  /** Bias ± 1.96 s: where 95 of 100 single differences lie, the scatter taken as known. */
  readonly limits: { readonly low: Length; readonly high: Length };
  /**
   * Pitman–Morgan: spread of second over spread of first, and its chance where both scatter alike; undefined where
   * one does not scatter, or both lie on one line.
   */
  readonly spread: { readonly ratio: number; readonly chance: number; readonly differs: boolean } | undefined;
  readonly text: string;
  readonly warnings: readonly string[];
}

/** The line of an instrument's error against its reading. */
export interface CalibrationLine {
  readonly kind: "calibration line";
  readonly title: string;
  /** The instrument that read the gauges; undefined where the table names none. */
  readonly instrument: Instrument | undefined;
  readonly unitSystem: UnitSystem;
  /** Error (reading less reference) against reading, both in metres. */
  readonly line: LineFit;
  readonly count: number;
  readonly from: Length;
  readonly to: Length;
  /** Standard uncertainty that all references share. */
  readonly common: Length;
  /** Error at the lowest, middle and highest reading, with what to take off. */
  readonly corrections: readonly CorrectedReading[];
  readonly text: string;
  readonly warnings: readonly string[];
}

export interface CorrectedReading {
  readonly kind: "corrected reading";
  readonly reading: Length;
  /** Reading less reference, by the line. */
  readonly error: Measured<Length>;
  /** Reading less error. */
  readonly value: Measured<Length>;
  readonly warnings: readonly string[];
}

/** Whether an instrument can settle a question. */
export interface InstrumentVerdict {
  readonly kind: "instrument verdict";
  readonly instrument: Instrument;
  readonly outcome: "yes" | "no" | "cannot tell yet";
  readonly unitSystem: UnitSystem;
  /** Standard uncertainty of the result with the readings asked. */
  readonly standardUncertainty: Length;
  /** Standard uncertainty of one reading, and whether a study of this instrument found it or rebuild.json states it. */
  readonly readingUncertainty: Length;
  readonly from: "study" | "statement";
  /** Of the standard uncertainty; infinite where the repeatability is stated [-]. */
  readonly degreesOfFreedom: number;
  /** k of the guard band: 2, or more for few degrees of freedom [-]. */
  readonly coverageFactor: number;
  /** Expanded, U = k u: the guard band of ISO 14253-1. */
  readonly guardBand: Length;
  /** Test uncertainty ratio: half the tolerance, or the margin, over the guard band [-]. */
  readonly ratio: number;
  /** Chance that the reading, when it is taken, gives a clear answer; undefined for a tolerance. */
  readonly clear: number | undefined;
  /** Independent readings that would be enough; undefined where no number is. */
  readonly readingsNeeded: number | undefined;
  readonly text: string;
  readonly because: string;
  readonly warnings: readonly string[];
}
