import type { Force, Length, TemperatureDifference } from "../quantity/index.js";
import type { RigPart } from "./rig-types.js";
import type { Spread } from "./spread.js";

/** One way to get a hub off, as computed: its figures, and what it would break. */
export interface ReleaseOption {
  readonly name: string;
  readonly figures: Readonly<Record<string, Force | Length | TemperatureDifference | number | string>>;
  /** Limits it violates, in words; empty where it violates none. */
  readonly breaks: readonly string[];
}

/** Whether a hub comes off with a rig, cold or with heat. */
export interface Release {
  readonly kind: "release";
  /** To press it off cold. */
  readonly pressOff: Spread<Force>;
  readonly rating: Force;
  readonly weakest: RigPart;
  /** Share of the cases in which the rig's rating presses it off cold [-]. */
  readonly chanceCold: number;
  readonly cold: "yes" | "no" | "cannot tell yet";
  /**
   * How much warmer than the shaft the hub must be so that the rating will do: 0 where it does cold. Its middle and
   * high end, for the middle and the tightest case.
   */
  readonly warmer: { readonly middle: TemperatureDifference; readonly high: TemperatureDifference };
  /** What may be left of the interference, on diameter, in the tightest case with the rig at its rating. */
  readonly interferenceLeft: Length;
  /** Press cold, press and heat, heat alone: what each asks for and what it breaks. */
  readonly options: readonly ReleaseOption[];
}
