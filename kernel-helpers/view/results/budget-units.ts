import {
  type AnyQuantity,
  decimalsFor,
  formatFixed,
  formatNumber,
  shownUnit,
  siSymbol,
  systemOf,
  unitNamed,
  unitSystem,
} from "../../quantity/index.js";
import type { Budget } from "../../statistics/index.js";

type Plain = AnyQuantity | number;

/** A unit as a table shows it: its size in SI units and its symbol, "" for a plain number. */
export interface TableUnit {
  readonly size: number;
  readonly symbol: string;
}

/** The unit in which an uncertainty is spoken of: thousandths of an inch or micrometres for a length. */
export function uncertaintyUnit(of: Plain): TableUnit {
  if (typeof of === "number") return { size: 1, symbol: "" };
  if (of.dimension === "length") {
    const written = of.writtenIn === undefined ? "metric" : systemOf(of.writtenIn);
    const { symbol, si } = unitNamed((unitSystem() ?? written) === "inch" ? "thou" : "micrometre");
    return { size: si, symbol };
  }
  return valueUnit(of);
}

/** The unit of a budget's uncertainties: that of the value, or for a slope thousandths per foot or µm per 100 mm. */
export function budgetUnit({ value, slope }: Budget): TableUnit {
  if (slope !== true) return uncertaintyUnit(value);
  return unitSystem() === "inch"
    ? { size: 0.001 / 12, symbol: "thou per foot" }
    : { size: 1e-5, symbol: "µm per 100 mm" };
}

/** The unit in which a value itself is shown. */
export function valueUnit(of: Plain): TableUnit {
  if (typeof of === "number") return { size: 1, symbol: "" };
  const name = shownUnit(of.dimension, of.writtenIn);
  if (name === undefined) return { size: 1, symbol: siSymbol(of.dimension) };
  const { symbol, si } = unitNamed(name);
  return { size: si, symbol: symbol.replace(" (difference)", "") };
}

/** A value as a plain number in a unit. */
export function inUnit(value: Plain, { size }: TableUnit): number {
  return Number(value.valueOf()) / size;
}

/** An uncertainty to two significant digits, with its unit: "0.35 °C". */
export function twoDigits(value: Plain, unit: TableUnit): string {
  const number = inUnit(value, unit);
  const text =
    number === 0 || number < 1e-4 ? formatNumber(number, 2) : formatFixed(number, decimalsFor(number));
  return unit.symbol === "" ? text : `${text} ${unit.symbol}`;
}

/** One unit per another: "µm per °C", "µm per 1/°C"; "" for two of a kind. */
export function perUnit(of: TableUnit, per: TableUnit): string {
  if (of.symbol === per.symbol) return "";
  const below = per.symbol.startsWith("/") ? `1${per.symbol}` : per.symbol;
  if (below === "") return of.symbol;
  return `${of.symbol === "" ? "1" : of.symbol} per ${below}`;
}
