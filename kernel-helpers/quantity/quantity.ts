import { shownUnit, systemOf, usualUnit } from "./display.js";
import { formatNumber } from "./format-number.js";
import { type Exponents, exponentsOf, kindOf, siSymbol, withArticle } from "./kinds.js";
import type { AnyQuantity, Quantity, QuantityJson } from "./quantity-type.js";
import type { KindOfUnit, UnitName, UnitOf } from "./unit-kinds.js";
import { type UnitSystem, unitNamed } from "./units.js";

// Every quantity at run time. Which kinds go together is checked here once more, for what slips past the types.
class Value {
  readonly dimension: string;
  readonly si: number;
  readonly writtenIn: UnitName | undefined;
  /** Whether the unit was asked for by `as`, and so stands against the unit system set. */
  readonly #asked: boolean;

  constructor(dimension: string, si: number, writtenIn?: UnitName, asked = false) {
    if (!Number.isFinite(si))
      throw new RangeError(`quantity: ${withArticle(dimension)} must be a finite number, got ${si}`);
    this.dimension = dimension;
    this.si = si;
    this.writtenIn = writtenIn;
    this.#asked = asked;
    Object.freeze(this);
  }

  get shownIn(): UnitName | undefined {
    return this.#asked ? this.writtenIn : shownUnit(this.dimension, this.writtenIn);
  }

  plus(other: unknown): Value {
    return this.#like(this.si + this.#sameKind("plus", other).si);
  }

  minus(other: unknown): Value {
    return this.#like(this.si - this.#sameKind("minus", other).si);
  }

  times(factor: unknown): Value | number {
    if (typeof factor === "number") return this.#like(this.si * finite("times", factor));
    const other = quantityOrThrow("times", factor);
    return computed(combine(this.dimension, other.dimension, 1), this.si * other.si, this, other);
  }

  over(divisor: unknown): Value | number {
    if (divisor instanceof Value ? divisor.si === 0 : divisor === 0)
      throw new RangeError(`over: the divisor must not be 0, got ${divisor}`);
    if (typeof divisor === "number") return this.#like(this.si / finite("over", divisor));
    const other = quantityOrThrow("over", divisor);
    return computed(combine(this.dimension, other.dimension, -1), this.si / other.si, this, other);
  }

  squareRoot(): Value | number {
    const exponents = exponentsOf(this.dimension);
    if (exponents.some((e) => e % 2 !== 0))
      throw new TypeError(`squareRoot: ${withArticle(this.dimension)} has no square root of a known kind`);
    if (this.si < 0) throw new RangeError(`squareRoot: value must not be negative, got ${this}`);
    const [length, mass, time, temperature, angle] = exponents;
    const halved: Exponents = [length / 2, mass / 2, time / 2, temperature / 2, angle / 2];
    return computed(combinedOf(halved), Math.sqrt(this.si), this);
  }

  absolute(): Value {
    return this.#like(Math.abs(this.si));
  }

  in(unit: UnitName): number {
    return this.si / this.#factor("in", unit);
  }

  as(unit: UnitName): Value {
    this.#factor("as", unit);
    return new Value(this.dimension, this.si, unit, true);
  }

  toString(): string {
    const unit = this.shownIn;
    if (unit === undefined) return `${formatNumber(this.si)} ${siSymbol(this.dimension)}`;
    const { symbol, si } = unitNamed(unit);
    return `${formatNumber(this.si / si)}${symbol === "°" ? "" : " "}${symbol}`;
  }

  valueOf(): number {
    return this.si;
  }

  /** Compared as the SI value, but joined to a text as written: `"bore " + inch(2)` is no number of metres. */
  [Symbol.toPrimitive](hint: string): number | string {
    return hint === "number" ? this.si : this.toString();
  }

  toJSON(): QuantityJson {
    return this.writtenIn === undefined
      ? { dimension: this.dimension, si: this.si }
      : { dimension: this.dimension, si: this.si, unit: this.writtenIn };
  }

  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return this.toString();
  }

  #like(si: number): Value {
    return new Value(this.dimension, si, this.writtenIn, this.#asked);
  }

  #sameKind(operation: string, other: unknown): Value {
    const quantity = quantityOrThrow(operation, other);
    if (quantity.dimension !== this.dimension)
      throw new TypeError(
        `${operation}: ${withArticle(this.dimension)} and ${withArticle(quantity.dimension)} do not go together, got ${this} and ${quantity}`,
      );
    return quantity;
  }

  #factor(operation: string, name: UnitName): number {
    const unit = unitNamed(name);
    if (unit.kind !== this.dimension)
      throw new TypeError(
        `${operation}: ${unit.symbol} measures ${withArticle(unit.kind)}, but this is ${withArticle(this.dimension)}`,
      );
    return unit.si;
  }
}

/**
 * Makes a quantity from a value in a unit; `inch(2.5)` and its kin are shorter.
 *
 * @param value  the value, finite [unit]
 * @param unit   the name of a unit
 * @throws RangeError  the value is no finite number, or there is no such unit
 * @example quantity(3, "bar") // 3 bar
 */
