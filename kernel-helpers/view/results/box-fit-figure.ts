import type { BoxFit } from "../../bearing/index.js";
import { type UnitName, unitNamed } from "../../quantity/index.js";
import type { FigureBlock } from "../blocks.js";
import { pencil, seriesLook } from "../palette.js";
import { plotText } from "./plot-text.js";

/** The gaps along each box with their line, the wanted clearance as a band. */
export function fitFigure(fit: BoxFit, along: UnitName, small: UnitName): FigureBlock {
  const [sizeUnit, gapUnit] = [unitNamed(along), unitNamed(small)];
  const size = (si: number): number => Number((si / sizeUnit.si).toPrecision(8));
  const gap = (si: number): number => Number((si / gapUnit.si).toPrecision(6));
  const traces = fit.boxes.flatMap((box, index) => {
    const { color } = seriesLook(index);
    const stations = box.readings.map(({ station }) => station.si);
    const ends = [Math.min(...stations), Math.max(...stations)];
    const half = box.taper.value.si / 2;
    return [
      {
        type: "scatter",
        mode: "markers",
        name: plotText(box.name),
        x: stations.map(size),
        y: box.readings.map((reading) => gap(reading.gap.si)),
        marker: { color, size: 8, symbol: index === 0 ? "circle" : "diamond" },
        hovertemplate: `${plotText(box.name)}: %{y} ${gapUnit.symbol} at %{x} ${sizeUnit.symbol}<extra></extra>`,
      },
      {
        type: "scatter",
        mode: "lines",
        showlegend: false,
        x: ends.map(size),
        y: [gap(box.clearance.value.si - half), gap(box.clearance.value.si + half)],
        line: { color, width: 1.5 },
        hoverinfo: "skip",
      },
    ];
  });
  const { wanted, tolerance } = fit;
  return {
    type: "figure",
    alt: `Gaps along ${fit.boxes.map(({ name }) => name).join(" and ")} with a straight line through each, and the band of the wanted diametral clearance.`,
    caption: "Diametral clearance along each box. The band is what is wanted.",
    figure: {
      data: traces,
      layout: {
        title: { text: "Clearance along the boxes" },
        width: 720,
        height: 360,
        xaxis: { title: { text: `station in the box [${sizeUnit.symbol}]` } },
        yaxis: { title: { text: `gap [${gapUnit.symbol}]` }, rangemode: "tozero" },
        shapes: [
          {
            type: "rect",
            xref: "paper",
            x0: 0,
            x1: 1,
            y0: gap(wanted.si - tolerance.si),
            y1: gap(wanted.si + tolerance.si),
            fillcolor: pencil,
            opacity: 0.15,
            line: { width: 0 },
            layer: "below",
          },
        ],
      },
    },
  };
}
