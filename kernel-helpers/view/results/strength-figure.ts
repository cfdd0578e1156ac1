import type { Layout, PlotData } from "plotly.js";
import type { SafetyFactor, ShaftSafety } from "../../shaft/index.js";
import type { FigureBlock } from "../blocks.js";
import { alarm, seriesLook } from "../palette.js";
import { type PlotTrace, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { factorNumber } from "./strength-text.js";

/** Where the axis ends at the most: beyond, nobody asks how strong. */
const farthest = 50;

/** The factors of safety of each place as marks with their 95 %, against the one demanded. */
export function strengthFigure(places: readonly ShaftSafety[], demanded: number): FigureBlock {
  const all = places.flatMap(({ fatigue, yielding }) => [fatigue, yielding]);
  const top = Math.min(farthest, Math.max(demanded * 1.5, ...all.map(({ high }) => high * 1.15)));
  // 1 is where it breaks: always in sight.
  const least = Math.min(0.9, ...all.map(({ low }) => low / 1.15));
  const bottom = Math.max(least, top / 1000);
  const trace = (of: "fatigue" | "yielding", series: number, offset: number): PlotTrace => {
    const factors: readonly SafetyFactor[] = places.map((place) => place[of]);
    const shown = factors.map(({ factor }) => tidy(Math.min(top, Math.max(bottom, factor.value))));
    const look = seriesLook(series);
    return {
      type: "scatter",
      mode: "markers",
      name: of,
      x: shown,
      y: places.map((_, i) => i + offset),
      marker: { color: look.color, symbol: look.symbol, size: 9 },
      error_x: {
        type: "data",
        symmetric: false,
        array: factors.map(({ high }, i) => tidy(Math.max(0, Math.min(top, high) - shown[i]!))),
        arrayminus: factors.map(({ low }, i) => tidy(Math.max(0, shown[i]! - Math.max(bottom, low)))),
        color: look.color,
        thickness: 2,
        width: 5,
      },
      text: factors.map(
        ({ factor, low, high }) =>
          `${of}: ${factorNumber(factor.value)}, 95 % ${factorNumber(low)} to ${factorNumber(high)}`,
      ),
      hoverinfo: "text",
    } satisfies Record<string, unknown> & Partial<PlotData>;
  };
  const ticks = [0.1, 0.2, 0.5, 1, 1.5, 2, 3, 4, 6, 10, 20, 50].filter((t) => t >= bottom && t <= top);
  return {
    type: "figure",
    alt: `Factors of safety of ${places.length} places with their 95 % intervals: ${places.map(({ name, fatigue, yielding }) => `${name} ${factorNumber(fatigue.factor.value)} against fatigue, ${factorNumber(yielding.factor.value)} against yielding`).join("; ")}. Demanded: ${factorNumber(demanded)}.`,
    caption: `Factor of safety, mark and 95 %. At 1 it breaks or yields. Dashed: what is demanded, ${factorNumber(demanded)}; where a bar crosses it, it cannot be told yet.`,
    figure: {
      data: [trace("fatigue", 0, -0.14), trace("yielding", 1, 0.14)],
      layout: {
        width: 720,
        height: 150 + 56 * places.length,
        title: { text: "Factor of safety by place" },
        xaxis: {
          type: "log",
          range: [tidy(Math.log10(bottom)), tidy(Math.log10(top))],
          tickvals: ticks,
          ticktext: ticks.map(String),
          title: { text: "factor of safety (-)" },
        },
        yaxis: {
          range: [places.length - 0.5, -0.5],
          tickvals: places.map((_, i) => i),
          ticktext: places.map(({ name }) => plotText(name, 22, 60)),
          showgrid: false,
        },
        shapes: [
          {
            type: "line",
            xref: "x",
            yref: "paper",
            x0: demanded,
            x1: demanded,
            y0: 0,
            y1: 1,
            line: { color: alarm, width: 2, dash: "dash" },
          },
        ],
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
