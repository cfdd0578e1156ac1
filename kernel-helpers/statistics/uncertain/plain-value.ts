import {
  type AnyQuantity,
  type Exponents,
  exponentsOf,
  isQuantity,
  kindOf,
  type Quantity,
  quantityAlike,
  quantityFromSi,
  systemOf,
  usualUnit,
  withArticle,
} from "../../quantity/index.js";

/** A value without uncertainty: a quantity, or a plain number. */
export type Plain = AnyQuantity | number;

/** What it measures; "number" for a plain number. */
export function dimensionOf(value: Plain): string {
  return typeof value === "number" ? "number" : value.dimension;
}

/** The value in SI units. */
export function siOf(value: Plain): number {
  return typeof value === "number" ? value : value.si;
}

/** Whether a value is a finite number or a quantity. */
export function isPlain(value: unknown): value is Plain {
  return (typeof value === "number" && Number.isFinite(value)) || isQuantity(value);
}

/** Another value of the same kind, shown in the same unit. */
export function alike(pattern: Plain, si: number): Plain {
  if (typeof pattern === "number") return si;
  return quantityAlike(pattern as Quantity<string>, si);
}

/** The sum, or with sign −1 the difference, of two of a kind. */
export function added(operation: "plus" | "minus", a: Plain, b: Plain): Plain {
  if (typeof a === "number" && typeof b === "number") return operation === "plus" ? a + b : a - b;
  if (typeof a === "number" || typeof b === "number")
    throw new TypeError(
      `${operation}: ${withArticle(dimensionOf(a))} and ${withArticle(dimensionOf(b))} do not go together, got ${a} and ${b}`,
    );
  return (a as Quantity<string>)[operation](b as Quantity<string>);
}

/** The product of any two. */
export function multiplied(a: Plain, b: Plain): Plain {
  if (typeof a === "number") return typeof b === "number" ? a * b : (b as Quantity<string>).times(a);
  return (a as Quantity<string>).times(b as Quantity<string>) as Plain;
}

/** The quotient of any two. */
export function divided(a: Plain, b: Plain): Plain {
  if (siOf(b) === 0) throw new RangeError(`over: the divisor must not be 0, got ${b}`);
  if (typeof a !== "number") return (a as Quantity<string>).over(b as Quantity<string>) as Plain;
  return typeof b === "number" ? a / b : inverse(a, b);
}

/** A number over a quantity, in the unit system of that. */
function inverse(a: number, b: AnyQuantity): Plain {
  const [length, mass, time, temperature, angle] = exponentsOf(b.dimension);
  const turned: Exponents = [0 - length, 0 - mass, 0 - time, 0 - temperature, 0 - angle];
  const kind = kindOf(turned);
  if (kind === "number") return a / b.si;
  const system = b.writtenIn === undefined ? "both" : systemOf(b.writtenIn);
  const unit = system === "both" ? undefined : usualUnit(kind, system);
  return quantityFromSi(kind as string, a / b.si, unit);
}
