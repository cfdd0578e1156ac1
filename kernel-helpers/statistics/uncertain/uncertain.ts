import type { Measured, Quantity } from "../../quantity/index.js";
import { isPlain, type Plain } from "./plain-value.js";
import type { Uncertain } from "./uncertain-type.js";
import { isUncertainValue, uncertainValue } from "./uncertain-value.js";

/**
 * Makes a measured value the start of a computation: an uncertain value with one source of its own.
 *
 * Called twice it makes two independent sources, even under one name: call it once for one thing measured.
 *
 * @param measured  value, standard uncertainty and degrees of freedom
 * @param source    what to call it in a budget, not empty
 * @returns the uncertain value
 * @throws TypeError   it is no measured value
 * @throws RangeError  the name is empty
 * @example
 * const bore = uncertain(measured(inch(2.4405), inch(0.0003)), "bore gauge");
 * const shaft = uncertain(measured(inch(2.4375), inch(0.0004)), "micrometer");
 * bore.minus(shaft).standardUncertainty.in("thou") // 0.5
 * @source JCGM 100:2008 (GUM), 5.1.2
 */
export function uncertain<K extends string>(measured: Measured<Quantity<K>>, source: string): Uncertain<K>;
export function uncertain(measured: Measured<number>, source: string): Uncertain<"number">;
export function uncertain(measured: Measured<Plain>, source: string): unknown {
  if (measured?.kind !== "measured")
    throw new TypeError(`uncertain: a measured value was expected, got ${String(measured)}`);
  if (typeof source !== "string" || source.trim() === "")
    throw new RangeError(`uncertain: the source must have a name, got ${JSON.stringify(source)}`);
  const { value, standardUncertainty, degreesOfFreedom } = measured;
  const made = Object.freeze({ name: source, standardUncertainty, degreesOfFreedom, correlated: undefined });
  return uncertainValue(value, new Map([[made, 1]]));
}

/**
 * Makes an exact value the start of a computation with uncertain ones, e.g. where it stands first.
 *
 * @param value  a quantity or a finite number
 * @returns the value, without any source
 * @throws TypeError  it is neither
 * @example exactly(inch(2.5)).minus(uncertain(measured(inch(2.4), inch(0.001)), "rule")).value // 0.1 in
 */
export function exactly<K extends string>(value: Quantity<K>): Uncertain<K>;
export function exactly(value: number): Uncertain<"number">;
export function exactly(value: unknown): unknown {
  if (!isPlain(value))
    throw new TypeError(`exactly: a quantity or a finite number was expected, got ${String(value)}`);
  return uncertainValue(value, new Map());
}

/**
 * Whether a value is an uncertain one.
 *
 * @example isUncertain(exactly(2))             // true
 * @example isUncertain(measured(inch(2), inch(1))) // false
 */
export function isUncertain(value: unknown): value is Uncertain<string> {
  return isUncertainValue(value);
}
