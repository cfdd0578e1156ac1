import type {
  Computed,
  Measured,
  Product,
  Quantity,
  Quotient,
  SquareRoot,
  UnitOf,
} from "../../quantity/index.js";
import type { Plain } from "./plain-value.js";
import type { Source } from "./source.js";

/**
 * A value that knows what its uncertainty came from: value, standard uncertainty, degrees of freedom, and the
 * derivative with respect to each named source. So correlation counts: `x.minus(x)` has no uncertainty, and
 * `a.plus(b).minus(a)` exactly that of b. `Uncertain<"length">` is a length, `Uncertain<"number">` a plain
 * number.
 *
 * Each operation carries the derivatives along exactly; the uncertainty is linear in them (first order).
 * Quantities and plain numbers mix in as exact values. Every method throws as that of a quantity does, and
 * for a value where the function or its derivative is not defined a RangeError.
 *
 * @source JCGM 100:2008 (GUM), 5.1.2 and 5.2.2
 */
export interface Uncertain<K extends string> extends AnyUncertain {
  readonly dimension: K;
  readonly value: Computed<K>;
  readonly standardUncertainty: Computed<K>;
  /** The sum of two of a kind. */
  plus(other: Uncertain<K> | Computed<K>): Uncertain<K>;
  /** The difference of two of a kind. */
  minus(other: Uncertain<K> | Computed<K>): Uncertain<K>;
  /** The product with a number, a quantity, or another uncertain value. */
  times(factor: number): Uncertain<K>;
  times<J extends string>(factor: Uncertain<J> | Quantity<J>): Uncertain<Product<K, J>>;
  /** The quotient by a number, a quantity, or another uncertain value. */
  over(divisor: number): Uncertain<K>;
  over<J extends string>(divisor: Uncertain<J> | Quantity<J>): Uncertain<Quotient<K, J>>;
  /** The square root of a value above 0, e.g. of an area, as a length. */
  squareRoot(): Uncertain<SquareRoot<K>>;
  /** The size without sign, of a value that is not 0. */
  absolute(): Uncertain<K>;
  /** Sine, of an angle or a number of radians. */
  sin(this: Uncertain<"angle"> | Uncertain<"number">): Uncertain<"number">;
  cos(this: Uncertain<"angle"> | Uncertain<"number">): Uncertain<"number">;
  tan(this: Uncertain<"angle"> | Uncertain<"number">): Uncertain<"number">;
  /** The angle whose sine this is, of a number between −1 and 1. */
  asin(this: Uncertain<"number">): Uncertain<"angle">;
  /** The angle whose tangent this is. */
  atan(this: Uncertain<"number">): Uncertain<"angle">;
  /** e to the power of this number. */
  exp(this: Uncertain<"number">): Uncertain<"number">;
  /** The natural logarithm of a number above 0. */
  log(this: Uncertain<"number">): Uncertain<"number">;
  /** A number above 0 to a power; with a whole, exact power any number (but 0 to one below 1). */
  power(this: Uncertain<"number">, exponent: number | Uncertain<"number">): Uncertain<"number">;
  /** The same, shown in this unit of its kind. */
  as(unit: UnitOf<K>): Uncertain<K>;
  /** Value, standard uncertainty and degrees of freedom as plain data for a record. */
  toMeasured(): Measured<Computed<K>>;
}

/** What every uncertain value has, of whatever kind. */
export interface AnyUncertain {
  readonly kind: "uncertain";
  readonly dimension: string;
  readonly value: Plain;
  /** One standard deviation. */
  readonly standardUncertainty: Plain;
  /** Effective degrees of freedom (Welch–Satterthwaite), Infinity when all are taken as known. */
  readonly degreesOfFreedom: number;
  /** What it came from, in the order met; sources that cancel are gone. */
  readonly sources: readonly SourceShare[];
  toMeasured(): Measured<Plain>;
  toString(): string;
}

/** What one source does to a value. */
export interface SourceShare {
  readonly source: Source;
  /** Derivative of the value with respect to the source [SI units]. */
  readonly derivative: number;
  /** Derivative times standard uncertainty, signed [SI units of the value]. */
  readonly contribution: number;
  /** Share of the variance, its part of the covariances with it; all shares add up to 1 [-]. */
  readonly share: number;
}
