import type { Angle, Length, Measured } from "../quantity/index.js";

/** A standard taper of the handbook that a measured one may be. */
export interface TaperMatch {
  /** e.g. "Morse 3", "1 1/2 in per foot", "1:10". */
  readonly name: string;
  /** Diameter change per length [-]. */
  readonly taper: number;
  /** Measured minus standard [-]. */
  readonly difference: number;
  /** The same over the standard uncertainty of the measured taper. */
  readonly differenceInU: number;
  /** Misfit over the measured length, on diameter. */
  readonly misfit: Length;
  readonly agrees: boolean;
  /** Whether the diameters read lie between the standard's ends; undefined for a standard without a size. */
  readonly sizeFits?: boolean | undefined;
  readonly source: string;
}

export interface TaperIdentity {
  readonly kind: "taper identity";
  /** Sorted, nearest first. */
  readonly matches: readonly TaperMatch[];
  /** One sentence: which standard tapers the readings allow, or none. */
  readonly text: string;
}

/** What to dial in to cut a taper's mate, each with its uncertainty. */
export interface TaperSetting {
  readonly kind: "taper setting";
  readonly taper: Measured<number>;
  /** Compound (top) slide swung from the axis by the half angle. */
  readonly compoundAngle: Measured<Angle>;
  /** Taper attachment scale: diameter per foot, and per cent; it does not depend on the work's length. */
  readonly attachmentPerFoot: Measured<Length>;
  /** Tailstock set-over for the whole length between centres; undefined when that is not given. */
  readonly tailstockSetOver: Measured<Length> | undefined;
  readonly betweenCentres: Length | undefined;
  /** Indicator against the flank (across the axis): rise for each travel along it. */
  readonly indicator: readonly { readonly travel: Length; readonly rise: Measured<Length> }[];
  /** Gauge-block stack under a sine bar set to the included angle (parts held between flats, wedge of flank to flank). */
  readonly sineBar: { readonly barLength: Length; readonly stack: Measured<Length> } | undefined;
  /** Axial draw-up for each thousandth of an inch (or 10 µm) on diameter. */
  readonly drawUp: { readonly onDiameter: Length; readonly axial: Measured<Length> };
  readonly warnings: readonly string[];
}
