import type { PlotData } from "plotly.js";
import type { OffCentre, RunOut, RunOutStation } from "../../survey/run-out-types.js";
import type { FigureBlock } from "../blocks.js";
import { ink, pencil, seriesLook } from "../palette.js";
import { coverFactor } from "./cover-factor.js";
import { onScale, type PlotTrace, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { alongRange, type Range, rangeOf, withRoom } from "./reach.js";
import { type ShownUnits, shownUnits, smallText, stationText } from "./shown-units.js";

const width = 720;
const height = 420;
const margin = { l: 74, r: 24, t: 70, b: 92 };

/** The two directions across in which the shaft is looked at [rad]. */
const views = [
  { angle: 0, name: "towards 0°", dash: "solid" },
  { angle: Math.PI / 2, name: "towards 90°", dash: "dash" },
] as const;

/** Where the surface's centre lies against the line of centres, seen from two sides, and the axis through it. */
export function runOutFigure(found: RunOut): FigureBlock {
  const units = shownUnits(found.unitSystem);
  const along = alongRange(found.stations, units.size, 0.03);
  const data = views.flatMap((view, i) => [
    axisTrace(found, view, units, seriesLook(i).color),
    centreTrace(found, view, units, i),
  ]);
  return {
    type: "figure",
    alt: `Centre of the surface against the line of centres at ${found.stations.length} stations, seen from two sides, with the axis through it.`,
    caption:
      "Off centre on radius: half of the total indicator reading it gives. Error bars: U, 95 %. Lines: the axis by centre offset and bend together; points off it are worn to one side or turned out of true.",
    figure: {
      data,
      layout: {
        width,
        height,
        margin,
        title: { text: `Run-out between centres: ${plotText(found.title, 60, 60)}` },
        legend: { orientation: "h", x: -0.02, xanchor: "left", y: -0.19, yanchor: "top", font: { size: 11 } },
        showlegend: true,
        xaxis: {
          range: [...along],
          title: { text: `station along the shaft (${units.sizeSymbol})` },
        },
        yaxis: {
          range: [...sizeRange(found, units)],
          title: { text: `off centre, on radius (${units.smallSymbol})` },
          zeroline: true,
          zerolinecolor: pencil,
          automargin: false,
        },
      },
    },
  };
}

type View = (typeof views)[number];

function centreTrace({ stations }: RunOut, { angle, name }: View, units: ShownUnits, i: number): PlotTrace {
  const { color, symbol } = seriesLook(i);
  return {
    type: "scatter",
    mode: "markers",
    name: `surface's centre ${name}`,
    x: stations.map(({ station }) => onScale(station, units.size)),
    y: stations.map(({ centre }) => seen(centre, angle, units)),
    error_y: {
      type: "data",
      array: stations.map(({ centre }) =>
        tidy(centre.distance.standardUncertainty.in(units.small) * coverFactor),
      ),
      color,
      thickness: 1,
      width: 3,
    },
    marker: { color, symbol, size: 8, line: { color: ink, width: 0.5 } },
    hoverinfo: "text",
    hovertext: stations.map((station) => hover(station, units)),
  } satisfies Partial<PlotData>;
}

function axisTrace(
  { stations }: RunOut,
  { angle, name, dash }: View,
  units: ShownUnits,
  color: string,
): PlotTrace {
  const known = stations.filter(({ axis }) => axis !== undefined);
  return {
    type: "scatter",
    mode: "lines",
    name: `axis ${name}`,
    x: known.map(({ station }) => onScale(station, units.size)),
    y: known.map(({ axis }) => seen(axis!, angle, units)),
    line: { color, width: 2, dash, shape: "spline" },
    hoverinfo: "skip",
  } satisfies Partial<PlotData>;
}

/** The part of a distance that shows from one side. */
function seen({ distance, direction }: OffCentre, angle: number, units: ShownUnits): number {
  return tidy(distance.value.in(units.small) * Math.cos(direction.value.si - angle));
}

function sizeRange({ stations }: RunOut, units: ShownUnits): Range {
  const ends = stations.flatMap(({ centre }) =>
    views.flatMap(({ angle }) => {
      const u = centre.distance.standardUncertainty.in(units.small) * coverFactor;
      const at = seen(centre, angle, units);
      return [at - u, at + u];
    }),
  );
  return withRoom(rangeOf([0, ...ends]), 0.08, 0.08);
}

function hover({ station, centre, tir, lower, lowSide }: RunOutStation, units: ShownUnits): string {
  const low =
    lower === undefined || lowSide === undefined
      ? ""
      : `<br>low side ${Math.round(lowSide.value.in("degree"))}°, ${smallText(lower.value, units)} lower than opposite, on radius`;
  return `station ${stationText(station, units)} ${units.sizeSymbol}<br>total indicator reading ${smallText(tir, units)}<br>off centre ${smallText(centre.distance.value, units)} on radius${low}`;
}
