import type { CoastDown } from "../../bearing/index.js";
import type { FigureBlock } from "../blocks.js";
import { seriesLook } from "../palette.js";
import { plotText } from "./plot-text.js";

const toRpm = 30 / Math.PI;

/** Speed against time with nothing driving: readings, and the line or curve whose slope is the friction. */
export function coastDownFigure({ title, readings, curve, drag }: CoastDown): FigureBlock {
  const { color, symbol } = seriesLook(0);
  const round = (value: number): number => Number(value.toFixed(3));
  const [start, end] = [readings[0]!.time, curve.at(-1)!.time];
  return {
    type: "figure",
    alt: `Speed against time while it runs down, from ${round(curve[0]!.speed * toRpm).toFixed(0)} to ${round(curve.at(-1)!.speed * toRpm).toFixed(0)} rpm in ${round(curve.at(-1)!.time).toFixed(0)} s, with ${drag === "steady" ? "the straight line" : "the curve"} through it.`,
    caption: "The steeper it falls, the more friction: torque is the moment of inertia times the slope.",
    figure: {
      data: [
        {
          type: "scatter",
          mode: "lines",
          x: curve.map(({ time }) => round(time)),
          y: curve.map(({ speed }) => round(speed * toRpm)),
          line: { color, width: 1.6 },
          hoverinfo: "skip",
          showlegend: false,
        },
        {
          type: "scatter",
          mode: "markers",
          x: readings.map(({ time }) => round(time - start)),
          y: readings.map(({ speed }) => round(speed * toRpm)),
          marker: { color, symbol, size: 8 },
          hovertemplate: "%{y:.1f} rpm at %{x} s<extra></extra>",
          showlegend: false,
        },
      ],
      layout: {
        title: { text: `Running down: ${plotText(title)}` },
        width: 720,
        height: 320,
        xaxis: { title: { text: "time [s]" }, range: [round(-0.02 * end), round(1.04 * end)] },
        yaxis: { title: { text: "speed [rpm]" }, rangemode: "tozero" },
        margin: { l: 64, r: 24, t: 56, b: 52 },
      },
    },
  };
}
