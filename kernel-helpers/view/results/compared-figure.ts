import type { Layout, PlotData } from "plotly.js";
import { formatNumber } from "../../quantity/index.js";
import type { ComparedFigure, ComparedValue } from "../../shaft/index.js";
import type { FigureBlock } from "../blocks.js";
import { alarm, seriesLook } from "../palette.js";
import { type PlotTrace, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";

/** The ends of the scale at the most: what is used less or more than this needs no figure [%]. */
const [least, most] = [0.5, 2000];

/** How much of its limit a figure uses, with the ends of its 95 % [%]: at 100 it is reached. */
export function usedOf(
  limit: NonNullable<ComparedFigure["limit"]>,
  { value, low, high }: ComparedValue,
): { readonly middle: number; readonly low: number; readonly high: number } {
  const [x, at] = [Number(value.value.valueOf()), Number(limit.value.valueOf())];
  const used = (si: number): number =>
    limit.side === "at most" ? (100 * si) / at : si > 0 ? (100 * at) / si : Number.POSITIVE_INFINITY;
  const ends = [used(low), used(high)].sort((a, b) => a - b);
  return { middle: used(x), low: ends[0]!, high: ends[1]! };
}

/** Every limit of both states on one scale: how much of it is used, mark and 95 %. */
export function comparedFigure(figures: readonly ComparedFigure[]): FigureBlock {
  const limited = figures.filter((one) => one.limit !== undefined);
  const used = (state: "before" | "after") =>
    limited.map(({ limit, [state]: value }) => usedOf(limit!, value));
  const within = (x: number): number => tidy(Math.min(most, Math.max(least, x)));
  const trace = (state: "before" | "after", series: number, offset: number): PlotTrace => {
    const look = seriesLook(series);
    const all = used(state);
    const shown = all.map(({ middle }) => within(middle));
    return {
      type: "scatter",
      mode: "markers",
      name: state === "before" ? "as made" : "after the cut",
      x: shown,
      y: limited.map((_, i) => i + offset),
      marker: { color: look.color, symbol: look.symbol, size: 9 },
      error_x: {
        type: "data",
        symmetric: false,
        array: all.map(({ high }, i) => tidy(Math.max(0, within(high) - shown[i]!))),
        arrayminus: all.map(({ low }, i) => tidy(Math.max(0, shown[i]! - within(low)))),
        color: look.color,
        thickness: 2,
        width: 5,
      },
      text: all.map(
        ({ middle, low, high }) =>
          `${formatNumber(middle, 3)} % of the limit, 95 % from ${formatNumber(Math.max(0, low), 3)} to ${formatNumber(Math.min(most, high), 3)} %`,
      ),
      hoverinfo: "text",
    } satisfies Record<string, unknown> & Partial<PlotData>;
  };
  const all = [...used("before"), ...used("after")];
  const [low, high] = [
    Math.max(least, Math.min(50, ...all.map((one) => Math.max(one.low, one.middle / 3))) / 1.3),
    Math.min(most, Math.max(150, ...all.map((one) => Math.min(one.high, 3 * one.middle))) * 1.3),
  ];
  const ticks = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].filter((t) => t >= low && t <= high);
  const worst = limited
    .map(({ name }, i) => ({ name, middle: used("after")[i]!.middle }))
    .sort((a, b) => b.middle - a.middle)[0];
  const names = limited.map(({ name }) => plotText(name, 26, 70));
  const lines = Math.max(1, ...names.map((name) => name.split("<br>").length));
  return {
    type: "figure",
    alt: `How much of each of ${limited.length} limits is used, as made and after the cut${worst === undefined ? "" : `; most after the cut by ${worst.name}, ${formatNumber(worst.middle, 3)} %`}.`,
    caption:
      "How much of each limit is used, mark and 95 %. Right of the dashed line the limit is broken. Where something must not be less than its limit (a factor, a distance), the limit's share of it is shown.",
    figure: {
      data: [trace("before", 0, -0.16), trace("after", 1, 0.16)],
      layout: {
        width: 720,
        height: 150 + Math.max(40, 16 * lines + 8) * limited.length,
        xaxis: {
          type: "log",
          range: [tidy(Math.log10(low)), tidy(Math.log10(high))],
          tickvals: ticks,
          ticktext: ticks.map(String),
          title: { text: "used of the limit (%)" },
        },
        yaxis: {
          range: [limited.length - 0.5, -0.5],
          tickvals: limited.map((_, i) => i),
          ticktext: names,
          showgrid: false,
        },
        shapes: [
          {
            type: "line",
            xref: "x",
            yref: "paper",
            x0: 100,
            x1: 100,
            y0: 0,
            y1: 1,
            line: { color: alarm, width: 2, dash: "dash" },
          },
        ],
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
