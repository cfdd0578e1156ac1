import type { PlotData } from "plotly.js";
import { type Length, quantityFromSi } from "../../quantity/index.js";
import type { TaperFit, TaperReading } from "../../survey/profile-types.js";
import { edgeColor, ink, pencil, seriesLook } from "../palette.js";
import { coverFactor } from "./cover-factor.js";
import { onScale, type PlotTrace, tidy } from "./plot-parts.js";
import { readingHover } from "./reading-hover.js";
import { type ShownUnits, smallText } from "./shown-units.js";
import { bowAt, kinkedCorners, type TaperLine } from "./taper-line.js";
import { thinned } from "./thinned.js";

/** Places along the taper at which its curves are drawn, as shares of its length. */
const shares = Array.from({ length: 41 }, (_, i) => i / 40);

/** The readings of one angle: in the upper panel as they are, in the lower one less the line. */
export function pointTraces(
  name: string,
  readings: readonly TaperReading[],
  index: number,
  { profile }: TaperFit,
  units: ShownUnits,
  aside: number,
): PlotTrace[] {
  const { color, symbol } = seriesLook(index);
  const x = readings.map(({ station }) => tidy(onScale(station, units.size) + aside));
  const kept = thinned(
    x,
    readings.map(({ residual }) => residual.si),
  );
  const shown = kept.map((i) => readings[i]!);
  const common = {
    type: "scatter",
    mode: "markers",
    name,
    legendgroup: name,
    x: kept.map((i) => x[i]!),
    marker: { color, symbol, size: 6 },
    hoverinfo: "text",
    hovertext: shown.map((reading) => hover(reading, profile, units)),
  } satisfies Partial<PlotData>;
  return [
    {
      ...common,
      showlegend: false,
      xaxis: "x2",
      yaxis: "y2",
      y: shown.map(({ diameter }) => onScale(diameter, units.size)),
    } satisfies Partial<PlotData>,
    {
      ...common,
      y: shown.map(({ residual }) => onScale(residual, units.small)),
      error_y: {
        type: "data",
        array: shown.map((r) => onScale(r.standardUncertainty.times(coverFactor), units.small)),
        color,
        thickness: 1,
        width: 2,
      },
    } satisfies Partial<PlotData>,
  ];
}

function hover(reading: TaperReading, { file, readings }: TaperFit["profile"], units: ShownUnits): string {
  const { residual, line, angle } = reading;
  const remark = readings.find((r) => r.line === line && r.angle?.si === angle?.si)?.remark ?? "";
  const off = `${smallText(residual.absolute(), units)} ${residual.si < 0 ? "below" : "above"} the line`;
  return readingHover({ ...reading, remark }, file, units, undefined, off);
}

/** The line itself: in the upper panel as it runs, in the lower one as zero. */
export function lineTraces(line: TaperLine, units: ShownUnits): PlotTrace[] {
  const x = [0, 1].map((t) => onScale(metres(line.station(t)), units.size));
  const pen = { color: ink, width: 2 };
  const common = {
    type: "scatter",
    mode: "lines",
    x,
    line: pen,
    hoverinfo: "skip",
  } satisfies Partial<PlotData>;
  return [
    { ...common, name: "line", y: [0, 0] } satisfies Partial<PlotData>,
    {
      ...common,
      showlegend: false,
      xaxis: "x2",
      yaxis: "y2",
      y: [0, 1].map((t) => onScale(metres(line.diameter(t)), units.size)),
    } satisfies Partial<PlotData>,
  ];
}

/** Where the line itself may lie, as a band about zero. */
export function lineBand(line: TaperLine, units: ShownUnits, k: number): PlotTrace[] {
  const back = [...shares].reverse();
  const u = (t: number): number => onScale(metres(k * line.uncertainty(t)), units.small);
  return [
    {
      type: "scatter",
      mode: "lines",
      name: "line ± U (95 %)",
      x: [...shares, ...back].map((t) => onScale(metres(line.station(t)), units.size)),
      y: [...shares.map(u), ...back.map((t) => -u(t))],
      fill: "toself",
      fillcolor: edgeColor,
      line: { width: 0 },
      hoverinfo: "skip",
    } satisfies Partial<PlotData>,
  ];
}

/** The bow of the flanks, or their kinks, where they stand out from the noise. */
export function bowTrace(
  { residualShape, taper }: TaperFit,
  line: TaperLine,
  units: ShownUnits,
): PlotTrace[] {
  const { shape, bow: height, kinks = [] } = residualShape;
  if (shape === "kinked") {
    const corners = kinkedCorners(kinks, line, taper.value);
    return [
      {
        type: "scatter",
        mode: "lines",
        name: kinks.length === 1 ? "kink" : "kinks",
        x: corners.map(({ station }) => onScale(metres(station), units.size)),
        y: corners.map(({ off }) => onScale(metres(off), units.small)),
        line: { color: pencil, width: 2, dash: "dash" },
        hoverinfo: "skip",
      } satisfies Partial<PlotData>,
    ];
  }
  if (height === undefined || (shape !== "hollow" && shape !== "barrel")) return [];
  return [
    {
      type: "scatter",
      mode: "lines",
      name: `bow (${shape})`,
      x: shares.map((t) => onScale(metres(line.station(t)), units.size)),
      y: shares.map((t) => onScale(metres(bowAt(height.value.si, t)), units.small)),
      line: { color: pencil, width: 2, dash: "dash" },
      hoverinfo: "skip",
    } satisfies Partial<PlotData>,
  ];
}

function metres(si: number): Length {
  return quantityFromSi("length", si);
}
