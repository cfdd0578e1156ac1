import {
  type AnyQuantity,
  isQuantity,
  isTemperature,
  type Measured,
  type Temperature,
} from "../../quantity/index.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { countText } from "./count-text.js";

/** A value by itself: with its unit, its uncertainty, or both. */
export type Single = AnyQuantity | Temperature | Measured<AnyQuantity | number>;

/** Longer lists are cut, with the count said. */
const mostListed = 200;

/** A single value with its unit is its own name: one line, nothing under it. */
export function presentSingle(value: Single): Presentation {
  return Object.freeze<Presentation>({ title: singleText(value), blocks: [] });
}

/** A list of values with their units, on as few lines as they need. */
export function presentSingles(values: readonly Single[]): Presentation {
  const shown = values.slice(0, mostListed).map(singleText);
  const rest = values.length - shown.length;
  const more = rest > 0 ? ` … and ${rest} more` : "";
  const separator = values.some(isMeasured) ? "; " : ", ";
  return Object.freeze<Presentation>({
    title: countText(values.length, "value"),
    blocks: [{ type: "text", text: `${shown.join(separator)}${more}` }],
  });
}

/** Whether a value is a quantity, a temperature or a measured value. */
export function isSingle(value: unknown): value is Single {
  return isQuantity(value) || isTemperature(value) || isMeasured(value);
}

function isMeasured(value: unknown): value is Measured<AnyQuantity | number> {
  return typeof value === "object" && value !== null && (value as { kind?: unknown }).kind === "measured";
}

/** The value as a cell shows it. */
export function singleText(value: Single): string {
  return isMeasured(value) ? formatMeasured(value) : value.toString();
}
