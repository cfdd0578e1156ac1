import {
  decimalsFor,
  formatFixed,
  formatFixedLimit,
  formatLimit,
  formatNumber,
  inFraction,
  type Length,
  type Measured,
  systemOf,
  type UnitSystem,
  unitSystem,
} from "../../quantity/index.js";
import { plusMinus } from "../format-measured.js";

/** The three units in which a shaft is spoken of. */
export interface ShownUnits {
  readonly system: UnitSystem;
  /** Along the shaft and across it. */
  readonly size: "inch" | "mm";
  readonly sizeSymbol: "in" | "mm";
  /** Wear, ovality, residuals. */
  readonly small: "thou" | "micrometre";
  readonly smallSymbol: "thou" | "µm";
  /** Decimals of a diameter on a scale: ten-thousandths of an inch, micrometres. */
  readonly decimals: number;
}

const units: Readonly<Record<UnitSystem, ShownUnits>> = Object.freeze({
  inch: { system: "inch", size: "inch", sizeSymbol: "in", small: "thou", smallSymbol: "thou", decimals: 4 },
  metric: {
    system: "metric",
    size: "mm",
    sizeSymbol: "mm",
    small: "micrometre",
    smallSymbol: "µm",
    decimals: 3,
  },
});

/** The units of the rebuild, where one is open; else those the readings were written in. */
export function shownUnits(written: UnitSystem | undefined): ShownUnits {
  return units[unitSystem() ?? written ?? "metric"];
}

/** The system a length was written in; undefined where it does not say. */
export function systemOfLength({ writtenIn }: Length): UnitSystem | undefined {
  const system = writtenIn === undefined ? "both" : systemOf(writtenIn);
  return system === "both" ? undefined : system;
}

/** A place along the shaft, without unit: "12", "12.5". */
export function stationText(station: Length, { size }: ShownUnits): string {
  return formatNumber(station.in(size), 7);
}

/** A place that is known no closer than that along the shaft, without unit: "12.07", "306.8". */
export function placeText(place: Length, { system, size }: ShownUnits): string {
  return formatFixed(place.in(size), system === "inch" ? 2 : 1);
}

/** A diameter as a scale shows it, with unit: "2.4372 in", "61.905 mm". */
export function sizeText(length: Length, { size, sizeSymbol, decimals }: ShownUnits): string {
  return `${formatFixed(length.in(size), decimals)} ${sizeSymbol}`;
}

/** A diameter that must not be passed, as a scale shows it and never past it: at most cut down, at least taken up. */
export function sizeLimit(
  length: Length,
  side: "at most" | "at least",
  { size, sizeSymbol, decimals }: ShownUnits,
): string {
  return `${formatFixedLimit(length.in(size), decimals, side)} ${sizeSymbol}`;
}

/** What is permitted from the smallest to the largest, each taken inwards: "2.4236 in to 2.4246 in". */
export function sizeLimits(
  { smallest, largest }: { readonly smallest: Length; readonly largest: Length },
  units: ShownUnits,
): string {
  return `${sizeLimit(smallest, "at least", units)} to ${sizeLimit(largest, "at most", units)}`;
}

/** A small length that must not be passed, cut down to three digits: "0.5 thou", "12 µm". */
export function smallAtMost(limit: Length, { small, smallSymbol }: ShownUnits): string {
  return `${formatLimit(limit.in(small), 3, "at most")} ${smallSymbol}`;
}

/** A small length with unit: "4.3 thou", "109 µm". */
export function smallText(length: Length, { small, smallSymbol }: ShownUnits): string {
  return `${smallNumber(length, small)} ${smallSymbol}`;
}

/** A small length without unit: "4.3", "109". */
export function smallNumber(length: Length, small: ShownUnits["small"]): string {
  return formatFixed(length.in(small), small === "thou" ? 1 : 0);
}

/** A nominal size as it is called: "2 7/16 in" where it is such a fraction, else "2.4362 in", "62 mm". */
export function nominalText(length: Length, { system }: ShownUnits): string {
  if (system === "metric") return `${formatNumber(length.in("mm"), 7)} mm`;
  const fraction = inFraction(length);
  return /thou$/.test(fraction) ? `${formatNumber(length.in("inch"), 7)} in` : fraction;
}

/** A measured diameter: "2.43317 ± 0.00024 in". */
export function sizeMeasured(measured: Measured<Length>, { size }: ShownUnits): string {
  return plusMinus(measured, { unit: size });
}

/** A measured small length: "4.31 ± 0.24 thou". */
export function smallMeasured(measured: Measured<Length>, { small }: ShownUnits): string {
  return plusMinus(measured, { unit: small });
}

/** An uncertainty by itself, in small units: two significant digits. */
export function smallUncertainty(length: Length, { small, smallSymbol }: ShownUnits): string {
  return `${twoDigits(length.in(small))} ${smallSymbol}`;
}

/** An uncertainty by itself, in units of size: two significant digits. */
export function sizeUncertainty(length: Length, { size, sizeSymbol }: ShownUnits): string {
  return `${twoDigits(length.in(size))} ${sizeSymbol}`;
}

function twoDigits(value: number): string {
  return value === 0 ? "0" : formatFixed(value, decimalsFor(value));
}

/** How far a reading is off: in small units, or in the units of sizes where that is a word of many digits. */
export function offText(residual: Length, units: ShownUnits): string {
  const size = residual.absolute();
  const far = size.in(units.size) > (units.system === "inch" ? 0.1 : 2);
  return `${far ? sizeText(size, units) : smallText(size, units)} too ${residual.si < 0 ? "small" : "large"}`;
}
