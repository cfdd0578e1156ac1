import { unitSystem } from "./display.js";
import { formatNumber } from "./format-number.js";
import { isQuantity, quantityFromSi } from "./quantity.js";
import type { Quantity } from "./quantity-type.js";

/** A scale on which a temperature is read. */
export type TemperatureScale = "degC" | "degF" | "kelvin";

/**
 * A temperature: a point on a scale, not a difference. Two temperatures cannot be added; their difference
 * is a `Quantity<"temperature difference">`, which can be added to a temperature, and multiplied.
 *
 * Its methods throw a TypeError for what is neither, and a RangeError below absolute zero.
 *
 * @example degF(68).in("degC")                       // 20
 * @example degF(400).minus(degF(68)).in("deltaC")    // 184.4 (a difference has no zero point)
 * @example degF(68).plus(deltaF(332))                // 400 °F
 */
export interface Temperature {
  readonly dimension: "temperature";
  /** The absolute temperature [K]. */
  readonly kelvin: number;
  /** A temperature that much higher. */
  plus(difference: Quantity<"temperature difference">): Temperature;
  /** The difference from another temperature, or a temperature that much lower. */
  minus(other: Temperature): Quantity<"temperature difference">;
  minus(difference: Quantity<"temperature difference">): Temperature;
  /** The reading on a scale. */
  in(scale: TemperatureScale): number;
  toString(): string;
  /** The absolute temperature [K]: lets `<` and `>` compare. */
  valueOf(): number;
  /** The temperature as it stands in a file. */
  toJSON(): TemperatureJson;
}

/** A temperature in a file. */
export interface TemperatureJson {
  readonly dimension: "temperature";
  readonly kelvin: number;
  readonly scale: TemperatureScale;
}

// 0 °C is 273.15 K and a Fahrenheit degree is 5/9 K, both exact (NIST Special Publication 811, 2008, 8.5 and B.8).
const zeroCelsius = 273.15;
const toKelvin: Readonly<Record<TemperatureScale, (reading: number) => number>> = {
  kelvin: (reading) => reading,
  degC: (reading) => reading + zeroCelsius,
  degF: (reading) => ((reading - 32) * 5) / 9 + zeroCelsius,
};
const fromKelvin: Readonly<Record<TemperatureScale, (kelvin: number) => number>> = {
  kelvin: (kelvin) => kelvin,
  degC: (kelvin) => kelvin - zeroCelsius,
  degF: (kelvin) => ((kelvin - zeroCelsius) * 9) / 5 + 32,
};
const symbols: Readonly<Record<TemperatureScale, string>> = { kelvin: "K", degC: "°C", degF: "°F" };

class Point {
  readonly dimension = "temperature";
  readonly kelvin: number;
  readonly writtenIn: TemperatureScale;

  constructor(kelvin: number, writtenIn: TemperatureScale) {
    if (!Number.isFinite(kelvin) || kelvin < 0)
      throw new RangeError(`temperature: must not be below absolute zero, got ${kelvin} K`);
    this.kelvin = kelvin;
    this.writtenIn = writtenIn;
    Object.freeze(this);
  }

  plus(difference: unknown): Point {
    if (!isQuantity(difference, "temperature difference"))
      throw new TypeError(
        `plus: only a temperature difference (deltaC, deltaF) can be added to a temperature, got ${String(difference)}`,
      );
    return new Point(this.kelvin + difference.si, this.writtenIn);
  }

  minus(other: unknown): unknown {
    if (other instanceof Point)
      return quantityFromSi(
        "temperature difference",
        this.kelvin - other.kelvin,
        this.writtenIn === "degF" ? "deltaF" : "deltaC",
      );
    if (isQuantity(other, "temperature difference")) return new Point(this.kelvin - other.si, this.writtenIn);
    throw new TypeError(
      `minus: a temperature or a temperature difference was expected, got ${String(other)}`,
    );
  }

  in(scale: TemperatureScale): number {
    const convert = fromKelvin[scale];
    if (convert === undefined)
      throw new RangeError(`in: a temperature is read in degC, degF or kelvin, got ${String(scale)}`);
    return convert(this.kelvin);
  }

