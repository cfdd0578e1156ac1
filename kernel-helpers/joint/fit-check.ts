import {
  type AnyQuantity,
  isQuantity,
  type KindName,
  type Quantity,
  withArticle,
} from "../quantity/index.js";

/** Rejects what is no quantity of the kind, or is below (or at) a bound; names the caller and the field. */
export function requireQuantity<K extends KindName>(
  where: string,
  field: string,
  value: Quantity<K>,
  kind: K,
  bound: "more than 0" | "0 or more",
): void {
  if (!isQuantity(value, kind))
    throw new TypeError(
      `${where}: ${field} must be ${withArticle(kind)} with its unit, got ${String(value)}`,
    );
  if (bound === "more than 0" ? !(value.si > 0) : !(value.si >= 0))
    throw new RangeError(`${where}: ${field} must be ${bound}, got ${value}`);
}

/** Rejects a first quantity that is not smaller than the second; names both fields. */
export function requireSmaller(
  where: string,
  [smallField, small]: readonly [string, AnyQuantity],
  [largeField, large]: readonly [string, AnyQuantity],
): void {
  if (!(small.si < large.si))
    throw new RangeError(
      `${where}: ${smallField} must be smaller than ${largeField} (${large}), got ${small}`,
    );
}

/** Rejects a plain number outside its bounds, both allowed. */
export function requireBetween(where: string, field: string, value: number, low: number, high: number): void {
  if (typeof value !== "number" || !(value >= low && value <= high))
    throw new RangeError(`${where}: ${field} must be from ${low} to ${high}, got ${String(value)}`);
}
