import type { PlotData, Shape } from "plotly.js";
import type { WearBands } from "../../survey/profile-types.js";
import { alarm, ink } from "../palette.js";
import { type Domain, label, onScale, type PlotMark, type PlotTrace } from "./plot-parts.js";
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

/** Nominal and limit named on their lines; where a line is off the scale, an arrow at the edge points to it. */
export function lineLabels(
  { nominal, limit }: WearBands,
  units: ShownUnits,
  sizes: Range,
  panel: Domain,
): PlotMark[] {
  const named = [
    { name: "nominal", size: nominal, color: ink, yanchor: "bottom" },
    { name: "limit", size: limit, color: alarm, yanchor: "top" },
  ] as const;
  return named.flatMap(({ name, size, color, yanchor }) => {
    if (size === undefined) return [];
    const y = onScale(size, units.size);
    const text = `${name} ${nominalText(size, units)}`;
    const at = {
      xref: "paper",
      x: 0.995,
      xanchor: "right",
      bgcolor: "rgba(255,255,255,0.8)",
      borderpad: 1,
    } as const;
    const font = { size: 11, color };
    const outwards = yanchor === "bottom" ? 2 : -2;
    if (isWithin(y, sizes)) return [label(text, { ...at, yref: "y", y, yanchor, yshift: outwards, font })];
    const above = y > sizes[1];
    return [
      label(`${above ? "↑" : "↓"} ${text}`, {
        ...at,
        yref: "paper",
        y: above ? panel[1] : panel[0],
        yanchor: above ? "top" : "bottom",
        font,
      }),
    ];
  });
}
