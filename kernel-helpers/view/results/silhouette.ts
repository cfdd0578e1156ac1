import type { PlotData } from "plotly.js";
import type { Length } from "../../quantity/index.js";
import type { WearBand, WearBands } from "../../survey/profile-types.js";
import { edgeColor, ink, paper, pencil, stateLooks } from "../palette.js";
import { bandLabels, type OutlinePoint } from "./band-labels.js";
import { bandWords } from "./band-words.js";
import { onScale, type PlotMark, type PlotTrace, tidy } from "./plot-parts.js";
import type { ShownUnits } from "./shown-units.js";

/** The shaft seen from the side, on axes x2 and y2, where its nominal size reaches from −1 to 1. */
export interface Silhouette {
  readonly traces: readonly PlotTrace[];
  readonly labels: readonly PlotMark[];
  /** How many times larger than the shaft its wear is drawn. */
  readonly exaggeration: number;
  /** How far the outline reaches from the centre line. */
  readonly halfHeight: number;
}

/** The deepest wear is drawn as this share of the diameter, or less. */
const deepestDrawn = 0.32;
/** Past this, scatter within the uncertainty would look like wear. */
const mostExaggeration = 200;

/**
 * Draws the outline of a shaft from the fits of its wear bands, its wear exaggerated. A survey of diameters
 * cannot tell on which side metal is missing: the outline is drawn even on both sides.
 *
 * @param pixelsPerUnit width of one unit along the shaft, for labels that fit their band [px]
 */
export function silhouette(wear: WearBands, units: ShownUnits, pixelsPerUnit: number): Silhouette {
  const { bands } = wear;
  const reference = wear.nominal ?? largestEnd(bands);
  const depth = (size: Length): number => (reference.si - size.si) / reference.si;
  const deepest = Math.max(
    ...bands.flatMap((b) => [b.diameterAtFrom, b.diameterAtTo].map(depth).map(Math.abs)),
  );
  const exaggeration = roundBelow(Math.min(mostExaggeration, Math.max(1, deepestDrawn / deepest)));
  const drawn = (size: Length): number => tidy(1 - exaggeration * depth(size));

  const outline = bands.flatMap((band) => [
    { x: onScale(band.from, units.size), y: drawn(band.diameterAtFrom) },
    { x: onScale(band.to, units.size), y: drawn(band.diameterAtTo) },
  ]);
  const bodies = bands.map((band, i) => bandBody(band, outline.slice(2 * i, 2 * i + 2), wear, units));
  const gaps = bands.slice(1).map((_, i) => body(outline.slice(2 * i + 1, 2 * i + 3), edgeColor));
  return {
    traces: [...gaps, ...bodies, pen(mirrored(outline)), centreLine(outline)],
    labels: wornFirst(bands).flatMap((band) => {
      const i = bands.indexOf(band);
      return bandLabels(band, outline.slice(2 * i, 2 * i + 2), units, pixelsPerUnit);
    }),
    exaggeration,
    halfHeight: Math.max(1, ...outline.map(({ y }) => y)),
  };
}

/** Where there is no room for all labels, as on a phone, the first are kept: those of worn bands, then of long ones. */
function wornFirst(bands: readonly WearBand[]): readonly WearBand[] {
  const length = ({ from, to }: WearBand): number => to.minus(from).in("mm");
  const rank = ({ state }: WearBand): number => (state === "worn" ? 0 : 1);
  return [...bands].sort((a, b) => rank(a) - rank(b) || length(b) - length(a));
}

/** There and, on the other side of the centre line, back again to where it began. */
function mirrored(top: readonly OutlinePoint[]): OutlinePoint[] {
  return [...top, ...top.map(({ x, y }) => ({ x, y: -y })).reverse(), top[0]!];
}

const flat = {
  type: "scatter",
  mode: "lines",
  xaxis: "x2",
  yaxis: "y2",
  showlegend: false,
  hoverinfo: "skip",
} as const satisfies Partial<PlotData>;

function body(top: readonly OutlinePoint[], fillcolor: string): PlotTrace {
  const around = mirrored(top);
  return {
    ...flat,
    x: around.map(({ x }) => x),
    y: around.map(({ y }) => y),
    fill: "toself",
    fillcolor,
    line: { width: 0 },
  } satisfies Partial<PlotData>;
}

function bandBody(
  band: WearBand,
  top: readonly OutlinePoint[],
  wear: WearBands,
  units: ShownUnits,
): PlotTrace {
  const { color, hatch } = stateLooks[band.state];
  const look =
    hatch === ""
      ? {}
      : {
          fillpattern: {
            shape: hatch,
            fgcolor: color,
            bgcolor: paper,
            size: 7,
            solidity: 0.28,
          } satisfies PlotData["fillpattern"],
        };
  return {
    ...body(top, color),
    ...look,
    hoveron: "fills",
    hoverinfo: "text",
    text: bandWords(band, wear, units),
  };
}

function pen(around: readonly OutlinePoint[]): PlotTrace {
  return {
    ...flat,
    x: around.map(({ x }) => x),
    y: around.map(({ y }) => y),
    line: { color: ink, width: 1.5 },
  } satisfies Partial<PlotData>;
}

function centreLine(outline: readonly OutlinePoint[]): PlotTrace {
  const [first, last] = [outline[0]!.x, outline.at(-1)!.x];
  const beyond = 0.015 * (last - first);
  return {
    ...flat,
    x: [tidy(first - beyond), tidy(last + beyond)],
    y: [0, 0],
    line: { color: pencil, width: 1, dash: "longdashdot" },
  } satisfies Partial<PlotData>;
}

function largestEnd(bands: readonly WearBand[]): Length {
  const ends = bands.flatMap(({ diameterAtFrom, diameterAtTo }) => [diameterAtFrom, diameterAtTo]);
  return [...ends].sort((a, b) => b.si - a.si)[0]!;
}

/** The next of 1, 1.5, 2, 3, 5, 10, 15, … at or below a value. */
function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const step = [5, 3, 2, 1.5, 1].find((s) => s * power <= value * (1 + 1e-9));
  return (step ?? 1) * power;
}
