import type { Material } from "../../handbook/index.js";
import type {
  Angle,
  Density,
  Force,
  Length,
  Mass,
  Pressure,
  Quantity,
  Torque,
} from "../../quantity/index.js";
import type { MaybeMeasured } from "../carried/carried-input.js";

/** A stretch of shaft of one diameter. */
export interface ShaftStretch {
  readonly from: Length;
  readonly to: Length;
  /** DIAMETER. */
  readonly diameter: MaybeMeasured<Length>;
  /** DIAMETER of a bore; default none. */
  readonly bore?: Length;
}

/** What is put on over the shaft and has weight, but bears nothing: a sleeve, a deposit, a coupling. */
export interface ShaftSleeve {
  readonly from: Length;
  readonly to: Length;
  /** Outside DIAMETER. */
  readonly diameter: Length;
  /** Default that of the shaft. */
  readonly density?: Density;
}

/** A bearing. */
export interface ShaftSupport {
  readonly name: string;
  /** The middle of the bearing. */
  readonly at: Length;
  /** Of box and foundation, both ways alike or each by itself; default stiff. */
  readonly stiffness?:
    | Quantity<"stiffness or line load">
    | {
        readonly horizontal: Quantity<"stiffness or line load">;
        readonly vertical: Quantity<"stiffness or line load">;
      };
}

/** What turns with the shaft: weight, and what resists being tilted. */
export interface MountedWheel {
  readonly name: string;
  readonly at: Length;
  readonly mass: MaybeMeasured<Mass>;
  /** About the shaft's axis; about a diameter, default half of it (a thin wheel). Without it a mass at a point. */
  readonly polarInertia?: MaybeMeasured<Quantity<"moment of inertia">>;
  readonly diametralInertia?: MaybeMeasured<Quantity<"moment of inertia">>;
}

/** A force that stands still while the shaft turns. */
export interface ShaftPull {
  readonly name: string;
  readonly at: Length;
  readonly force: MaybeMeasured<Force>;
  /** Seen from the end where the stations begin: from the right, counter-clockwise; up is 90°, down 270°. */
  readonly direction: Angle;
}

/** Torque that a stretch carries, from the wheel that brings it to the one that takes it. */
export interface ShaftTorque {
  readonly name?: string;
  readonly from: Length;
  readonly to: Length;
  readonly torque: MaybeMeasured<Torque>;
}

/** What a shaft's steel is to its bending: of the handbook, or the two figures themselves. */
export interface ShaftElasticity {
  readonly modulus: MaybeMeasured<Pressure>;
  readonly density: Density;
  /** Poisson's ratio [-], default 0.3; counts for shear alone. */
  readonly poisson?: number;
}

/** A shaft as it stands in its bearings under its loads. */
export interface ShaftModel {
  /** Along the whole shaft, each beginning where the last ends. */
  readonly stretches: readonly ShaftStretch[];
  readonly sleeves?: readonly ShaftSleeve[];
  readonly material: Material | ShaftElasticity;
  /** Two or more. */
  readonly supports: readonly ShaftSupport[];
  readonly wheels?: readonly MountedWheel[];
  readonly pulls?: readonly ShaftPull[];
  readonly torques?: readonly ShaftTorque[];
  /** Whether the shaft's own weight is counted; default true. */
  readonly ownWeight?: boolean;
  /** Whether it gives by shear too (Timoshenko); default false (Euler-Bernoulli). */
  readonly shear?: boolean;
}
