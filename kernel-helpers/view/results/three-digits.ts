import { type AnyQuantity, formatLimit, formatNumber, shownUnit, unitNamed } from "../../quantity/index.js";

/** A quantity to three digits, in the unit it is shown in: "5.49 oz", "280°". */
export function threeDigits(value: AnyQuantity): string {
  return inShownUnit(value, (number) => formatNumber(number, 3));
}

/** What must not be passed, to three digits and cut down, likewise: a tag, a speed. */
export function threeAtMost(limit: AnyQuantity): string {
  return inShownUnit(limit, (number) => formatLimit(number, 3, "at most"));
}

/** The most that something may come to, to three digits and taken up, likewise: gear chosen by it is strong enough. */
export function threeAtLeast(limit: AnyQuantity): string {
  return inShownUnit(limit, (number) => formatLimit(number, 3, "at least"));
}

function inShownUnit(value: AnyQuantity, text: (number: number) => string): string {
  const name = shownUnit(value.dimension, value.writtenIn);
  if (name === undefined) return value.toString();
  const { si, symbol } = unitNamed(name);
  return `${text(value.si / si)}${symbol === "°" ? "°" : ` ${symbol}`}`;
}
