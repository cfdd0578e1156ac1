import type { PlotData, Shape } from "plotly.js";
import type { WearBands } from "../../survey/profile-types.js";
import { alarm, ink } from "../palette.js";
import { textWidth } from "../picture/text-width.js";
import { type Domain, label, onScale, type PlotMark, type PlotTrace, tidy } from "./plot-parts.js";
import { isWithin, type Range } from "./reach.js";
import { nominalText, type ShownUnits } from "./shown-units.js";

/**
 * The nominal size, drawn on the scale of depths, where it is 0. Where it is off the scale, the trace is empty
 * but still there, for plotly draws no scale without one.
 */
export function nominalLine(
  { nominal }: WearBands,
  units: ShownUnits,
  along: Range,
  sizes: Range,
): PlotTrace[] {
  if (nominal === undefined) return [];
  const seen = isWithin(onScale(nominal, units.size), sizes);
  return [
    {
      type: "scatter",
      mode: "lines",
      yaxis: "y3",
      x: seen ? [...along] : [null],
      y: seen ? [0, 0] : [null],
      line: { color: ink, width: 1, dash: "dash" },
      showlegend: false,
      hoverinfo: "text",
      hovertext: `nominal ${nominalText(nominal, units)}`,
    } satisfies Partial<PlotData>,
  ];
}

/** The smallest size allowed, as a line across the panel of diameters. */
export function limitLine({ limit }: WearBands, { size }: ShownUnits, sizes: Range): PlotMark[] {
  const y = limit === undefined ? Number.NaN : onScale(limit, size);
  if (!isWithin(y, sizes)) return [];
  return [
    {
      type: "line",
      xref: "paper",
      yref: "y",
      x0: 0,
      x1: 1,
      y0: y,
      y1: y,
      line: { color: alarm, width: 1.5, dash: "longdash" },
    } satisfies Partial<Shape>,
  ];
}

/** The panel of diameters: its scales, where it lies, and its size on paper [px]. */
export interface SizePanel {
  readonly along: Range;
  readonly sizes: Range;
  readonly domain: Domain;
  readonly width: number;
  readonly height: number;
}

const fontSize = 11;

/**
 * Nominal and limit named on their lines, where the name covers the fewest readings; where a line is off the
 * scale, an arrow at the edge points to it.
 */
export function lineLabels(wear: WearBands, units: ShownUnits, panel: SizePanel): PlotMark[] {
  const { nominal, limit } = wear;
  const named = [
    { name: "nominal", size: nominal, color: ink, yanchor: "bottom" },
    { name: "limit", size: limit, color: alarm, yanchor: "top" },
  ] as const;
  return named.flatMap(({ name, size, color, yanchor }) => {
    if (size === undefined) return [];
    const y = onScale(size, units.size);
    const text = `${name} ${nominalText(size, units)}`;
    const look = { font: { size: fontSize, color }, bgcolor: "rgba(255,255,255,0.8)", borderpad: 1 };
    const up = yanchor === "bottom" ? 1 : -1;
    if (isWithin(y, panel.sizes)) {
      const x = freestPlace(wear, units, panel, { text, y, up });
      return [
        label(text, { ...look, xref: "paper", x, xanchor: "left", yref: "y", y, yanchor, yshift: 2 * up }),
      ];
    }
    const above = y > panel.sizes[1];
    const edge = {
      yref: "paper",
      y: panel.domain[above ? 1 : 0],
      yanchor: above ? "top" : "bottom",
    } as const;
    return [
      label(`${above ? "↑" : "↓"} ${text}`, { ...look, xref: "paper", x: 0.995, xanchor: "right", ...edge }),
    ];
  });
}

/** Left end of a label along the panel, as a share of its width; of equals, the one farthest right. */
function freestPlace(
  { profile }: WearBands,
  { size }: ShownUnits,
  { along, sizes, width, height }: SizePanel,
  { text, y, up }: { readonly text: string; readonly y: number; readonly up: 1 | -1 },
): number {
  const wide = (textWidth(text, fontSize, false) + 6) / width;
  const tall = 20 / height;
  const inTheWay = profile.readings.flatMap(({ station, diameter }) => {
    const over = (up * (onScale(diameter, size) - y)) / (sizes[1] - sizes[0]);
    return over > -0.2 * tall && over < tall
      ? [(onScale(station, size) - along[0]) / (along[1] - along[0])]
      : [];
  });
  const covered = (left: number): number =>
    inTheWay.filter((share) => share > left - 0.01 && share < left + wide + 0.01).length;
  const places = Array.from({ length: 13 }, (_, i) => tidy(0.995 - wide - (i / 12) * (0.99 - wide)));
  return places.reduce((best, place) => (covered(place) < covered(best) ? place : best));
}
