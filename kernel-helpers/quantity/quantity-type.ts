import type { Product, Quotient, SquareRoot } from "./kind-algebra.js";
import type { UnitName, UnitOf } from "./unit-kinds.js";

/**
 * A value with its unit. The kind (`"length"`, `"force"`, …) is part of the type, so that adding inches to
 * pounds is an error in the cell, before it runs; a computation that slips past the types is caught as it
 * runs. Inside, the value is in SI base units; the unit it was written in is kept for showing only.
 *
 * Every method throws a TypeError for a quantity of the wrong kind and a RangeError for a number that is
 * not finite; `over` also for a divisor of 0, `squareRoot` for a negative value. Joined to a text, a
 * quantity is written with its unit.
 *
 * @example inch(2.5).plus(thou(3))          // 2.503 in
 * @example lbf(50).times(inch(30))          // 125 lbf·ft, a Quantity<"torque or energy">
 * @example inch(2.5).over(inch(5))          // 0.5, a plain number
 * @example inch(2.5) < mm(64)               // true: compare two of a kind
 */
export interface Quantity<K extends string> extends AnyQuantity {
  /** The kind of quantity, in words. */
  readonly dimension: K;
  /** The unit it was written in. */
  readonly writtenIn: UnitOf<K> | undefined;
  /** The sum of two of a kind. */
  plus(other: Quantity<K>): Quantity<K>;
  /** The difference of two of a kind. */
  minus(other: Quantity<K>): Quantity<K>;
  /** The product with a number, or with another quantity (force × length is a torque or energy). */
  times(factor: number): Quantity<K>;
  times<J extends string>(factor: Quantity<J>): Computed<Product<K, J>>;
  /** The quotient by a number, or by another quantity; two of a kind give a plain number. */
  over(divisor: number): Quantity<K>;
  over<J extends string>(divisor: Quantity<J>): Computed<Quotient<K, J>>;
  /** The square root, e.g. of an area, as a length. */
  squareRoot(): Computed<SquareRoot<K>>;
  /** The same size without sign. */
  absolute(): Quantity<K>;
  /** The value as a plain number in a unit of this kind, e.g. `shaft.in("inch")`. */
  in(unit: UnitOf<K>): number;
  /** The same value, shown in this unit of its kind, whatever the unit system set. */
  as(unit: UnitOf<K>): Quantity<K>;
}

/** What every quantity has, of whatever kind. */
export interface AnyQuantity {
  readonly dimension: string;
  /** The value in SI base units: metres, kilograms, seconds, kelvins, radians. */
  readonly si: number;
  /** The unit it was written in. */
  readonly writtenIn: UnitName | undefined;
  /** The unit it shows itself in now; undefined where its kind has no unit of the trade, and SI is shown. */
  readonly shownIn: UnitName | undefined;
  /** The value with its unit, six significant digits. */
  toString(): string;
  /** The SI value: lets `<` and `>` compare two of a kind. */
  valueOf(): number;
  /** The quantity as it stands in a file. */
  toJSON(): QuantityJson;
}

/** What a computation gives: a plain number where all units cancel. */
export type Computed<K extends string> = K extends "number" ? number : Quantity<K>;

/** A quantity in a file. */
export interface QuantityJson {
  readonly dimension: string;
  readonly si: number;
  readonly unit?: UnitName;
}

export type Length = Quantity<"length">;
export type Area = Quantity<"area">;
export type Volume = Quantity<"volume">;
export type Angle = Quantity<"angle">;
export type Time = Quantity<"time">;
export type Speed = Quantity<"speed">;
export type RotationalSpeed = Quantity<"rotational speed">;
export type Mass = Quantity<"mass">;
export type Density = Quantity<"density">;
export type Force = Quantity<"force">;
export type Pressure = Quantity<"pressure">;
export type Torque = Quantity<"torque or energy">;
export type Power = Quantity<"power">;
export type TemperatureDifference = Quantity<"temperature difference">;
export type ThermalExpansion = Quantity<"thermal expansion">;
