import type { Length, Mass, Measured, Quantity, UnitSystem } from "../quantity/index.js";
import type { SolidShape } from "./solid.js";

export type MomentOfInertia = Quantity<"moment of inertia">;

/** One simple body of a part. */
export interface PieceMass {
  readonly piece: string;
  readonly shape: SolidShape;
  /** How many of it there are. */
  readonly count: number;
  readonly material: string;
  /** Of all of them together. */
  readonly mass: Measured<Mass>;
}

/** What a part weighs, where it hangs level, and how it resists being turned. */
export interface PartMass {
  readonly part: string;
  readonly mass: Measured<Mass>;
  /** Centre of mass along the axis, from the zero of the column `along`. */
  readonly centre: Measured<Length>;
  /** About the axis of the shaft. */
  readonly inertia: Measured<MomentOfInertia>;
  readonly pieces: readonly PieceMass[];
}

/** Masses of the parts of a machine, reckoned from their sizes. */
export interface Masses {
  readonly kind: "masses";
  readonly title: string;
  /** In the order of the table. */
  readonly parts: readonly PartMass[];
  /** Of all parts together. */
  readonly mass: Measured<Mass>;
  readonly centre: Measured<Length>;
  readonly inertia: Measured<MomentOfInertia>;
  readonly unitSystem: UnitSystem;
  readonly warnings: readonly string[];
}
