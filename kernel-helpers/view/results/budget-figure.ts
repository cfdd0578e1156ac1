import type { Layout, PlotData } from "plotly.js";
import { formatFixed } from "../../quantity/index.js";
import type { Budget } from "../../statistics/index.js";
import type { FigureBlock } from "../blocks.js";
import { ink, seriesLook } from "../palette.js";
import { budgetUnit, inUnit, twoDigits } from "./budget-units.js";
import { tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";

const mostBars = 15;

/** An uncertainty budget as bars: what each source contributes, and the combined uncertainty for comparison. */
export function budgetFigure(budget: Budget): FigureBlock {
  const unit = budgetUnit(budget);
  const shown = budget.rows.slice(0, mostBars);
  const bars = [
    ...shown.map((row) => ({
      name: plotText(row.source, 26, 60),
      size: row.contribution,
      label: `${twoDigits(row.contribution, unit)} (${formatFixed(100 * row.share, 0)} %)`,
    })),
    {
      name: "together",
      size: budget.standardUncertainty,
      label: twoDigits(budget.standardUncertainty, unit),
    },
  ];
  const sizes = bars.map(({ size }) => tidy(inUnit(size, unit)));
  const left = budget.rows.length - shown.length;
  return {
    type: "figure",
    alt: `Bars of the contribution of each source to the uncertainty; the largest is ${shown[0]!.source} with ${formatFixed(100 * shown[0]!.share, 0)} % of the variance.`,
    caption: `One standard uncertainty each; in brackets the share of the variance. Contributions add in squares, not end to end.${left > 0 ? ` The ${left} smallest are left out.` : ""}`,
    figure: {
      data: [
        {
          type: "bar",
          orientation: "h",
          x: sizes,
          y: bars.map((_, i) => i),
          hovertext: bars.map(({ label }) => label),
          hoverinfo: "text",
          width: 0.6,
          showlegend: false,
          marker: {
            color: bars.map((_, i) => (i < shown.length ? seriesLook(0).color : "rgba(0,0,0,0)")),
            line: { color: ink, width: bars.map((_, i) => (i < shown.length ? 0 : 1.5)) },
          },
        } satisfies Record<string, unknown> & Partial<PlotData>,
      ],
      layout: {
        width: 720,
        height: 140 + 58 * bars.length,
        title: { text: plotText(budget.title, 36, 70) },
        xaxis: {
          range: [0, tidy(1.05 * Math.max(...sizes)) || 1],
          title: { text: `contribution${unit.symbol === "" ? "" : ` (${unit.symbol})`}` },
        },
        yaxis: {
          range: [bars.length - 0.5, -0.5],
          tickvals: bars.map((_, i) => i),
          // Beside the name, for a telephone has no room at the end of a bar.
          ticktext: bars.map(({ name, label }) => `${name}<br><b>${label}</b>`),
          showgrid: false,
        },
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