  toString(): string {
    const system = unitSystem();
    const scale = system === undefined ? this.writtenIn : system === "inch" ? "degF" : "degC";
    // Ten digits first, so that 20 °C written as 68 °F comes back as 20 and not 20.0000000000001.
    return `${formatNumber(Number(this.in(scale).toPrecision(10)))} ${symbols[scale]}`;
  }

  valueOf(): number {
    return this.kelvin;
  }

  /** Compared as kelvins, but joined to a text as written. */
  [Symbol.toPrimitive](hint: string): number | string {
    return hint === "number" ? this.kelvin : this.toString();
  }

  toJSON(): TemperatureJson {
    return { dimension: "temperature", kelvin: this.kelvin, scale: this.writtenIn };
  }

  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return this.toString();
  }
}

/**
 * A temperature from a reading on a scale.
 *
 * T = t + 273.15 K for t in °C;  T = (t − 32) · 5/9 + 273.15 K for t in °F
 *
 * @param reading  what the thermometer shows [°C, °F or K]
 * @param scale    "degC", "degF" or "kelvin"
 * @throws RangeError  the reading is no finite number or lies below absolute zero, or the scale is none
 * @example temperature(300, "kelvin").in("degC") // 26.85
 * @source NIST Special Publication 811, 2008, 8.5 and B.8 (both exact)
 */
export function temperature(reading: number, scale: TemperatureScale): Temperature {
  if (!Object.hasOwn(toKelvin, scale))
    throw new RangeError(`temperature: scale must be degC, degF or kelvin, got ${String(scale)}`);
  if (typeof reading !== "number" || !Number.isFinite(reading))
    throw new RangeError(`${scale}: reading must be a finite number, got ${String(reading)}`);
  return new Point(toKelvin[scale](reading), scale) as unknown as Temperature;
}

/**
 * A temperature in degrees Fahrenheit; a difference is `deltaF`.
 *
 * @param reading  what the thermometer shows [°F]
 * @throws RangeError  it is no finite number or lies below absolute zero
 * @example degF(68).in("degC") // 20
 */
export function degF(reading: number): Temperature {
  return temperature(reading, "degF");
}

/**
 * A temperature in degrees Celsius; a difference is `deltaC`.
 *
 * @param reading  what the thermometer shows [°C]
 * @throws RangeError  it is no finite number or lies below absolute zero
 * @example degC(100).in("degF") // 212
 */
export function degC(reading: number): Temperature {
  return temperature(reading, "degC");
}

/**
 * Whether a value is a temperature.
 *
 * @example isTemperature(degC(20))  // true
 * @example isTemperature(deltaC(5)) // false
 */
export function isTemperature(value: unknown): value is Temperature {
  return value instanceof Point;
}

/**
 * Reads a temperature back from a file: the same to the last bit.
 *
 * @param json  what `toJSON` gave
 * @throws TypeError   it is no temperature
 * @throws RangeError  it lies below absolute zero, or its scale is none
 * @example temperatureFromJson({ dimension: "temperature", kelvin: 293.15, scale: "degF" }) // 68 °F
 */
export function temperatureFromJson(json: TemperatureJson): Temperature {
  if (json?.dimension !== "temperature" || typeof json.kelvin !== "number")
    throw new TypeError(
      `temperatureFromJson: a temperature has kelvin and scale, got ${JSON.stringify(json)}`,
    );
  if (!Object.hasOwn(toKelvin, json.scale))
    throw new RangeError(
      `temperatureFromJson: scale must be degC, degF or kelvin, got ${String(json.scale)}`,
    );
  return new Point(json.kelvin, json.scale) as unknown as Temperature;
}

/**
 * The reference temperature for lengths: 20 °C, exactly 68 °F.
 *
 * @example referenceTemperature.in("degF") // 68
 * @source ISO 1:2022, Geometrical product specifications (GPS): standard reference temperature (from memory)
 */
export const referenceTemperature: Temperature = temperature(20, "degC");
