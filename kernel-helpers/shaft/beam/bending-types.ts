import type { Angle, Force, Length, Measured, Torque } from "../../quantity/index.js";

/** What the shaft carries and how it lies at a station. */
export interface BendingStation {
  readonly station: Length;
  /** DIAMETER and bore that carry: at a step those of the smaller side. */
  readonly diameter: Length;
  readonly bore: Length | undefined;
  /** Resultant of both planes, ≥ 0. */
  readonly moment: Measured<Torque>;
  readonly torque: Measured<Torque>;
  /** Resultant just behind the station. */
  readonly shear: Measured<Force>;
  /** Resultant, ≥ 0, and by plane: to the right and up. */
  readonly deflection: Measured<Length>;
  readonly horizontal: Length;
  readonly vertical: Length;
  /** Resultant lean of the axis [-], ≥ 0. */
  readonly slope: Measured<number>;
  /** Moment by plane, with sign. */
  readonly horizontalMoment: Torque;
  readonly verticalMoment: Torque;
}

/** What a bearing bears. */
export interface SupportReaction {
  readonly name: string;
  readonly station: Length;
  /** Of the bearing on the shaft, resultant. */
  readonly reaction: Measured<Force>;
  /** Where that points: seen from the end where the stations begin, from the right, counter-clockwise. */
  readonly direction: Angle;
  /** The shaft presses the other way. */
  readonly loadDirection: Angle;
  readonly slope: Measured<number>;
  readonly deflection: Measured<Length>;
}

/** A load as it is drawn. */
export interface ShownLoad {
  readonly name: string;
  readonly station: Length;
  readonly force: Force;
  readonly direction: Angle;
}

/** How much of the doubt in the largest moment comes from where. */
export interface BendingShare {
  readonly source: string;
  /** Share of the variance [-]. */
  readonly share: number;
}

/** A shaft bent by its loads. */
export interface ShaftBending {
  readonly kind: "shaft bending";
  /** What was counted, in words. */
  readonly loadCase: readonly string[];
  readonly stations: readonly BendingStation[];
  readonly supports: readonly SupportReaction[];
  /** Wheels and pulls, with how the shaft lies there. */
  readonly loads: readonly (ShownLoad & {
    readonly deflection: Measured<Length>;
    readonly slope: Measured<number>;
  })[];
  readonly largestMoment: BendingStation;
  readonly largestDeflection: BendingStation;
  /** Of the largest moment, the largest first. */
  readonly shares: readonly BendingShare[];
  /** The outline: what carries, and what the shaft wears. */
  readonly outline: readonly {
    readonly from: Length;
    readonly to: Length;
    readonly diameter: Length;
    readonly carries: boolean;
  }[];
  readonly warnings: readonly string[];
}
