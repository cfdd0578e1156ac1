import type { Annotations, PlotData } from "plotly.js";
import { alarm } from "../palette.js";
import { listText } from "./count-text.js";
import { type Domain, label, type PlotMark, type PlotTrace } from "./plot-parts.js";
import { isWithin, type Range } from "./reach.js";

/** A reading that wants the eye, as a point of a figure. */
export interface FlaggedPoint {
  readonly x: number;
  readonly y: number;
  readonly hover: string;
  /** Where it stands in the file: "line 34 at 90°". */
  readonly place: string;
  /** What it says: "24.3709 in". */
  readonly value: string;
}

/** A panel of a figure: its axis, its scales, and where it lies. */
export interface Panel {
  readonly xaxis: "x" | "x2";
  readonly yaxis: "y" | "y2";
  readonly along: Range;
  readonly range: Range;
  readonly domain: Domain;
}

/** So many are named beside their marker; the rest under the pointer and in the table. */
const mostNamed = 6;

/**
 * Flagged readings in a panel: crossed open markers at their place; those off the scale as arrows at the edge
 * of the panel, named there. None is left out.
 */
export function flaggedMarks(
  points: readonly FlaggedPoint[],
  panel: Panel,
  name: string,
): { readonly traces: PlotTrace[]; readonly labels: PlotMark[] } {
  const [low, high] = panel.range;
  const near = points.filter(({ y }) => isWithin(y, panel.range));
  const above = points.filter(({ y }) => y > high).map((point) => ({ ...point, y: high }));
  const below = points.filter(({ y }) => y < low).map((point) => ({ ...point, y: low }));
  const groups = [
    { group: near, symbol: "circle-x-open" },
    { group: above, symbol: "arrow-up" },
    { group: below, symbol: "arrow-down" },
  ].filter(({ group }) => group.length > 0);
  return {
    traces: groups.map(({ group, symbol }, i) => marks(group, symbol, panel, name, i === 0)),
    labels: [
      ...namesBeside(near.slice(0, mostNamed), panel),
      ...edgeLabel(above, panel, "above"),
      ...edgeLabel(below, panel, "below"),
    ],
  };
}

function marks(
  points: readonly FlaggedPoint[],
  symbol: string,
  { xaxis, yaxis }: Panel,
  name: string,
  showlegend: boolean,
): PlotTrace {
  return {
    type: "scatter",
    mode: "markers",
    name,
    legendgroup: "flagged",
    showlegend,
    x: points.map(({ x }) => x),
    y: points.map(({ y }) => y),
    xaxis,
    yaxis,
    cliponaxis: false,
    marker: { symbol, size: 11, color: alarm, line: { color: alarm, width: 1.5 } },
    hoverinfo: "text",
    hovertext: points.map(({ hover }) => hover),
  } satisfies Partial<PlotData>;
}

/** Each name under its marker, or over it near the foot of the panel and where the last name is too close. */
function namesBeside(points: readonly FlaggedPoint[], { xaxis, yaxis, along, range }: Panel): PlotMark[] {
  const closeBy = 0.14 * (along[1] - along[0]);
  let lastUnder = Number.NEGATIVE_INFINITY;
  return [...points]
    .sort((a, b) => a.x - b.x)
    .map(({ x, y, place }) => {
      const low = (y - range[0]) / (range[1] - range[0]) < 0.15;
      const over = low || x - lastUnder < closeBy;
      if (!over) lastUnder = x;
      const font = { size: 10.5, color: alarm };
      return label(place, { xref: xaxis, yref: yaxis, x, y, yshift: over ? 13 : -13, font });
    });
}

/** One label for all that lie beyond an edge, so that labels never cover each other. */
function edgeLabel(
  points: readonly FlaggedPoint[],
  { xaxis, along, domain }: Panel,
  side: "above" | "below",
): PlotMark[] {
  const [first] = points;
  if (first === undefined) return [];
  const text =
    points.length === 1
      ? `off the scale: ${first.place}, ${first.value}`
      : `${points.length} off the scale: ${listText(
          points.map(({ place }) => place),
          4,
        )}`;
  const share = (first.x - along[0]) / (along[1] - along[0]);
  // Over the panel the label stands in the gap and grows inwards near an end; at the foot, beside the arrow.
  const place: Partial<Annotations> =
    side === "above"
      ? { y: domain[1], yshift: 8, xanchor: share < 0.35 ? "left" : share > 0.65 ? "right" : "center" }
      : { y: domain[0], yshift: 1, xanchor: share < 0.5 ? "left" : "right", xshift: share < 0.5 ? 9 : -9 };
  const font = { size: 10.5, color: alarm };
  return [label(text, { xref: xaxis, yref: "paper", x: first.x, yanchor: "bottom", font, ...place })];
}