export function quantity<N extends UnitName>(value: number, unit: N): Quantity<KindOfUnit<N>> {
  const { kind, si } = unitNamed(unit);
  return new Value(kind, finite(unit, value) * si, unit) as unknown as Quantity<KindOfUnit<N>>;
}

/**
 * Makes a quantity of a kind from its SI value, for helpers that compute in SI.
 *
 * @param kind  the kind, e.g. "length"
 * @param si    the value, finite [SI base units, radians]
 * @param unit  the unit to show it in, of that kind; the usual one when left out
 * @throws RangeError  the kind or unit is not known, or the value is no finite number
 * @throws TypeError   the unit measures something else, or the kind is a plain number's
 * @example quantityFromSi("pressure", 2e6) // 2 MPa
 */
export function quantityFromSi<K extends string>(kind: K, si: number, unit?: UnitOf<K>): Quantity<K> {
  exponentsOf(kind);
  if (kind === "number") throw new TypeError(`quantityFromSi: a plain number is no quantity, got ${si}`);
  finite("quantityFromSi", si);
  if (unit !== undefined && unitNamed(unit).kind !== kind)
    throw new TypeError(`quantityFromSi: unit must measure ${withArticle(kind)}, got ${unit}`);
  return new Value(kind, si, unit) as unknown as Quantity<K>;
}

/**
 * Reads a quantity back from a file: the same to the last bit.
 *
 * @param json  what `toJSON` gave
 * @throws TypeError   it is no quantity, or its unit measures something else
 * @throws RangeError  its kind or unit is not known
 * @example quantityFromJson({ dimension: "length", si: 0.0254, unit: "inch" }) // 1 in
 */
export function quantityFromJson(json: QuantityJson): AnyQuantity {
  if (typeof json?.dimension !== "string" || typeof json.si !== "number")
    throw new TypeError(`quantityFromJson: a quantity has dimension and si, got ${JSON.stringify(json)}`);
  return quantityFromSi(json.dimension, json.si, json.unit);
}

/**
 * Whether a value is a quantity, of a kind if one is named.
 *
 * @example isQuantity(inch(2), "length") // true
 * @example isQuantity(2)                 // false
 */
export function isQuantity<K extends string>(value: unknown, kind: K): value is Quantity<K>;
export function isQuantity(value: unknown): value is AnyQuantity;
export function isQuantity(value: unknown, kind?: string): boolean {
  return value instanceof Value && (kind === undefined || value.dimension === kind);
}

/**
 * Another quantity of the kind of one that is there, shown in the unit that was written in: for helpers that make
 * one after the other, a million times over.
 *
 * @param pattern  a quantity
 * @param si       the value, finite [SI base units, radians]
 * @throws RangeError  the value is no finite number
 * @example quantityAlike(inch(2), 0.0254) // 1 in
 */
export function quantityAlike<K extends string>(pattern: Quantity<K>, si: number): Quantity<K> {
  return new Value(pattern.dimension, si, pattern.writtenIn) as unknown as Quantity<K>;
}

function quantityOrThrow(operation: string, value: unknown): Value {
  if (value instanceof Value) return value;
  const found = typeof value === "number" ? `the plain number ${value}, which has no unit` : String(value);
  throw new TypeError(`${operation}: a quantity was expected, got ${found}`);
}

function finite(caller: string, value: unknown): number {
  if (typeof value !== "number" || !Number.isFinite(value))
    throw new RangeError(`${caller}: value must be a finite number, got ${String(value)}`);
  return value;
}

// Products and quotients once looked up, by the two kinds: models are evaluated a million times over.
const products = new Map<string, Map<string, Combined>>();
const quotients = new Map<string, Map<string, Combined>>();

/** A kind that came of others, with the units it is usually shown in. */
interface Combined {
  readonly kind: string;
  readonly inch: UnitName | undefined;
  readonly metric: UnitName | undefined;
}

function combinedOf(exponents: Exponents): Combined {
  const kind = kindOf(exponents);
  return { kind, inch: usualUnit(kind, "inch"), metric: usualUnit(kind, "metric") };
}

function combine(a: string, b: string, sign: 1 | -1): Combined {
  const table = sign === 1 ? products : quotients;
  let row = table.get(a);
  if (row === undefined) {
    row = new Map();
    table.set(a, row);
  }
  const known = row.get(b);
  if (known !== undefined) return known;
  const [x, y] = [exponentsOf(a), exponentsOf(b)];
  const sum = (i: 0 | 1 | 2 | 3 | 4): number => x[i] + sign * y[i];
  const combined = combinedOf([sum(0), sum(1), sum(2), sum(3), sum(4)]);
  row.set(b, combined);
  return combined;
}

/** A computed value shows itself in the system its parts were written in. */
function computed(of: Combined, si: number, first: Value, second?: Value): Value | number {
  if (of.kind === "number") return finite("quantity", si);
  const system = systemWritten(first) ?? (second && systemWritten(second));
  return new Value(of.kind, si, system && of[system]);
}

function systemWritten({ writtenIn }: Value): UnitSystem | undefined {
  if (writtenIn === undefined) return undefined;
  const system = systemOf(writtenIn);
  return system === "both" ? undefined : system;
}
