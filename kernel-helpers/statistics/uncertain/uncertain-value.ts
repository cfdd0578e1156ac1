import {
  type AnyQuantity,
  type Measured,
  measured,
  type Quantity,
  quantityFromSi,
  type UnitName,
  withArticle,
} from "../../quantity/index.js";
import { type Combined, combine, type Derivatives } from "./combine.js";
import { added, alike, dimensionOf, divided, isPlain, multiplied, type Plain, siOf } from "./plain-value.js";
import type { Source } from "./source.js";
import type { AnyUncertain, SourceShare } from "./uncertain-type.js";

// Every uncertain value at run time. The values themselves are quantities, which check the kinds once more.
class Value implements AnyUncertain {
  readonly kind = "uncertain";
  readonly value: Plain;
  readonly derivatives: Derivatives;
  readonly #combined: Combined;

  constructor(value: Plain, derivatives: Derivatives) {
    if (!Number.isFinite(siOf(value)))
      throw new RangeError(`uncertain: the value must be a finite number, got ${value}`);
    for (const [source, derivative] of derivatives)
      if (!Number.isFinite(derivative))
        throw new RangeError(
          `uncertain: the derivative with respect to ${source.name} must be a finite number, got ${derivative}`,
        );
    this.value = value;
    this.derivatives = derivatives;
    this.#combined = combine(derivatives);
    Object.freeze(this);
  }

  get dimension(): string {
    return dimensionOf(this.value);
  }

  get standardUncertainty(): Plain {
    return alike(this.value, this.#combined.standardUncertainty);
  }

  get degreesOfFreedom(): number {
    return this.#combined.degreesOfFreedom;
  }

  get sources(): readonly SourceShare[] {
    return Object.freeze(
      [...this.#combined.parts].map(([source, part]) =>
        Object.freeze({ source, derivative: this.derivatives.get(source)!, ...part }),
      ),
    );
  }

  plus(other: unknown): Value {
    const b = operand("plus", other);
    return new Value(added("plus", this.value, b.value), sum(this, 1, b, 1));
  }

  minus(other: unknown): Value {
    const b = operand("minus", other);
    return new Value(added("minus", this.value, b.value), sum(this, 1, b, -1));
  }

  times(factor: unknown): Value {
    const b = operand("times", factor);
    return new Value(multiplied(this.value, b.value), sum(this, siOf(b.value), b, siOf(this.value)));
  }

  over(divisor: unknown): Value {
    const b = operand("over", divisor);
    const value = divided(this.value, b.value);
    // The derivative of a/b is 1/b, and −(a/b)/b: one and the same quotient, so that x/x cancels exactly.
    const size = siOf(b.value);
    return new Value(value, sum(this, 1 / size, b, -(siOf(this.value) / size) / size));
  }

  squareRoot(): Value {
    const si = siOf(this.value);
    if (si <= 0) throw new RangeError(`squareRoot: value must be more than 0, got ${this.value}`);
    const root = Math.sqrt(si);
    const value = typeof this.value === "number" ? root : (this.value as Quantity<string>).squareRoot();
    return new Value(value as Plain, scaled(this, 0.5 / root));
  }

  absolute(): Value {
    const si = siOf(this.value);
    if (si === 0) throw new RangeError(`absolute: value must not be 0, got ${this.value}`);
    return si > 0 ? this : this.times(-1);
  }

  sin(): Value {
    const x = turn("sin", this);
    return new Value(Math.sin(x), scaled(this, Math.cos(x)));
  }

  cos(): Value {
    const x = turn("cos", this);
    return new Value(Math.cos(x), scaled(this, -Math.sin(x)));
  }

  tan(): Value {
    const tangent = Math.tan(turn("tan", this));
    return new Value(tangent, scaled(this, 1 + tangent ** 2));
  }

  asin(): Value {
    const x = plainNumber("asin", this);
    if (Math.abs(x) >= 1) throw new RangeError(`asin: value must lie between −1 and 1, got ${x}`);
    return new Value(angle(Math.asin(x)), scaled(this, 1 / Math.sqrt((1 - x) * (1 + x))));
  }

  atan(): Value {
    const x = plainNumber("atan", this);
    return new Value(angle(Math.atan(x)), scaled(this, 1 / (1 + x * x)));
  }

  exp(): Value {
    const value = Math.exp(plainNumber("exp", this));
    return new Value(value, scaled(this, value));
  }

  log(): Value {
    const x = plainNumber("log", this);
    if (x <= 0) throw new RangeError(`log: value must be more than 0, got ${x}`);
    return new Value(Math.log(x), scaled(this, 1 / x));
  }

  power(exponent: unknown): Value {
    const x = plainNumber("power", this);
    const b = operand("power", exponent);
    const p = plainNumber("power", b);
    const isExact = b.derivatives.size === 0;
    if (!(x > 0 || (isExact && Number.isInteger(p) && (x < 0 || p >= 1))))
      throw new RangeError(
        `power: value must be more than 0, or the exponent exact and whole (at least 1 for 0), got ${x} to the power ${p}`,
      );
    const value = x ** p;
    return new Value(value, sum(this, p === 0 ? 0 : p * x ** (p - 1), b, isExact ? 0 : value * Math.log(x)));
  }

  as(unit: UnitName): Value {
    if (typeof this.value === "number")
      throw new TypeError(`as: a plain number has no unit, got ${this.value} and ${unit}`);
    return new Value((this.value as Quantity<string>).as(unit as never), this.derivatives);
  }

  toMeasured(): Measured<Plain> {
    return measured<Plain>(this.value, this.standardUncertainty, this.degreesOfFreedom);
  }

  toString(): string {
    return `${this.value}, standard uncertainty ${this.standardUncertainty}`;
  }

  /** Keeps it out of `<`, `+` and Math, which would drop the uncertainty without a word. */
  [Symbol.toPrimitive](hint: string): string {
    if (hint === "string") return this.toString();
    throw new TypeError(
      `uncertain: an uncertain value is no plain number: take its value, or use its methods, got ${this}`,
    );
  }

  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return this.toString();
  }
}

