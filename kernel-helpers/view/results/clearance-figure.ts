import type { BoxPrediction, ClearanceMap } from "../../bearing/index.js";
import type { FigureBlock } from "../blocks.js";
import { pencil, seriesLook } from "../palette.js";
import { plotText } from "./plot-text.js";
import { shownUnits, systemOfLength } from "./shown-units.js";

/** Coverage factor of the bars: about 95 %. */
const coverage = 1.96;

/** Box temperature above, least film below, against the clearance, a line an oil. */
export function clearanceFigure(map: ClearanceMap): FigureBlock {
  const first = map.oils[0]!.films[0]!;
  const units = shownUnits(systemOfLength(first.diametralClearance));
  const inch = units.system === "inch";
  const scale = inch ? "degF" : "degC";
  const symbol = inch ? "°F" : "°C";
  const round = (value: number): number => Number(value.toPrecision(6));
  const traces = map.oils.flatMap(({ oil, films, atIntended }, index) => {
    const { color } = seriesLook(index);
    const dash = (["solid", "dash", "dot", "dashdot"] as const)[index % 4];
    const x = films.map(({ diametralClearance }) => round(diametralClearance.in(units.small)));
    const line = { color, width: 2, dash };
    return [
      {
        type: "scatter",
        mode: "lines",
        name: plotText(oil),
        x,
        y: films.map(({ film }) => (film === undefined ? null : round(film.boxTemperature.in(scale)))),
        line,
        hovertemplate: `${plotText(oil)}: %{y:.0f} ${symbol} at %{x:.3~g} ${units.smallSymbol}<extra></extra>`,
      },
      {
        type: "scatter",
        mode: "lines",
        showlegend: false,
        x,
        y: films.map(({ film }) => (film === undefined ? null : round(film.leastFilm.in(units.small)))),
        yaxis: "y2",
        line,
        hovertemplate: `${plotText(oil)}: least film %{y:.3~g} ${units.smallSymbol}<extra></extra>`,
      },
      ...(atIntended === undefined || map.intended === undefined ? [] : bars(atIntended)),
    ];
    /** Bars of ± U (95 %) at the clearance intended, one in each panel. */
    function bars({ film, rise, uncertainty }: BoxPrediction): Readonly<Record<string, unknown>>[] {
      const warm = coverage * rise.standardUncertainty.in(inch ? "deltaF" : "deltaC");
      const thick = coverage * uncertainty.leastFilm.in(units.small);
      const each = (y: number, u: number): Readonly<Record<string, unknown>> => ({
        type: "scatter",
        mode: "markers",
        showlegend: false,
        hoverinfo: "skip",
        x: [round(map.intended!.in(units.small))],
        y: [round(y)],
        error_y: { type: "data", array: [round(u)], color, thickness: 1.5, width: 5 },
        marker: { color, size: 5 },
      });
      return [
        each(film.boxTemperature.in(scale), warm),
        { ...each(film.leastFilm.in(units.small), thick), yaxis: "y2" },
      ];
    }
  });
  const intended = map.intended;
  return {
    type: "figure",
    alt: `Box temperature and least film against diametral clearance for ${map.oils.map(({ oil }) => oil).join(", ")}.`,
    caption: `Diametral clearance is bore less journal.${intended === undefined ? "" : " The upright line is the one intended; bars: ± U (95 %) there."}`,
    figure: {
      data: traces,
      layout: {
        title: { text: "Clearance, oil, temperature and film" },
        width: 720,
        height: 540,
        margin: { l: 70, r: 24, t: 56, b: 56 },
        legend: { orientation: "h", x: 0, xanchor: "left", y: -0.14, yanchor: "top" },
        xaxis: {
          title: { text: `diametral clearance [${units.smallSymbol}]` },
          anchor: "y2",
          mirror: "all",
        },
        yaxis: { title: { text: `box [${symbol}]` }, domain: [0.54, 1] },
        yaxis2: {
          title: { text: `least film [${units.smallSymbol}]` },
          domain: [0, 0.46],
          rangemode: "tozero",
        },
        shapes:
          intended === undefined
            ? []
            : [
                {
                  type: "line",
                  yref: "paper",
                  x0: round(intended.in(units.small)),
                  x1: round(intended.in(units.small)),
                  y0: 0,
                  y1: 1,
                  line: { color: pencil, width: 1, dash: "dot" },
                },
              ],
      },
    },
  };
}
