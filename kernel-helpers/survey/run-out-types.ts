import type { Angle, Length, Measured, UnitSystem } from "../quantity/index.js";

/** A place beside the line of centres: how far, ON RADIUS, and in which direction of the shaft. */
export interface OffCentre {
  readonly distance: Measured<Length>;
  readonly direction: Measured<Angle>;
  /** Chance that noise gives so much [-]. */
  readonly chance: number;
  /** Whether that chance is below 1 %; of the low sides, whether it is so small among those of all stations. */
  readonly real: boolean;
}

/** What the indicator says at one station. */
export interface RunOutStation {
  readonly station: Length;
  readonly readingCount: number;
  /** Total indicator reading: largest less smallest, as read. Of an eccentricity alone it is twice that. */
  readonly tir: Length;
  /** Centre of the surface (least-squares circle) against the line of centres, on radius: first harmonic. */
  readonly centre: OffCentre;
  /** What is left without it: out of round, peak to valley on radius. */
  readonly outOfRound: Length;
  /** Where the shaft's axis lies here by offset and bend together, on radius; undefined where no axis is known. */
  readonly axis: OffCentre | undefined;
  /** Centre of the surface against that axis: one-sided wear or a surface turned out of true; towards the high side. */
  readonly offAxis: OffCentre | undefined;
  /** Which side is low, half a turn from that direction; undefined where nothing stands out. */
  readonly lowSide: Measured<Angle> | undefined;
  /** By how much it lies lower than the side opposite, on radius: twice the distance of offAxis. */
  readonly lower: Measured<Length> | undefined;
}

/** Run-out of a shaft between centres, split into what makes it. Distances ON RADIUS; only `tir` is a total reading. */
export interface RunOut {
  readonly kind: "run-out";
  readonly title: string;
  readonly file: string;
  readonly unitSystem: UnitSystem;
  readonly setUp: "between centres";
  readonly stations: readonly RunOutStation[];
  /** The straight part: the axis against the line of centres where the bow ends, at the centre holes or the first and last station. */
  readonly offset:
    | { readonly first: OffCentre; readonly last: OffCentre; readonly from: Length; readonly to: Length }
    | undefined;
  /** Height of the bow in the middle over the straight line through its ends, on radius. */
  readonly bend: OffCentre | undefined;
  /** Stations the axis was found from. */
  readonly axisFrom: readonly Length[];
  /** Whether worn bands were left out of the axis. */
  readonly wornLeftOut: boolean;
  /** Scatter of the surface's centres about the axis over the stated uncertainty; undefined with nothing left over. */
  readonly noiseRatio: number | undefined;
  readonly text: string;
  readonly warnings: readonly string[];
}
