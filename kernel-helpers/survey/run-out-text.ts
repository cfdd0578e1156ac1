import {
  type Angle,
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
