import type { Babbitt } from "../../handbook/index.js";
import type {
  Angle,
  Area,
  Force,
  Length,
  Mass,
  Measured,
  Quantity,
  Temperature,
  TemperatureDifference,
  Time,
  Volume,
} from "../../quantity/index.js";
import type { Joint } from "./joints-to-load.js";

/** What a box is poured from and round. */
export interface PourOptions {
  /** Name of the box. */
  readonly name: string;
  readonly alloy: Babbitt;
  /** Diameter of the journal as it will run. */
  readonly journal: Measured<Length>;
  /** DIAMETRAL: bore less journal, when finished. */
  readonly clearance: Length;
  /** What scraping or boring is to take off, on DIAMETER. */
  readonly allowance: Length;
  /** Bore of the iron shell. */
  readonly shellBore: Length;
  /** Of the lining, along the shaft. */
  readonly length: Length;
  /** Standard uncertainty of the shell's bore and length, as rough castings are; left out, none is told of the metal. */
  readonly castingUncertainty?: Length;
  /** Iron that is warmed with the lining: shell, without what stands far off. */
  readonly shellMass: Mass;
  /** Holes or dovetails that hold the metal: how many, their mouth and depth. */
  readonly anchors: { readonly count: number; readonly mouth: Area; readonly depth: Length };
  /** Strip between the halves that keeps them apart, both sides; its thickness. */
  readonly shims: Length;
  /** Head of metal above the lining that feeds it while it shrinks. */
  readonly riser: { readonly diameter: Length; readonly height: Length };
  /** Share of the melt lost to dross, ladle and dams [-]. */
  readonly loss: number;
  /** Of the shell just before the pour. */
  readonly shellPreheat: Temperature;
  /** Of the mandrel just before the pour. */
  readonly mandrelPreheat: Temperature;
  /** In the ladle; default the alloy's own. */
  readonly pouring?: Temperature;
  readonly shop: Temperature;
  /** Where the load presses on the lining: from straight down, counter-clockwise as seen from the end drawn. */
  readonly loadAt: Angle;
  /** How long the pour takes, from the first drop to full. */
  readonly fillTime: Time;
}

/** One stage of a lining as it gives its heat to shell and mandrel. */
export interface Chill {
  /** Heat that a square metre of contact takes over for a kelvin. */
  readonly contact: Quantity<"heat transfer coefficient">;
  /** Until it begins to freeze. */
  readonly beginsToFreeze: Time;
  /** Until it no longer runs, a third of it frozen. */
  readonly stopsRunning: Time;
  /** Until all of it is solid; undefined where shell and mandrel cannot take so much heat. */
  readonly solid: Time | undefined;
}

/** What a pour needs, and whether it will fill. */
export interface PourPlan {
  readonly kind: "pour plan";
  readonly name: string;
  readonly alloy: Babbitt;
  readonly journal: Measured<Length>;
  /** DIAMETRAL. */
  readonly clearance: Length;
  readonly allowance: Length;
  readonly finishedBore: Length;
  /** Diameter to turn the mandrel to, measured cold. */
  readonly mandrel: Length;
  /** Bore as it will be found, cold: held by the shell (largest), free of it (least). */
  readonly castBore: { readonly least: Length; readonly largest: Length };
  /** To take off, on DIAMETER, at the least and at the most. */
  readonly toTakeOff: { readonly least: Length; readonly most: Length };
  /** Of the lining, at the radius. */
  readonly wall: Length;
  readonly shellBore: Length;
  readonly length: Length;
  readonly shims: Length;
  readonly riser: { readonly diameter: Length; readonly height: Length };
  readonly volumes: {
    readonly lining: Volume;
    readonly anchors: Volume;
    readonly riser: Volume;
    readonly whole: Volume;
  };
  /** In the finished casting with its riser. */
  readonly mass: Mass;
  /** To put into the pot. */
  readonly toMelt: Mass;
  /** Standard, of what is to be melted: by the rough castings; undefined where they are not told. */
  readonly toMeltUncertainty: Mass | undefined;
  readonly shellPreheat: Temperature;
  readonly mandrelPreheat: Temperature;
  readonly pouring: Temperature;
  /** Hotter burns the metal, colder leaves cold shuts, by more than this off the alloy's own. */
  readonly pouringWithin: TemperatureDifference;
  readonly shop: Temperature;
  readonly loadAt: Angle;
  /** Right and left, as seen from the end drawn, and which of them may be grooved. */
  readonly joints: readonly [Joint, Joint];
  readonly fillTime: Time;
  /** With good and with poor contact. */
  readonly chill: { readonly quick: Chill; readonly slow: Chill };
  /** Where metal, shell and mandrel would meet if they kept all heat. */
  readonly meets: Temperature;
  readonly verdict: "fills" | "cannot tell yet" | "freezes before it fills";
  readonly because: string;
  /** Lift of the metal's pressure on a mandrel lying level: it floats up if it is not held. */
  readonly lift: Force;
  readonly warnings: readonly string[];
}
