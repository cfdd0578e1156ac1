import type { Annotations, Shape } from "plotly.js";
import { ink, paper, pencil } from "../palette.js";
import { type PlotMark, tidy } from "./plot-parts.js";

/** A force at a station, as it points seen from the end of the shaft. */
export interface ClockForce {
  /** Station on the figure's scale. */
  readonly at: number;
  /** From the right, counter-clockwise [rad]. */
  readonly angle: number;
  readonly text: string;
  readonly color: string;
}

/** Height of one row [px]. */
export const clockRow = 36;
const radius = 11;

/**
 * Forces beside a shaft seen from the side: each in a row of its own as a small clock, whose hand points as the force does
 * seen from the end, with its name beside it and a fine line to the shaft. The y axis of the panel is in pixels, 0 at the
 * shaft's axis.
 *
 * @param side   above or below the shaft
 * @param edge   how far the shaft reaches on that side [px]
 * @param range  of the stations
 */
export function forceClocks(
  forces: readonly ClockForce[],
  side: "above" | "below",
  edge: number,
  range: readonly [number, number],
): { readonly annotations: readonly PlotMark[]; readonly shapes: readonly PlotMark[] } {
  const sign = side === "above" ? 1 : -1;
  // The leftmost furthest out: its line then passes the others' names, which stand on the right, on their left.
  const rows = [...forces].sort((a, b) => b.at - a.at);
  const annotations: PlotMark[] = [];
  const shapes: PlotMark[] = [];
  rows.forEach(({ at, angle, text, color }, row) => {
    const y = sign * (edge + clockRow * (row + 0.75));
    // On the side with more room, so that a telephone has place for two short lines.
    const left = at > range[0] + 0.5 * (range[1] - range[0]);
    shapes.unshift({
      type: "line",
      xref: "x",
      yref: "y",
      x0: at,
      x1: at,
      y0: sign * edge,
      y1: y,
      line: { color: pencil, width: 1, dash: "dot" },
    } satisfies Partial<Shape>);
    shapes.push({
      type: "circle",
      xref: "x",
      yref: "y",
      xsizemode: "pixel",
      ysizemode: "pixel",
      xanchor: at,
      yanchor: y,
      x0: -radius,
      x1: radius,
      y0: -radius,
      y1: radius,
      fillcolor: paper,
      line: { color: pencil, width: 1 },
    } satisfies Partial<Shape>);
    const [right, up] = [tidy(radius * Math.cos(angle)), tidy(radius * Math.sin(angle))];
    annotations.push(
      {
        x: at,
        y,
        xref: "x",
        yref: "y",
        xshift: right,
        yshift: up,
        ax: -2 * right,
        ay: 2 * up,
        text: "",
        showarrow: true,
        arrowhead: 2,
        arrowwidth: 2,
        arrowcolor: color,
      } satisfies Partial<Annotations>,
      {
        x: at,
        y,
        xref: "x",
        yref: "y",
        xanchor: left ? "right" : "left",
        xshift: (left ? -1 : 1) * (radius + 5),
        align: left ? "right" : "left",
        text,
        showarrow: false,
        bgcolor: paper,
        borderpad: 1,
        font: { size: 11, color: ink },
      } satisfies Partial<Annotations>,
    );
  });
  return { annotations, shapes };
}
