import type { Layout, PlotData, Shape } from "plotly.js";
import { type AnyQuantity, formatNumber, formatWithUncertainty, measured } from "../../quantity/index.js";
import type { MonteCarlo, PlainInterval } from "../../statistics/index.js";
import type { FigureBlock, Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { hairline, ink, seriesLook } from "../palette.js";
import { inUnit, type TableUnit, twoDigits, uncertaintyUnit, valueUnit } from "./budget-units.js";
import { tidy } from "./plot-parts.js";

type Plain = AnyQuantity | number;

/** A simulation: its intervals, whether linear propagation would do, and where the results fell. */
export function presentMonteCarlo(result: MonteCarlo<Plain>): Presentation {
  const { draws, seed, coverage, estimate, standardUncertainty, shortest, symmetric, linear } = result;
  const unit = valueUnit(estimate);
  const percent = `${formatNumber(100 * coverage)} %`;
  const interval = (of: PlainInterval<Plain>): string => intervalText(of, standardUncertainty, unit);
  return Object.freeze<Presentation>({
    title: "Simulation",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: `shortest interval, ${percent}`, value: interval(shortest) },
          { label: `interval with equal tails, ${percent}`, value: interval(symmetric) },
          { label: "standard uncertainty", value: twoDigits(standardUncertainty, uncertaintyUnit(estimate)) },
          {
            label: "linear propagation",
            value: formatMeasured(
              measured<Plain>(linear.value, linear.standardUncertainty, linear.degreesOfFreedom),
              { coverage },
            ),
          },
          { label: "draws", value: String(draws), note: `seed ${seed}: the same seed gives the same result` },
        ],
      },
      {
        type: "verdict",
        outcome: linear.agrees,
        text: "linear propagation will do",
        because: linear.verdict,
      },
      simulationFigure(result, unit, percent),
    ],
  });
}

/** Both ends to the place where two digits of the standard uncertainty end. */
function intervalText({ low, high }: PlainInterval<Plain>, u: Plain, unit: TableUnit): string {
  const end = (of: Plain): string => formatWithUncertainty(inUnit(of, unit), inUnit(u, unit))[0];
  return `${end(low)} to ${end(high)} ${unit.symbol}`.trim();
}

function simulationFigure(result: MonteCarlo<Plain>, unit: TableUnit, percent: string): FigureBlock {
  const { from, to, counts } = result.histogram;
  const [start, end] = [inUnit(from, unit), inUnit(to, unit)];
  const step = (end - start) / counts.length;
  const line = (at: Plain, color: string, dash: "solid" | "dot") =>
    ({
      type: "line",
      xref: "x",
      yref: "paper",
      x0: tidy(inUnit(at, unit)),
      x1: tidy(inUnit(at, unit)),
      y0: 0,
      y1: 1,
      line: { color, width: dash === "dot" ? 2.5 : 1.5, dash },
    }) satisfies Partial<Shape>;
  return {
    type: "figure",
    alt: `Histogram of ${result.draws} simulated values, with the ends of the shortest and of the linear interval.`,
    caption: `Where the simulated values fell. Full lines: shortest interval, ${percent}; dotted: linear propagation.`,
    figure: {
      data: [
        {
          type: "bar",
          x: counts.map((_, i) => tidy(start + (i + 0.5) * step)),
          y: [...counts],
          width: tidy(step),
          // Pale, so that the lines stand out on it.
          marker: { color: hairline },
          showlegend: false,
        } satisfies Record<string, unknown> & Partial<PlotData>,
      ],
      layout: {
        width: 720,
        height: 360,
        title: { text: "Simulated values" },
        bargap: 0,
        xaxis: { title: { text: `result${unit.symbol === "" ? "" : ` (${unit.symbol})`}` } },
        yaxis: { title: { text: "count" } },
        shapes: [
          line(result.shortest.low, ink, "solid"),
          line(result.shortest.high, ink, "solid"),
          line(result.linear.low, seriesLook(1).color, "dot"),
          line(result.linear.high, seriesLook(1).color, "dot"),
        ],
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
