import type { Length } from "../../quantity/index.js";
import { onScale, tidy } from "./plot-parts.js";

/** The lower and the upper end of a scale. */
export type Range = readonly [number, number];

/** The lowest and the highest of some values, however many. @throws RangeError there is none */
export function rangeOf(values: readonly number[]): Range {
  if (values.length === 0) throw new RangeError("rangeOf: at least one value is needed, got none");
  return [
    values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
    values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
  ];
}

/** A range widened to take in those of the wanted values that lie no more than `most` times its span outside. */
export function reach([low, high]: Range, wanted: readonly number[], most: number): Range {
  const span = high - low;
  const near = wanted.filter((value) => value >= low - most * span && value <= high + most * span);
  return rangeOf([low, high, ...near]);
}

/** A range with room at both ends, as shares of its span; one value alone gets room by its size. */
export function withRoom([low, high]: Range, below: number, above: number = below): Range {
  const span = high - low || Math.abs(high) * 1e-4 || 1;
  return [tidy(low - below * span), tidy(high + above * span)];
}

/** The axis along the shaft: all stations, with room at both ends; around a lone station, one unit each way. */
export function alongRange(
  stations: readonly { readonly station: Length }[],
  unit: "inch" | "mm",
  room: number = 0.025,
): Range {
  const [first, last] = rangeOf(stations.map(({ station }) => onScale(station, unit)));
  return first === last ? [first - 1, last + 1] : withRoom([first, last], room);
}

/** Whether a value can be seen on a scale. */
export function isWithin(value: number, [low, high]: Range): boolean {
  return value >= low && value <= high;
}

/**
 * The range of most values: of all within ten times the range of the middle half from it. What lies farther out
 * would shrink the rest to a line. It only chooses a scale and judges no reading.
 *
 * @param values at least one
 */
export function usualRange(values: readonly number[]): Range {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))]!;
  const [lower, upper] = [at(0.25), at(0.75)];
  const wide = 10 * (upper - lower || Math.abs(upper) * 1e-3);
  return rangeOf(sorted.filter((value) => value >= lower - wide && value <= upper + wide));
}
