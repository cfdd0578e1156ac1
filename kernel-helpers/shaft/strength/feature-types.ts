import type { Length } from "../../quantity/index.js";

/**
 * The radius of a corner: measured, or by name the assumption that it is sharp, where nobody could measure it. A
 * sharp corner is reckoned with published first estimates and no relief for the steel's notch sensitivity.
 */
export type CornerRadius = Length | "sharp corner";

/** What disturbs the flow of stress at a place of a shaft. The diameter itself is the place's. */
export type ShaftFeature =
  /** A plain cylinder, no hub on it. */
  | { readonly shape: "plain" }
  /** A step: the place is the smaller diameter, `larger` the one beside it. */
  | { readonly shape: "shoulder"; readonly larger: Length; readonly fillet: CornerRadius }
  /** A groove all round: the place is the diameter at its floor, `outside` that of the shaft. */
  | { readonly shape: "groove"; readonly outside: Length; readonly radius: Length }
  /**
   * An empty keyseat, or one whose hub slides: the place is the whole diameter. End-milled seats end in a half round
   * seen from above, sled-runner seats run out on the cutter's circle.
   */
  | {
      readonly shape: "keyseat";
      readonly ends: "end-milled" | "sled-runner";
      /** Radius where the seat's floor meets its sides. */
      readonly corner: CornerRadius;
    }
  /** A hole across the shaft, through its axis: the place is the whole diameter. */
  | { readonly shape: "transverse hole"; readonly hole: Length }
  /** A hub pressed or shrunk on, without a key: the place is where the hub begins. */
  | { readonly shape: "press-fitted hub" }
  /** A hub on a key: the place is where the hub begins. Two keys where `keys` is 2. */
  | { readonly shape: "keyed hub"; readonly keys?: 1 | 2 };

/** A point of a feature where stress peaks. */
export interface StressPeak {
  readonly at: string;
  /** Largest stress over the nominal one of the place's diameter, in bending and in torsion [-]. */
  readonly bending: number;
  readonly torsion: number;
  /** The radius that decides the notch sensitivity; undefined where the factor is to be taken in full. */
  readonly radius: Length | undefined;
}

/** How much a place's feature raises the stress. */
export interface StressConcentration {
  readonly kind: "stress concentration";
  readonly feature: ShaftFeature;
  readonly diameter: Length;
  readonly peaks: readonly StressPeak[];
  /**
   * The factors are of fatigue tests (K_f), with the steel's sensitivity in them; otherwise they are of the elastic
   * shape (K_t).
   */
  readonly fromFatigueTests: boolean;
  /** Relative standard uncertainty of the fatigue factor that comes of it [-]. */
  readonly relativeUncertainty: number;
  /** Where the numbers hold, in words. */
  readonly range: string;
  readonly source: string;
  readonly warnings: readonly string[];
}
