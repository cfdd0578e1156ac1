import { type Temperature, temperatureFromJson } from "../quantity/index.js";

/**
 * The whole degree at or below a temperature, on the scale it was written in: a ceiling is never rounded up.
 *
 * @param ceiling  any temperature [K]
 * @returns a temperature at most one degree of its scale lower [K]
 * @example String(wholeDegreesBelow(degC(224.222))) // "224 °C"
 */
export function wholeDegreesBelow(ceiling: Temperature): Temperature {
  const { dimension, scale } = ceiling.toJSON();
  const reading = ceiling.in(scale);
  // A reading that is a whole degree but for the last digits of its conversion stays what it is.
  const down = reading - Math.floor(reading + 1e-9);
  const step = scale === "degF" ? 5 / 9 : 1;
  return temperatureFromJson({ dimension, kelvin: ceiling.kelvin - down * step, scale });
}
