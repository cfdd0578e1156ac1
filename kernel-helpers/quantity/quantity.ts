import { systemOf, type UnitSystem, unitSystem, usualUnit } from "./display.js";
import { formatNumber } from "./format-number.js";
import {
  type Exponents,
  exponentsOf,
  kindOf,
  type Product,
  type Quotient,
  type SquareRoot,
} from "./kinds.js";
import { type UnitName, type UnitOf, unitNamed } from "./units.js";

/**
 * A value with its unit. The kind (`"length"`, `"force"`, …) is part of the type, so that adding inches to
 * pounds is an error in the cell, before it runs; a computation that slips past the types is caught as it
 * runs. Inside, the value is in SI base units; the unit it was written in is kept for showing only.
 *
 * @example inch(2.5).plus(thou(3))          // 2.503 in
 * @example lbf(50).times(inch(30))          // 125 lbf·ft, a Quantity<"torque or energy">
 * @example inch(2.5).over(inch(5))          // 0.5, a plain number
 * @example inch(2.5) < mm(64)               // true: compare two of a kind
 */
export interface Quantity<K extends string> extends AnyQuantity {
  /** The kind of quantity, in words. */
  readonly dimension: K;
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
  /** The same value, shown in another unit of its kind. */
  as(unit: UnitOf<K>): Quantity<K>;
}

/** What every quantity has, of whatever kind. */
export interface AnyQuantity {
  readonly dimension: string;
  /** The value in SI base units: metres, kilograms, seconds, kelvins, radians. */
  readonly si: number;
  /** The unit it was written in, for showing. */
  readonly writtenIn: UnitName | undefined;
  /** The value with its unit, six significant digits. */
  toString(): string;
  /** The SI value: lets `<` and `>` compare two of a kind. */
  valueOf(): number;
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

class Value {
  readonly dimension: string;
  readonly si: number;
  readonly writtenIn: UnitName | undefined;

  constructor(dimension: string, si: number, writtenIn?: UnitName) {
    this.dimension = dimension;
    this.si = si;
    this.writtenIn = writtenIn;
    Object.freeze(this);
  }

  plus(other: unknown): Value {
    return new Value(this.dimension, this.si + this.#sameKind("plus", other).si, this.writtenIn);
  }

  minus(other: unknown): Value {
    return new Value(this.dimension, this.si - this.#sameKind("minus", other).si, this.writtenIn);
  }

  times(factor: unknown): Value | number {
    if (typeof factor === "number") return new Value(this.dimension, this.si * factor, this.writtenIn);
    const other = quantityOrThrow("times", factor);
    return computed(combine(this.dimension, other.dimension, 1), this.si * other.si, this, other);
  }

  over(divisor: unknown): Value | number {
    if (typeof divisor === "number") return new Value(this.dimension, this.si / divisor, this.writtenIn);
    const other = quantityOrThrow("over", divisor);
    return computed(combine(this.dimension, other.dimension, -1), this.si / other.si, this, other);
  }

  squareRoot(): Value | number {
    const exponents = exponentsOf(this.dimension);
    if (exponents.some((e) => e % 2 !== 0))
      throw new TypeError(`squareRoot: ${withArticle(this.dimension)} has no square root of a known kind`);
    if (!(this.si >= 0)) throw new RangeError(`squareRoot: value must not be negative, got ${this}`);
    return computed(kindOf(exponents.map((e) => e / 2) as unknown as Exponents), Math.sqrt(this.si), this);
  }

  absolute(): Value {
    return new Value(this.dimension, Math.abs(this.si), this.writtenIn);
  }

  in(unit: UnitName): number {
    return this.si / this.#unitOfKind("in", unit);
  }

  as(unit: UnitName): Value {
    this.#unitOfKind("as", unit);
    return new Value(this.dimension, this.si, unit);
  }

  toString(): string {
    const unit = shownUnit(this.dimension, this.writtenIn);
    if (unit === undefined) return `${formatNumber(this.si)} ${siSymbol(this.dimension)}`;
    const { symbol, si } = unitNamed(unit);
    return `${formatNumber(this.si / si)}${symbol === "°" ? "" : " "}${symbol}`;
  }

  valueOf(): number {
    return this.si;
  }

  toJSON(): QuantityJson {
    return this.writtenIn === undefined
      ? { dimension: this.dimension, si: this.si }
      : { dimension: this.dimension, si: this.si, unit: this.writtenIn };
  }

  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return this.toString();
  }

  #sameKind(operation: string, other: unknown): Value {
    const quantity = quantityOrThrow(operation, other);
    if (quantity.dimension !== this.dimension)
      throw new TypeError(
        `${operation}: ${withArticle(this.dimension)} and ${withArticle(quantity.dimension)} do not go together, got ${this} and ${quantity}`,
      );
    return quantity;
  }

