import {
  type Angle,
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import { harmonicOf } from "../../statistics/index.js";
import { type Complex, direction, size } from "./complex.js";

/** Mass times radius, and where it lies on the rotor. */
export interface UnbalanceVector {
  readonly amount: Quantity<"mass unbalance">;
  /** Counted on the rotor, as in the tables. */
  readonly angle: Angle;
}

/** The same with its uncertainty. */
export interface MeasuredUnbalance {
  readonly amount: Measured<Quantity<"mass unbalance">>;
  readonly angle: Measured<Angle>;
}

/** Variances and covariance of the two components of a vector [unit²]. */
export interface VectorCovariance {
  readonly re: number;
  readonly im: number;
  readonly both: number;
}

/** A quantity of mass times radius [kg·m], shown in the units of the bench. */
export function unbalanceIn(si: number, units: UnitSystem): Quantity<"mass unbalance"> {
  return quantityFromSi("mass unbalance", si, units === "inch" ? "ounceInch" : "gramMillimetre");
}

/** A direction on the rotor, in degrees [rad]. */
export function angleIn(si: number): Angle {
  return quantityFromSi("angle", si, "degree");
}

/** An unbalance as a vector [kg·m]. */
export function vectorOf({ amount, angle }: UnbalanceVector): Complex {
  return { re: amount.si * Math.cos(angle.si), im: amount.si * Math.sin(angle.si) };
}

/** A vector [kg·m] as an unbalance, to be shown in the units of the bench. */
export function unbalanceOf(vector: Complex, units: UnitSystem): UnbalanceVector {
  return Object.freeze({ amount: unbalanceIn(size(vector), units), angle: angleIn(direction(vector)) });
}

/** A vector [kg·m] with its covariance as an unbalance with uncertainty, to first order. */
export function measuredUnbalance(
  vector: Complex,
  covariance: VectorCovariance,
  degreesOfFreedom: number,
  units: UnitSystem,
): MeasuredUnbalance {
  const wave = harmonicOf(
    1,
    vector.re,
    vector.im,
    { cosine: covariance.re, sine: covariance.im, both: covariance.both },
    degreesOfFreedom,
  );
  return Object.freeze({
    amount: measured(
      unbalanceIn(wave.amplitude, units),
      unbalanceIn(wave.uAmplitude, units),
      degreesOfFreedom,
    ),
    angle: measured(angleIn(direction(vector)), angleIn(wave.uPhase), degreesOfFreedom),
  });
}
