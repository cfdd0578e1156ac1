import type { LimitKept, OptionsWeighed } from "../../shaft/index.js";
import { normalQuantile } from "../../statistics/index.js";
import type { FigureBlock } from "../blocks.js";
import { alarm, seriesLook } from "../palette.js";
import { plotText } from "./plot-text.js";

/** How far to either side the scale goes: beyond it nothing changes a choice. */
const [least, most] = [-4, 6];
/** So far apart that their names do not touch on a telephone. */
const chances = [0.001, 0.1, 0.5, 0.9, 0.999];

/** By the share of draws; where all or none hold, by the margin in its own deviations, at least as far out. */
function placeOf({ chance, inDeviations }: LimitKept, draws: number): number {
  const end = normalQuantile(1 - 1 / draws);
  if (chance === 1) return Math.min(most, Math.max(end, inDeviations));
  if (chance === 0) return Math.max(least, Math.min(-end, inDeviations));
  return Math.max(least, Math.min(most, normalQuantile(chance)));
}

/** Every limit of every option on one scale: how far its margin lies from breaking, by the chance that it holds. */
export function weighedFigure({ options, wanted, draws }: OptionsWeighed): FigureBlock {
  const names = [...new Set(options.flatMap(({ limits }) => limits.map(({ name }) => name)))].reverse();
  const row = Math.max(34, 10 + 6 * options.length);
  const data = options.map((option, i) => {
    const { color, symbol } = seriesLook(i);
    const shift = (i - (options.length - 1) / 2) * (0.7 / options.length);
    return {
      type: "scatter",
      mode: "markers",
      name: plotText(option.name),
      x: option.limits.map((kept) => Number(placeOf(kept, draws).toFixed(4))),
      y: option.limits.map(({ name }) => Number((names.indexOf(name) - shift).toFixed(4))),
      marker: { color, symbol, size: 8 },
      customdata: option.limits.map(({ name, chance }) => [plotText(name), (100 * chance).toFixed(2)]),
      hovertemplate: `${plotText(option.name)}: %{customdata[0]} holds with %{customdata[1]} %<extra></extra>`,
    };
  });
  return {
    type: "figure",
    alt: `How far each limit is from breaking for ${options.map(({ name }) => name).join(", ")}.`,
    caption: `Each mark is a limit of an option, by the share of drawn shafts in which it holds; where it holds in all, farther to the right by how many of its standard deviations its margin is away. Left of the full line it is more likely to break than to hold. Dashed: the chance wanted, ${Math.round(100 * wanted)} %.`,
    figure: {
      data,
      layout: {
        width: 720,
        height: 150 + row * names.length,
        margin: { l: 24, r: 24, t: 64, b: 64 },
        xaxis: {
          title: { text: "chance that it holds" },
          range: [least - 0.3, most + 0.3],
          tickvals: chances.map((p) => Number(normalQuantile(p).toFixed(4))),
          ticktext: chances.map((p) => `${Number((100 * p).toFixed(1))} %`),
        },
        yaxis: {
          tickvals: names.map((_, i) => i),
          ticktext: names.map((name) => plotText(name, 20)),
          range: [-0.6, names.length - 0.4],
          showgrid: false,
        },
        shapes: [
          { x: 0, dash: "solid" },
          { x: Number(normalQuantile(wanted).toFixed(4)), dash: "dash" },
        ].map(({ x, dash }) => ({
          type: "line",
          yref: "paper",
          x0: x,
          x1: x,
          y0: 0,
          y1: 1,
          line: { color: alarm, width: 1.2, dash },
        })),
      },
    },
  };
}
