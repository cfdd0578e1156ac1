import {
  type Angle,
  decimalsFor,
  formatFixed,
  formatNumber,
  formatWithUncertainty,
  type Length,
  type Measured,
  type UnitSystem,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";

/** A small measured length in words: "1.23 ± 0.12 thou" with U at 95 %, or in micrometres. */
export function smallText(
  { value, standardUncertainty, degreesOfFreedom }: Measured<Length>,
  system: UnitSystem,
): string {
  const unit = system === "inch" ? "thou" : "micrometre";
  const expanded = coverageFactor(0.95, degreesOfFreedom) * standardUncertainty.in(unit);
  const [size, within] = formatWithUncertainty(value.in(unit), expanded);
  return `${size} ± ${within} ${system === "inch" ? "thou" : "µm"}`;
}

/** A measured angle in words: "93 ± 5°" with U at 95 %, to whole degrees at the finest. */
export function angleWords({ value, standardUncertainty, degreesOfFreedom }: Measured<Angle>): string {
  const expanded = coverageFactor(0.95, degreesOfFreedom) * standardUncertainty.in("degree");
  return `${Math.round(value.in("degree"))} ± ${Math.max(1, Math.ceil(expanded))}°`;
}

/** A plain length without uncertainty in small units: "4.3 thou", "109 µm", three significant digits. */
export function plainSmall(length: Length, system: UnitSystem): string {
  return system === "inch"
    ? `${formatNumber(length.in("thou"), 3)} thou`
    : `${formatNumber(length.in("micrometre"), 3)} µm`;
}

/** A chance in words: "less than 0.1 %", "3.4 %", "41 %". */
export function chanceText(chance: number): string {
  if (chance < 0.001) return "less than 0.1 %";
  return `${(100 * chance).toFixed(chance < 0.1 ? 1 : 0)} %`;
}

/** The same for a chance that may be near 1: "more than 99.9 %", never "100 %". */
export function sureChanceText(chance: number): string {
  return chance > 0.999 ? "more than 99.9 %" : chanceText(chance);
}

/** An uncertainty by itself in small units: "0.37 thou", "9.4 µm", two significant digits. */
export function uncertaintyText(length: Length, system: UnitSystem): string {
  const [unit, symbol] = system === "inch" ? (["thou", "thou"] as const) : (["micrometre", "µm"] as const);
  const value = length.in(unit);
  return `${value === 0 ? "0" : formatFixed(value, decimalsFor(value))} ${symbol}`;
}

/** Two ends in small units to one place, the second digit of half their distance: "−0.13 to 0.25 thou". */
export function betweenSmall(
  { low, high }: { readonly low: Length; readonly high: Length },
  system: UnitSystem,
): string {
  const [unit, symbol] = system === "inch" ? (["thou", "thou"] as const) : (["micrometre", "µm"] as const);
  const [a, b] = [low.in(unit), high.in(unit)];
  const half = (b - a) / 2;
  const [from] = formatWithUncertainty(a, half);
  const [to] = formatWithUncertainty(b, half);
  return `${from} to ${to} ${symbol}`;
}
