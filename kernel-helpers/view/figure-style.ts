import { grid, hairline, ink, paper, pencil, seriesLooks } from "./palette.js";

const axis = {
  showline: true,
  mirror: true,
  linecolor: pencil,
  linewidth: 1,
  ticks: "outside",
  ticklen: 4,
  tickcolor: pencil,
  gridcolor: grid,
  zeroline: false,
  automargin: true,
  title: { standoff: 10, font: { size: 12 } },
};

/**
 * How a figure looks where it does not say so itself, as a plotly layout template: white paper, hairlines, ticks
 * outwards, a frame, like a drawing off the board. One font live and static, whose widths the picture knows.
 */
export const figureStyle: { readonly layout: Readonly<Record<string, unknown>> } = {
  layout: {
    font: { family: 'Arial, Helvetica, "Liberation Sans", sans-serif', size: 12, color: ink },
    title: { x: 0, xref: "paper", xanchor: "left", font: { size: 15 } },
    paper_bgcolor: paper,
    plot_bgcolor: paper,
    colorway: seriesLooks.map((look) => look.color),
    colorscale: {
      sequential: [
        [0, "#f4f7fa"],
        [0.5, "#79a3c9"],
        [1, "#0b3560"],
      ],
      diverging: [
        [0, "#0b4f8a"],
        [0.5, "#f6f6f4"],
        [1, "#c8562b"],
      ],
    },
    margin: { l: 64, r: 24, t: 56, b: 52 },
    hovermode: "closest",
    hoverlabel: { align: "left", bgcolor: paper, bordercolor: hairline, font: { color: ink } },
    legend: { orientation: "h", x: 1, xanchor: "right", y: 1.02, yanchor: "bottom", font: { size: 11 } },
    annotationdefaults: { arrowhead: 2, arrowwidth: 1, arrowcolor: pencil },
    xaxis: axis,
    yaxis: axis,
  },
};
