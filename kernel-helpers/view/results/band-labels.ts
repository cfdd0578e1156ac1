import type { Annotations } from "plotly.js";
import type { Length } from "../../quantity/index.js";
import type { WearBand } from "../../survey/profile-types.js";
import { ink } from "../palette.js";
import { textWidth } from "../picture/text-width.js";
import { label, type PlotMark, tidy } from "./plot-parts.js";
import type { ShownUnits } from "./shown-units.js";

/** A point of the upper outline: station, and height over the centre line. */
export interface OutlinePoint {
  readonly x: number;
  readonly y: number;
}

const labelSize = 11;

/** Number and state over the centre line, size or depth under it: the longest words that fit the band. */
export function bandLabels(
  band: WearBand,
  [left, right]: readonly OutlinePoint[],
  units: ShownUnits,
  pixelsPerUnit: number,
): PlotMark[] {
  const room = (right!.x - left!.x) * pixelsPerUnit - 1;
  const half = Math.min(left!.y, right!.y) / 2;
  const { over, under } = bandWordsShort(band, units);
  const fits = (text: string): boolean =>
    text.split("<br>").every((line) => textWidth(line, labelSize, true) <= room);
  const place = (y: number): Partial<Annotations> => ({
    xref: "x2",
    yref: "y2",
    x: tidy((left!.x + right!.x) / 2),
    y,
    bgcolor: "rgba(255,255,255,0.86)",
    borderpad: 1,
    font: { size: labelSize, color: ink },
  });
  const top = over.find(fits);
  const foot = top === undefined ? undefined : under.find(fits);
  return [
    ...(top === undefined ? [] : [label(`<b>${top}</b>`, place(half))]),
    ...(foot === undefined ? [] : [label(foot, place(-half))]),
  ];
}

function bandWordsShort(
  { number, state, depth, diameter, shape, diameterAtFrom, diameterAtTo }: WearBand,
  units: ShownUnits,
): {
  over: string[];
  under: string[];
} {
  const over = [`${number}\u00a0\u00a0${state}`, `${number}<br>${state}`, `${number}`];
  if (depth === undefined || state === "as made" || state === "not judged") {
    const size = diameter.value.in(units.size).toFixed(units.decimals);
    return { over, under: [`${size} ${units.sizeSymbol}`, `${size}<br>${units.sizeSymbol}`] };
  }
  const nominal = diameter.value.plus(depth.value);
  const decimals = units.small === "thou" ? 1 : 0;
  const down = (size: Length): string => Math.abs(nominal.minus(size).in(units.small)).toFixed(decimals);
  const amount = shape === "flat" ? down(diameter.value) : `${down(diameterAtFrom)} to ${down(diameterAtTo)}`;
  const way = state === "worn" ? "down" : "up";
  return {
    over,
    under: [
      `${amount} ${units.smallSymbol} ${way}`,
      `${amount} ${units.smallSymbol}`,
      `${amount}<br>${units.smallSymbol}`,
    ],
  };
}
