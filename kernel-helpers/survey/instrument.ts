import {
  type KindName,
  type Length,
  type Quantity,
  quantityFromSi,
  readQuantity,
  type ThermalExpansion,
} from "../quantity/index.js";
import type { Instrument, Part } from "./table.js";

/**
 * An instrument from its entry in rebuild.json: `{ "title": "Micrometer 2-3 in", "resolution": "0.0001 in",
 * "repeatability": "0.00015 in", "calibration": "0.0001 in", "expansion": "6.4e-6 1/°F" }`.
 *
 * - resolution: the smallest step read off;
 * - repeatability: the standard deviation (n − 1) of readings of one place, taken again and again;
 * - calibration: the standard uncertainty of its setting, common to all its readings; may be left out;
 * - expansion: of its frame or scale; may be left out, then no correction to 20 °C is made.
 *
 * @param id  the short name that remarks use
 * @param json  the entry, quantities as text with their units
 * @returns the instrument
 * @throws TypeError    an entry is missing, of the wrong kind, or not known
 * @throws SyntaxError  an entry is no quantity with its unit
 * @throws RangeError   the resolution is not greater than 0, another entry is negative, or an expansion is
 *   greater than 1e-4 1/°C, which no solid has
 * @example
 * const entry = { title: "Micrometer", resolution: "0.0001 in", repeatability: "0.15 thou" };
 * instrumentFrom("mic-2-3", entry).repeatability // 0.15 thou
 */
export function instrumentFrom(id: string, json: unknown): Instrument {
  const known = ["title", "resolution", "repeatability", "calibration", "expansion"];
  const entry = entryOf(`instrument "${id}"`, json, known);
  const resolution = entry.quantity("resolution", "length");
  const repeatability = entry.quantity("repeatability", "length");
  if (resolution === undefined || repeatability === undefined)
    throw new TypeError(
      `instrument "${id}": ${resolution === undefined ? "resolution" : "repeatability"} must be given, with its unit: "0.0001 in"`,
    );
  if (!(resolution.si > 0))
    throw new RangeError(`instrument "${id}": resolution must be greater than 0, got ${resolution}`);
  return Object.freeze({
    kind: "instrument",
    id,
    title: entry.text("title"),
    resolution,
    repeatability,
    calibration: entry.quantity("calibration", "length"),
    expansion: entry.quantity("expansion", "thermal expansion"),
  });
}

/**
 * A part of the machine from its entry in rebuild.json: `{ "title": "Line shaft", "material": "wrought iron",
 * "expansion": "6.7e-6 1/°F" }`; material and expansion may be left out.
 *
 * @throws TypeError, SyntaxError, RangeError  as `instrumentFrom`
 * @example partFrom("shaft", { title: "Line shaft", expansion: "6.7e-6 1/°F" }).expansion.in("perF") // 6.7e-6
 */
export function partFrom(id: string, json: unknown): Part {
  const entry = entryOf(`part "${id}"`, json, ["title", "material", "expansion"]);
  return Object.freeze({
    id,
    title: entry.text("title"),
    material: entry.has("material") ? entry.text("material") : undefined,
    expansion: entry.quantity("expansion", "thermal expansion"),
  });
}

/**
 * The standard uncertainty of one reading against the others of its instrument: repeatability, and the
 * rounding to the resolution.
 *
 * u² = s² + δ²/12
 *
 * Valid when: readings are rounded to the nearest step. Where the repeatability was found from readings
 * that were rounded too, rounding is counted twice, which errs on the safe side. The calibration is not in
 * it, for it moves all readings together.
 *
 * @param instrument  with repeatability s, a standard deviation with n − 1 [m], and resolution δ [m]
 * @returns standard uncertainty of one reading [m]
 * @example
 * const entry = { title: "Micrometer", resolution: "0.1 thou", repeatability: "0.15 thou" };
 * readingUncertainty(instrumentFrom("mic-2-3", entry)) // 0.1528 thou = √(0.15² + 0.1²/12)
 * @source JCGM 100:2008 (GUM), 4.2.2 (s), F.2.2.1 (resolution, 0.29 δ), 4.3.7 (rectangular distribution)
 */
export function readingUncertainty(instrument: Instrument): Length {
  const { repeatability, resolution } = instrument;
  const u = Math.hypot(repeatability.si, resolution.si / Math.sqrt(12));
  return quantityFromSi("length", u, resolution.writtenIn as never);
}

interface Entry {
  has(key: string): boolean;
  text(key: string): string;
  quantity<K extends KindName>(key: string, kind: K): Quantity<K> | undefined;
}

/** An entry of rebuild.json whose values are text; each fault says of what it is one. */
function entryOf(what: string, json: unknown, known: readonly string[]): Entry {
  if (typeof json !== "object" || json === null || Array.isArray(json))
    throw new TypeError(`${what}: must be an object with title, …, got ${JSON.stringify(json)}`);
  const values = json as Readonly<Record<string, unknown>>;
  const unknown = Object.keys(values).find((key) => !known.includes(key));
  if (unknown !== undefined)
    throw new TypeError(`${what}: "${unknown}" is not known; it may have ${known.join(", ")}`);
  const has = (key: string): boolean => values[key] !== undefined;
  const text = (key: string): string => {
    const value = values[key];
    if (typeof value !== "string" || value.trim() === "")
      throw new TypeError(`${what}: ${key} must be a text, got ${JSON.stringify(value)}`);
    return value.trim();
  };
  const quantity = <K extends KindName>(key: string, kind: K): Quantity<K> | undefined => {
    if (!has(key)) return undefined;
    const value = explained(`${what}: ${key}`, () => readQuantity(oneOver(text(key)), kind));
    if (!(value.si >= 0)) throw new RangeError(`${what}: ${key} must be 0 or more, got ${value}`);
    if (kind === "thermal expansion") checkExpansion(what, value as unknown as ThermalExpansion);
    return value;
  };
  return { has, text, quantity };
}

/** "6.5e-6 1/°F" as `readQuantity` spells it: the 1 of 1/°F is no second number. */
function oneOver(text: string): string {
  return text.replace(/\s+1\s*\/\s*(?:°|deg)?\s*([CFK])$/, (_, letter: string) =>
    letter === "F" ? " per degF" : " per degC",
  );
}

/** Metals lie between 1e-6 and 4e-5 1/°C; a power of ten left out shows here. */
function checkExpansion(what: string, expansion: ThermalExpansion): void {
  if (expansion.si > 1e-4)
    throw new RangeError(
      `${what}: expansion must not be greater than 1e-4 1/°C (steel has 11.5e-6), got ${expansion}`,
    );
}

/** Runs a reader and puts before its message what was being read. */
function explained<T>(what: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    const Kind = error instanceof TypeError ? TypeError : SyntaxError;
    throw new Kind(`${what}: ${error.message}`, { cause: error });
  }
}