  #unitOfKind(operation: string, name: UnitName): number {
    const unit = unitNamed(name);
    if (unit === undefined) throw new RangeError(`${operation}: unit must be a known unit, got ${name}`);
    if (unit.kind !== this.dimension)
      throw new TypeError(
        `${operation}: ${unit.symbol} measures ${withArticle(unit.kind)}, but this is ${withArticle(this.dimension)}`,
      );
    return unit.si;
  }
}

/** Makes a quantity from a value in a unit; `inch(2.5)` and its kin are shorter. */
export function quantity<N extends UnitName>(value: number, unit: N): Quantity<KindOfUnit<N>> {
  const { kind, si } = unitNamed(unit);
  requireNumber(unit, value);
  return new Value(kind, value * si, unit) as unknown as Quantity<KindOfUnit<N>>;
}

type KindOfUnit<N extends UnitName> = import("./units.js").UnitKinds[N];

/** Makes a quantity of a kind from its SI value, for helpers that compute in SI. */
export function quantityFromSi<K extends string>(kind: K, si: number, unit?: UnitOf<K>): Quantity<K> {
  exponentsOf(kind);
  requireNumber("quantityFromSi", si);
  return new Value(kind, si, unit) as unknown as Quantity<K>;
}

/** Reads a quantity back from a file. @throws TypeError it is none */
export function quantityFromJson(json: QuantityJson): AnyQuantity {
  if (typeof json?.dimension !== "string" || typeof json.si !== "number")
    throw new TypeError(`quantityFromJson: a quantity has dimension and si, got ${JSON.stringify(json)}`);
  return quantityFromSi(json.dimension, json.si, json.unit as never);
}

/** Whether a value is a quantity, of a kind if one is named. */
export function isQuantity<K extends string>(value: unknown, kind: K): value is Quantity<K>;
export function isQuantity(value: unknown): value is AnyQuantity;
export function isQuantity(value: unknown, kind?: string): boolean {
  return value instanceof Value && (kind === undefined || value.dimension === kind);
}

/** The unit a quantity shows itself in: as written, unless the rebuild's unit system says otherwise. */
export function shownUnit(kind: string, writtenIn?: UnitName): UnitName | undefined {
  const system = unitSystem();
  if (writtenIn !== undefined) {
    const belongs = systemOf(writtenIn);
    if (system === undefined || belongs === "both" || belongs === system) return writtenIn;
  }
  return usualUnit(kind, system ?? "metric");
}

/** The kind with its article, for messages: "a length", "an angle". */
export function withArticle(kind: string): string {
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}

function quantityOrThrow(operation: string, value: unknown): Value {
  if (value instanceof Value) return value;
  const found = typeof value === "number" ? `the plain number ${value}, which has no unit` : String(value);
  throw new TypeError(`${operation}: a quantity was expected, got ${found}`);
}

function requireNumber(caller: string, value: unknown): void {
  if (typeof value !== "number" || !Number.isFinite(value))
    throw new RangeError(`${caller}: value must be a finite number, got ${String(value)}`);
}

function combine(a: string, b: string, sign: 1 | -1): string {
  const [x, y] = [exponentsOf(a), exponentsOf(b)];
  return kindOf(x.map((e, i) => e + sign * y[i]!) as unknown as Exponents);
}

/** A computed value shows itself in the system its parts were written in. */
function computed(kind: string, si: number, ...from: readonly Value[]): Value | number {
  if (kind === "number") return si;
  const systems = from.flatMap(({ writtenIn }) => (writtenIn === undefined ? [] : [systemOf(writtenIn)]));
  const system = systems.find((s): s is UnitSystem => s !== "both");
  return new Value(kind, si, system && usualUnit(kind, system));
}

const siSymbols = ["m", "kg", "s", "K", "rad"];
const superscripts: Readonly<Record<string, string>> = {
  "-": "⁻",
  "1": "¹",
  "2": "²",
  "3": "³",
  "4": "⁴",
  "5": "⁵",
  "6": "⁶",
};

/** The SI unit of a kind spelled in base units, e.g. "kg·m⁻¹·s⁻²". */
export function siSymbol(kind: string): string {
  return exponentsOf(kind)
    .flatMap((e, i) =>
      e === 0 ? [] : [siSymbols[i]! + (e === 1 ? "" : [...String(e)].map((c) => superscripts[c]).join(""))],
    )
    .join("·");
}
