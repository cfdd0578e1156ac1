import type {
  Angle,
  Density,
  Force,
  Length,
  Mass,
  Measured,
  Quantity,
  Torque,
} from "../../quantity/index.js";
import type { ShaftSupport } from "../beam/index.js";
import type { BeltPulls } from "../belt/index.js";
import type { ShaftDuty, ShaftFeature, SurfaceFinish } from "../strength/index.js";

/** A box that carries the shaft. */
export interface ShaftBox {
  readonly name: string;
  /** Stations of its journal's ends. */
  readonly from: Length;
  readonly to: Length;
  /** Of box and foundation; default stiff. Counts for the bend and the critical speeds, not for what two boxes bear. */
  readonly stiffness?: NonNullable<ShaftSupport["stiffness"]>;
}

/** A wheel on the shaft, with the belt that runs on it. */
export interface ShaftWheel {
  readonly name: string;
  readonly station: Length;
  readonly mass: Mass | Measured<Mass>;
  /** With its direction: `towards` given to `beltPulls`, seen from where the stations begin. */
  readonly belt: BeltPulls;
  /** How well the direction of its pull is known: standard uncertainty; default exactly. */
  readonly aim?: Angle;
  /** About the shaft's axis, for the gyroscopic moment; without it a mass at a point. */
  readonly polarInertia?: Quantity<"moment of inertia"> | Measured<Quantity<"moment of inertia">>;
}

/** The shaft itself as a load: an even bar. */
export interface OwnWeight {
  readonly from: Length;
  readonly to: Length;
  /** DIAMETER. */
  readonly diameter: Length;
  readonly density: Density;
}

/** A place that is as strong as it is whatever is done with the journals: a seat, a keyway, the end of a taper. */
export interface ShaftSeat {
  readonly name: string;
  readonly station: Length;
  readonly diameter: Measured<Length>;
  readonly feature: ShaftFeature;
  readonly surface?: SurfaceFinish;
}

/** How a shaft is carried, loaded and made: a load case. */
export interface ShaftCase {
  /** In words, for the record: "12 hp, all through the second pulley". */
  readonly loadCase: string;
  /** Two, in the order of their stations. */
  readonly boxes: readonly ShaftBox[];
  /** At least one; torque runs between the first and the last of them. */
  readonly wheels: readonly ShaftWheel[];
  /** Without it the shaft weighs nothing. */
  readonly ownWeight?: OwnWeight;
  readonly seats: readonly ShaftSeat[];
  readonly duty: ShaftDuty;
}

/** What the loads make at one place. */
export interface PlaceLoaded {
  readonly name: string;
  readonly station: Length;
  /** Bending moment of loads that stand still: reversed at every turn. */
  readonly moment: Measured<Torque>;
  readonly torque: Measured<Torque>;
}

/** What presses on each box, and what bends the shaft where it matters. */
export interface ShaftLoads {
  readonly kind: "shaft loads";
  readonly loadCase: string;
  readonly boxes: readonly {
    readonly name: string;
    readonly force: Measured<Force>;
    /** Towards which side the journal is pressed: from straight down, counter-clockwise seen from where stations begin. */
    readonly direction: Angle;
  }[];
  readonly places: readonly PlaceLoaded[];
}
