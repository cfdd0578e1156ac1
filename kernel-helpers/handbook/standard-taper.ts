import type { Length } from "../quantity/index.js";

/** A taper that stands in a published table or follows from a published rule. */
export interface StandardTaper {
  /** What the trade calls it, e.g. "Morse 3", "1 1/2 in per foot", "1:10". */
  readonly name: string;
  readonly family: "Morse" | "Brown & Sharpe" | "Jarno" | "per foot" | "ratio";
  /** Diameter change per length along the axis [-]; radius changes half as fast. */
  readonly taper: number;
  /** Diameters of the table at its two ends, and the axial length between them; undefined for a bare ratio. */
  readonly largeEnd: Length | undefined;
  readonly smallEnd: Length | undefined;
  readonly length: Length | undefined;
  /** Where the taper is published. */
  readonly source: string;
}
