import {
  type AnyQuantity,
  isQuantity,
  isTemperature,
  quantity,
  quantityFromSi,
  type Temperature,
  type TemperatureScale,
  temperature,
  type UnitName,
  unitNamed,
  unitSpelled,
} from "../quantity/index.js";

/**
 * A result as it stands in a record: plain JSON in which a quantity is written in its own unit,
 * `{ "inch": 2.4375 }`, a temperature on its own scale, `{ "degF": 54 }`, and an endless number as
 * `{ "number": "Infinity" }`. Reading it back gives the same value to the last bit.
 *
 * @throws TypeError  the value holds what a record cannot keep (a function, NaN), named by its path
 */
export function storeValue(value: unknown, path = "value"): unknown {
  if (isQuantity(value)) return storeQuantity(value);
  if (isTemperature(value)) return storeTemperature(value);
  if (typeof value === "number") {
    if (Number.isNaN(value)) throw new TypeError(`publish: ${path} is not a number (NaN)`);
    return Number.isFinite(value) ? value : { number: String(value) };
  }
  if (value === null || typeof value === "string" || typeof value === "boolean") return value;
  if (Array.isArray(value)) return value.map((item, i) => storeValue(item, `${path}[${i}]`));
  if (typeof value === "object") {
    const plain = Object.getPrototypeOf(value);
    if (plain !== Object.prototype && plain !== null)
      throw new TypeError(`publish: ${path} is a ${plain.constructor?.name}, which a record cannot keep`);
    return Object.fromEntries(
      Object.entries(value)
        .filter(([, item]) => item !== undefined)
        .map(([key, item]) => [key, storeValue(item, `${path}.${key}`)]),
    );
  }
  throw new TypeError(`publish: ${path} is a ${typeof value}, which a record cannot keep`);
}

/** Reads a stored value back: quantities and temperatures are made anew, everything is frozen. */
export function restoreValue(stored: unknown): unknown {
  if (Array.isArray(stored)) return Object.freeze(stored.map(restoreValue));
  if (stored === null || typeof stored !== "object") return stored;
  const entries = Object.entries(stored);
  if (entries.length === 1) {
    const [name, value] = entries[0]!;
    if (name === "number" && typeof value === "string") return Number(value);
    if (name in scales && typeof value === "number") return temperature(value, name as TemperatureScale);
    if (name.startsWith("si ") && typeof value === "number") return quantityFromSi(name.slice(3), value);
    if (typeof value === "number" && unitSpelled(name) === name) return quantity(value, name as UnitName);
  }
  return Object.freeze(Object.fromEntries(entries.map(([key, value]) => [key, restoreValue(value)])));
}

const scales: Readonly<Record<TemperatureScale, true>> = { degC: true, degF: true, kelvin: true };

function storeQuantity(value: AnyQuantity): unknown {
  if (value.writtenIn !== undefined) {
    const written = exactIn(value.si, unitNamed(value.writtenIn).si);
    if (written !== undefined) return { [value.writtenIn]: written };
  }
  return { [`si ${value.dimension}`]: value.si };
}

/** The shortest number that times the factor gives the SI value to the last bit, if there is one nearby. */
function exactIn(si: number, factor: number): number | undefined {
  const near = si / factor;
  const candidates = [Number(near.toPrecision(15)), near, nextAfter(near, 1), nextAfter(near, -1)];
  return candidates.find((candidate) => candidate * factor === si);
}

function nextAfter(value: number, direction: 1 | -1): number {
  return value + direction * Math.abs(value) * Number.EPSILON;
}

function storeTemperature(value: Temperature): unknown {
  const { scale } = value.toJSON();
  const reading = Number(value.in(scale).toPrecision(15));
  return temperature(reading, scale).kelvin === value.kelvin
    ? { [scale]: reading }
    : { kelvin: value.kelvin };
}
