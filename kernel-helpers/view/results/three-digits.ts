import { type AnyQuantity, formatNumber, shownUnit, unitNamed } from "../../quantity/index.js";

/** A quantity to three digits, in the unit it is shown in: "5.49 oz", "280°". */
export function threeDigits(value: AnyQuantity): string {
  const name = shownUnit(value.dimension, value.writtenIn);
  if (name === undefined) return value.toString();
  const { si, symbol } = unitNamed(name);
  return `${formatNumber(value.si / si, 3)}${symbol === "°" ? "°" : ` ${symbol}`}`;
}
