import type { Angle, Length, Mass, Measured, UnitSystem } from "../quantity/index.js";
import type { Lift, LiftVerdict } from "./lift-types.js";

/** How a part is taken up. */
export type Slinging =
  | "one leg"
  | "two along"
  | "two across"
  | "one person"
  | "two persons"
  | "three persons";

/** One lift: a part, or several in one piece, with its mass, its centre and what takes it up. */
export interface PlannedLift {
  /** As the table writes it: "shaft + second pulley". */
  readonly what: string;
  readonly parts: readonly string[];
  readonly mass: Measured<Mass>;
  readonly massIs: "reckoned" | "weighed";
  /** Along the axis; undefined where the part is not in the table of pieces. */
  readonly centre: Measured<Length> | undefined;
  readonly sling: Slinging;
  /** In the gear; undefined for a lift by hand, and where the slings cannot hold it level. */
  readonly lift: Lift | undefined;
  /** The most that so many people may lift, at best; undefined in the gear. */
  readonly handLimit: Mass | undefined;
  /** How far it leans at most, 95 % one-sided; undefined where two legs along the shaft hold it, or nothing is known. */
  readonly lean: Angle | undefined;
  /** The most it may weigh, 95 % one-sided. */
  readonly most: Mass;
  readonly verdict: LiftVerdict;
  /** What speaks against it, each a sentence without its full stop. */
  readonly against: readonly string[];
  readonly remark: string;
  readonly line: number;
}

/** How every part is lifted. */
export interface LiftPlan {
  readonly kind: "lift plan";
  readonly title: string;
  /** In the order of the table. */
  readonly lifts: readonly PlannedLift[];
  readonly hookTag: Mass;
  /** The worst of all lifts. */
  readonly verdict: LiftVerdict;
  /** Parts of the ledger of which nobody has said how they are lifted. */
  readonly unsaid: readonly string[];
  readonly unitSystem: UnitSystem;
}
