import type { BoxAlignment, BoxFit } from "../../bearing/index.js";
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
  const { tolerance } = fit;
  // One band for all boxes of one clearance.
  const wanted = [...new Set(fit.boxes.map((box) => box.wanted.si))];
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
        shapes: wanted.map((si) => ({
          type: "rect",
          xref: "paper",
          x0: 0,
          x1: 1,
          y0: gap(si - tolerance.si),
          y1: gap(si + tolerance.si),
          fillcolor: pencil,
          opacity: 0.15,
          line: { width: 0 },
          layer: "below",
        })),
      },
    },
  };
}

/** The bottoms of the boxes over the line through all of them, each with its own line. */
export function lineFigure({ boxes }: BoxAlignment, along: UnitName, small: UnitName): FigureBlock {
  const [sizeUnit, heightUnit] = [unitNamed(along), unitNamed(small)];
  const size = (si: number): number => Number((si / sizeUnit.si).toPrecision(8));
  const height = (si: number): number => Number((si / heightUnit.si).toPrecision(6));
  const traces = boxes.flatMap((box, index) => {
    const { color, symbol } = seriesLook(index);
    const stations = box.readings.map(({ station }) => station.si);
    const ends = [Math.min(...stations), Math.max(...stations)];
    const half = box.tilt.value.si / 2;
    const middle = box.offset.value.si;
    return [
      {
        type: "scatter",
        mode: "markers",
        name: plotText(box.name),
        x: stations.map(size),
        y: box.readings.map((reading) => height(reading.height.si)),
        marker: { color, size: 8, symbol },
        hovertemplate: `${plotText(box.name)}: %{y:.3~g} ${heightUnit.symbol} at %{x} ${sizeUnit.symbol}<extra></extra>`,
      },
      {
        type: "scatter",
        mode: "lines",
        showlegend: false,
        x: ends.map(size),
        y: [height(middle - half), height(middle + half)],
        line: { color, width: 1.5 },
        hoverinfo: "skip",
      },
    ];
  });
  return {
    type: "figure",
    alt: `Heights of ${boxes.map(({ name }) => name).join(" and ")} over the straight line that fits all readings best, with each box's own line.`,
    caption: "Over the line through all boxes, up is up. A box in line lies flat.",
    figure: {
      data: traces,
      layout: {
        title: { text: "The boxes along the shaft" },
        width: 720,
        height: 340,
        xaxis: { title: { text: `station [${sizeUnit.symbol}]` } },
        yaxis: { title: { text: `over the line [${heightUnit.symbol}]` } },
        shapes: [
          {
            type: "line",
            xref: "paper",
            x0: 0,
            x1: 1,
            y0: 0,
            y1: 0,
            line: { color: pencil, width: 1, dash: "dot" },
          },
        ],
      },
    },
  };
}
