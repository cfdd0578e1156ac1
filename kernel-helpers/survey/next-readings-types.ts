import type { Angle, Length, UnitSystem } from "../quantity/index.js";

/** What is to be decided. */
export type NextReadingsQuestion =
  /** Where a band ends: edge 1 lies between band 1 and band 2; default the edge known worst. */
  | { readonly about: "edge"; readonly edge?: number }
  /** How deep a band is worn, on diameter; default the band worn deepest. */
  | { readonly about: "depth"; readonly band?: number }
  /** How steep a taper is. */
  | { readonly about: "taper" }
  /** Whether the smallest diameter keeps a limit; default the limit of the wear bands, and the band that is least clear. */
  | { readonly about: "limit"; readonly limit?: Length; readonly band?: number };

/** One place to read, and what it would bring. */
export interface NextReading {
  readonly station: Length;
  /** The angles to read there; empty where the survey gives none. */
  readonly angles: readonly Angle[];
  /** Standard uncertainty after it is read once, and after three times: each time all its angles. */
  readonly afterOne: Length | number;
  readonly afterThree: Length | number;
  /** Share of the standard uncertainty that one more reading takes away [-]. */
  readonly gain: number;
  /** For a limit: probability that the verdict is clear after one, and after three; else undefined. */
  readonly clearAfterOne: number | undefined;
  readonly clearAfterThree: number | undefined;
  readonly reason: string;
}

/** A corner of the outline of a shaft as surveyed. */
export interface OutlinePoint {
  readonly station: Length;
  /** By the fit, at 20 °C. */
  readonly diameter: Length;
}

/** Where to read next, the best place first. Stations and angles are the marks for a figure. */
export interface NextReadings {
  readonly kind: "next readings";
  readonly title: string;
  readonly unitSystem: UnitSystem;
  readonly about: NextReadingsQuestion["about"];
  /** The question in words, e.g. "where band 1 ends and band 2 begins". */
  readonly question: string;
  /** Standard uncertainty now: of a place or a diameter [m], of a taper [-]. */
  readonly before: Length | number;
  readonly readings: readonly NextReading[];
  /** The shaft as surveyed, for the figure: both ends of each band, or of the taper, along the shaft. */
  readonly outline?: readonly OutlinePoint[];
  readonly text: string;
  readonly warnings: readonly string[];
}
