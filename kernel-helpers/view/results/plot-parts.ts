import type { Annotations, Shape } from "plotly.js";
import type { Length } from "../../quantity/index.js";
import type { Figure } from "../blocks.js";

/** One trace of a figure, plain JSON. Each is checked against plotly's own types where it is written down. */
export type PlotTrace = Figure["data"][number];

/** An annotation or a shape of a figure, plain JSON. */
export type PlotMark = Readonly<Record<string, unknown>>;

/** A length as a plain number on a scale, free of the last digits that unit conversion leaves. */
export function onScale(length: Length, unit: "inch" | "mm" | "thou" | "micrometre"): number {
  return tidy(length.in(unit));
}

/** A number to 12 significant digits: far finer than any reading, and the same bytes on every machine. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

/** Where a panel lies in a figure: the share of the plot's height from its foot. */
export type Domain = readonly [number, number];

/** A stretch along the shaft as an upright strip over a panel, under everything else. */
export function strip(from: number, to: number, domain: Domain, fillcolor: string): PlotMark {
  return {
    type: "rect",
    layer: "below",
    xref: "x",
    yref: "paper",
    x0: from,
    x1: to,
    y0: domain[0],
    y1: domain[1],
    fillcolor,
    line: { width: 0 },
  } satisfies Partial<Shape>;
}

/** A short text without an arrow. */
export function label(text: string, place: PlotMark): PlotMark {
  return { text, showarrow: false, font: { size: 11 }, ...(place satisfies Partial<Annotations>) };
}