/** Whether a value is an uncertain one. */
export function isUncertainValue(value: unknown): value is AnyUncertain {
  return value instanceof Value;
}

/** An uncertain value from its value and the derivative with respect to each source [SI units]. */
export function uncertainValue(value: Plain, derivatives: ReadonlyMap<Source, number>): AnyUncertain {
  return new Value(value, new Map([...derivatives].filter(([, derivative]) => derivative !== 0)));
}

/** The derivatives of an uncertain value; of a plain one none. */
export function derivativesOf(value: unknown): Derivatives {
  return value instanceof Value ? value.derivatives : new Map<Source, number>();
}

function operand(operation: string, value: unknown): Value {
  if (value instanceof Value) return value;
  if (isPlain(value)) return new Value(value, new Map());
  if (typeof value === "number")
    throw new RangeError(`${operation}: value must be a finite number, got ${value}`);
  throw new TypeError(
    `${operation}: an uncertain value, a quantity or a number was expected, got ${String(value)}`,
  );
}

/** The derivatives of ca·a + cb·b. What cancels is dropped, so that it leaves no trace. */
function sum(a: Value, ca: number, b: Value, cb: number): Derivatives {
  const result = new Map<Source, number>();
  for (const [source, derivative] of a.derivatives) result.set(source, ca * derivative);
  for (const [source, derivative] of b.derivatives)
    result.set(source, (result.get(source) ?? 0) + cb * derivative);
  for (const [source, derivative] of result) if (derivative === 0) result.delete(source);
  return result;
}

function scaled(a: Value, factor: number): Derivatives {
  return sum(a, factor, a, 0);
}

function plainNumber(operation: string, { value }: Value): number {
  if (typeof value === "number") return value;
  throw new TypeError(
    `${operation}: a plain number was expected, got ${withArticle(value.dimension)}, ${value}`,
  );
}

function turn(operation: string, { value }: Value): number {
  if (typeof value === "number" || value.dimension === "angle") return siOf(value);
  throw new TypeError(
    `${operation}: an angle or a number of radians was expected, got ${withArticle(value.dimension)}, ${value}`,
  );
}

function angle(radians: number): AnyQuantity {
  return quantityFromSi("angle", radians);
}
