import type { Length, Measured, UnitSystem } from "../quantity/index.js";
import type { NextReading } from "./next-readings-types.js";

/** One result of a survey with all that is asked of a measurement. */
export interface SurveyReportRow {
  /** What was measured, in words. */
  readonly what: string;
  readonly about: "depth" | "diameter" | "edge" | "taper";
  /** Depths and diameters on diameter, at 20 °C; an edge is a place along the shaft; a taper is diameter for length. */
  readonly value: Measured<Length> | Measured<number>;
  /** The 95 % interval of an edge, which is no value ± U; else undefined. */
  readonly between: { readonly low: Length; readonly high: Length } | undefined;
  /** From which readings. */
  readonly from: string;
  /** The largest line of its budget, and its share of the variance [-]. */
  readonly mostly: string;
  readonly share: number;
  /** The reading that would narrow it most; undefined where none would be worth taking. */
  readonly next: NextReading | undefined;
  /** What to do where no reading helps; "" where one does. */
  readonly instead: string;
}

/** A survey as a measurement report: every result with its interval, what its budget hangs on, and what to read next. */
export interface SurveyReport {
  readonly kind: "survey report";
  readonly title: string;
  readonly file: string;
  readonly unitSystem: UnitSystem;
  /** What was read, with what, and how it was brought to 20 °C: a sentence each. */
  readonly how: readonly string[];
  readonly rows: readonly SurveyReportRow[];
  readonly warnings: readonly string[];
}
