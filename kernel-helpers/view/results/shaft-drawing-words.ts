import { formatFixed, formatFixedLimit, formatNumber, type Length } from "../../quantity/index.js";
import type { ShownUnits } from "./shown-units.js";

export function size(length: Length, { size: unit, decimals }: ShownUnits): string {
  return formatFixed(length.in(unit), decimals);
}

/** Smallest and largest of what is permitted, each taken inwards: "59.654 to 59.700". */
export function limitsText(
  { smallest, largest }: { readonly smallest: Length; readonly largest: Length },
  { size: unit, decimals }: ShownUnits,
  between: string,
): string {
  return `${formatFixedLimit(smallest.in(unit), decimals, "at least")}${between}${formatFixedLimit(largest.in(unit), decimals, "at most")}`;
}

export function lengthText(length: Length, { size: unit, system }: ShownUnits): string {
  return formatNumber(Number(length.in(unit).toFixed(system === "inch" ? 3 : 1)), 6);
}

export function inWords({ system }: ShownUnits): string {
  return system === "inch" ? "inches" : "millimetres";
}

export function taperText(taper: number): string {
  return `taper 1:${formatNumber(1 / taper, 4)}`;
}

export function raText(length: Length, { system }: ShownUnits): string {
  const micrometres = length.in("micrometre");
  return system === "metric"
    ? `${formatNumber(micrometres, 2)} µm`
    : `${formatNumber(micrometres / 0.0254, 2)} µin`;
}
