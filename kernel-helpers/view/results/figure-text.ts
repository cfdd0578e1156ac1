import {
  type AnyQuantity,
  formatNumber,
  isQuantity,
  isTemperature,
  type Measured,
  type Temperature,
} from "../../quantity/index.js";
import { plusMinus } from "../format-measured.js";

/** A figure of a decision or a note: measured, taken as exact, or in words. */
export type ShownFigure = Measured<AnyQuantity | number> | AnyQuantity | Temperature | number | string;

/**
 * A figure ready to read; a measured one with its expanded uncertainty (95 %), which the place around must say. That a
 * temperature is a difference is told by the figure's name.
 */
export function figureText(figure: ShownFigure): string {
  if (typeof figure === "string") return figure;
  if (typeof figure === "number") return formatNumber(figure);
  if (isQuantity(figure) || isTemperature(figure)) return figure.toString().replace(" (difference)", "");
  return plusMinus(figure);
}

/** Whether a figure carries an uncertainty. */
export function isUncertainFigure(figure: ShownFigure): figure is Measured<AnyQuantity | number> {
  return typeof figure === "object" && (figure as { kind?: unknown }).kind === "measured";
}
