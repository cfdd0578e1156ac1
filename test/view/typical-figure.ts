import type { Figure } from "../../kernel-helpers/view/blocks.js";

const stations = [0, 1, 2, 3, 4, 5, 6, 7, 8];
const diameters = stations.map((station) => (station > 2.8 && station < 6.2 ? 2.4332 : 2.4371));

/** Readings with error bars, a fitted line, a shaded band, a limit line and notes, as a survey shows them. */
export const typicalFigure: Figure = {
  data: [
    {
      type: "scatter",
      mode: "markers",
      name: "at 0°",
      x: stations,
      y: diameters,
      error_y: { type: "data", array: stations.map(() => 0.0003) },
      hovertemplate: "station %{x} in<br>%{y:.4f} in<extra></extra>",
    },
    {
      type: "scatter",
      mode: "lines",
      name: "fitted",
      x: [0, 2.5, 2.5, 6.5, 6.5, 8],
      y: [2.4371, 2.4371, 2.4332, 2.4332, 2.4371, 2.4371],
    },
  ],
  layout: {
    width: 720,
    height: 420,
    title: { text: "Diameter along the shaft" },
    xaxis: { title: { text: "station [in]" } },
    yaxis: { title: { text: "diameter [in]" }, tickformat: ".4f" },
    shapes: [
      {
        type: "rect",
        x0: 2.5,
        x1: 6.5,
        y0: 0,
        y1: 1,
        yref: "paper",
        fillcolor: "#c1440e",
        opacity: 0.12,
        line: { width: 0 },
      },
      { type: "line", x0: 0, x1: 1, xref: "paper", y0: 2.4375, y1: 2.4375, line: { dash: "dash", width: 1 } },
    ],
    annotations: [{ x: 4.5, y: 2.4332, text: "worn 3.9 thou", ay: -50, ax: 0 }],
  },
};

/** The same without a word in it. */
export const wordlessFigure: Figure = {
  data: typicalFigure.data,
  layout: {
    ...typicalFigure.layout,
    title: { text: "" },
    showlegend: false,
    xaxis: { showticklabels: false },
    yaxis: { showticklabels: false, automargin: false },
    annotations: [],
  },
};

/** A heat map of two cells, one of each end of the scale. */
export const heatFigure: Figure = {
  data: [
    {
      type: "heatmap",
      z: [[0, 1]],
      colorscale: [
        [0, "rgb(255,0,0)"],
        [1, "rgb(0,0,255)"],
      ],
      showscale: false,
    },
  ],
  layout: {
    width: 300,
    height: 200,
    margin: { l: 0, r: 0, t: 0, b: 0 },
    xaxis: { visible: false },
    yaxis: { visible: false },
  },
};
