import { formatFixed, formatNumber } from "../quantity/index.js";
import { referenceTemperatureFactor } from "./reference-temperature.js";
import type { Table } from "./table.js";

/** What is done to bring the diameters of a table to 20 °C. */
export interface TemperatureCorrection {
  /** Diameter at 20 °C over diameter read [-]. */
  readonly factor: number;
  /** Its standard uncertainty from the temperature [-]. */
  readonly relativeU: number;
  /** In words. */
  readonly text: string;
  readonly warnings: readonly string[];
}

/** The correction a table's conditions allow; where they do not suffice, none, and why. */
export function temperatureCorrection(table: Table, diameterColumn: string): TemperatureCorrection {
  const { temperature, temperatureUncertainty, part, instruments } = table.conditions;
  const instrument = instruments[diameterColumn];
  const none = (why: string, warnings: readonly string[] = []): TemperatureCorrection => ({
    factor: 1,
    relativeU: 0,
    text: `Diameters as read, not brought to 20 °C: ${why}.`,
    warnings,
  });
  if (temperature === undefined) return none("the table gives no temperature");
  const missing = [
    ...(part?.expansion === undefined ? [part === undefined ? "the part" : part.title] : []),
    ...(instrument?.expansion === undefined
      ? [instrument === undefined ? "the instrument" : instrument.title]
      : []),
  ].join(" and of ");
  const away = temperature.in("degC") - 20;
  if (missing !== "") {
    // Steel on steel is right at any temperature; what is not known is how far these two differ.
    const warning = `The readings were taken at ${temperature}, but the expansion of ${missing} is not known; the diameters are not brought to 20 °C.`;
    return none(`the expansion of ${missing} is not known`, Math.abs(away) > 1e-6 ? [warning] : []);
  }
  const factor = referenceTemperatureFactor({
    temperature,
    uncertainty: temperatureUncertainty,
    partExpansion: part!.expansion!,
    instrumentExpansion: instrument!.expansion!,
  });
  const millionths = (factor.value - 1) * 1e6;
  const perLength =
    table.unitSystem === "inch"
      ? `${signed(millionths / 1000)} thou for each inch of diameter`
      : `${signed(millionths / 10)} µm for each 100 mm of diameter`;
  return {
    factor: factor.value,
    relativeU: factor.standardUncertainty,
    text: `Diameters brought from ${temperature} to 20 °C: ${perLength}.`,
    warnings:
      temperatureUncertainty === undefined && Math.abs(away) > 1e-6
        ? [`How well the temperature of ${temperature} is known is not said; it is taken as exact.`]
        : [],
  };
}

function signed(value: number): string {
  const text = Math.abs(value) < 0.0005 ? formatNumber(value, 2) : formatFixed(value, 3);
  return value > 0 ? `+${text}` : text;
}
