import type { Annotations, Layout, PlotData, Shape } from "plotly.js";
import { formatNumber } from "../../quantity/index.js";
import type { CriticalSpeeds, WhirlSense } from "../../shaft/index.js";
import type { FigureBlock, Presentation, VerdictBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { pencil, seriesLook } from "../palette.js";
import { onScale, type PlotMark, type PlotTrace, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import { type ShownUnits, shownUnits, systemOfLength } from "./shown-units.js";
import { threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

/** Height of a name above the frame [px], and how far the swing's axis reaches. */
const nameRow = 17;
const top = 1.15;

const ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];

/** Where a shaft whirls: the margin of its running speed, the shapes, the bounds beside it. */
export function presentCriticalSpeeds(found: CriticalSpeeds): Presentation {
  const units = shownUnits(systemOfLength(found.stations[0]!));
  return Object.freeze<Presentation>({
    title: "Critical speeds of the shaft",
    blocks: [
      ...(found.margin === undefined ? [] : [verdict(found)]),
      figure(found, units),
      {
        type: "facts",
        facts: [
          ...found.modes.map(({ speed, plane }, i) => ({
            label: `${ordinal(i)} critical speed`,
            value: formatMeasured(speed, { unit: "rpm" }),
            ...(plane === "both" ? {} : { note: `moves most in the ${plane} plane` }),
          })),
          {
            label: "slowest whirl of all",
            value: formatMeasured(found.lowest.speed, { unit: "rpm" }),
            note: senseText(found.lowest.sense),
          },
          {
            label: "first, of the shaft at rest",
            value: threeDigits(found.atRest),
            note: `checked: between Dunkerley's ${threeDigits(found.dunkerley)} and Rayleigh's ${threeDigits(found.rayleigh)}`,
          },
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

function verdict({ verdict: judged, margin, nearest, keepAway, speed }: CriticalSpeeds): VerdictBlock {
  const away = `${formatNumber(100 * keepAway, 3)} %`;
  const words = {
    clear: ["yes", "the running speed keeps clear of every whirl"],
    "too near": ["no", "the running speed lies too near to a whirl"],
    "cannot tell yet": ["cannot tell yet", "whether the running speed keeps clear cannot be told"],
    "no speed given": ["cannot tell yet", "no running speed was given"],
  } as const;
  const [outcome, text] = words[judged];
  const percent = Math.round(100 * Math.abs(margin!.value));
  return {
    type: "verdict",
    outcome,
    text,
    because: `It runs at ${threeDigits(speed!)}, ${percent} % ${margin!.value >= 0 ? "below" : "above"} the nearest whirl, ${threeDigits(nearest!.speed.value)} ${shortSense[nearest!.sense]} (margin ${plusMinus(margin!)}, 95 %); at least ${away} is asked for.`,
  };
}

const shortSense = {
  forward: "forward",
  "at rest": "at rest",
  backward: "backward",
  tied: "of both planes together",
} as const;

function senseText(sense: WhirlSense): string {
  const words = {
    forward: "forward, with the turning shaft",
    "at rest": "of the shaft at rest",
    backward:
      "backward, against the turning shaft: boxes that give differently both ways let unbalance drive it",
    tied: "of the two planes together, whose bearings give differently",
  } as const;
  return words[sense];
}

function ordinal(i: number): string {
  return ordinals[i] ?? `${i + 1}th`;
}

function figure(found: CriticalSpeeds, { size, sizeSymbol }: ShownUnits): FigureBlock {
  const x = found.stations.map((station) => onScale(station, size));
  const dashes = ["solid", "dash", "dot", "dashdot"] as const;
  const shapes = found.modes.map(
    ({ speed, shape }, i) =>
      ({
        type: "scatter",
        mode: "lines",
        name: `${ordinal(i)}, ${threeDigits(speed.value)}`,
        x,
        y: shape.map(tidy),
        line: { color: seriesLook(i).color, width: 2, dash: dashes[i % dashes.length]! },
        hovertemplate: `%{x} ${sizeSymbol}: %{y:.2f}<extra></extra>`,
      }) satisfies Record<string, unknown> & Partial<PlotData>,
  );
  const marks = (what: CriticalSpeeds["supports"], symbol: "triangle-up" | "square"): PlotTrace => ({
    type: "scatter",
    mode: "markers",
    showlegend: false,
    x: what.map(({ station }) => onScale(station, size)),
    y: what.map(() => 0),
    marker: { symbol, size: 11, color: seriesLook(2).color },
    text: what.map(({ name }) => plotText(name, 30, 60)),
    hoverinfo: "text",
  });
  const places = [...found.supports, ...found.wheels]
    .map(({ name, station }) => ({ name, at: onScale(station, size) }))
    .sort((a, b) => b.at - a.at);
  const [first, end] = [x[0]!, x.at(-1)!];
  // Above the frame, the leftmost highest, so that no name lies over a curve or another name's line.
  const names = places.flatMap(({ name, at }, row): PlotMark[] => {
    const height = row * nameRow + 6;
    return [
      {
        x: at,
        y: top,
        xref: "x",
        yref: "y",
        yshift: height + nameRow / 2,
        xanchor: at > first + 0.7 * (end - first) ? "right" : "left",
        xshift: at > first + 0.7 * (end - first) ? -2 : 2,
        showarrow: false,
        text: plotText(name, 26, 40),
        font: { size: 11 },
      } satisfies Partial<Annotations>,
      {
        x: at,
        y: top,
        xref: "x",
        yref: "y",
        text: "",
        showarrow: true,
        arrowhead: 0,
        arrowwidth: 1,
        arrowcolor: pencil,
        ax: 0,
        // Ends below the name of the row above, which would else count as covered where the screen is narrow.
        ay: -(height + nameRow - 5),
      } satisfies Partial<Annotations>,
    ];
  });
  const down = places.map(
    ({ at }): PlotMark =>
      ({
        type: "line",
        layer: "below",
        xref: "x",
        yref: "y",
        x0: at,
        x1: at,
        y0: 0,
        y1: top,
        line: { color: pencil, width: 1, dash: "dot" },
      }) satisfies Partial<Shape>,
  );
  const above = 66 + places.length * nameRow;
  return {
    type: "figure",
    alt: `How the shaft bends at its critical speeds: ${found.modes.map(({ speed }, i) => `${ordinal(i)} ${threeDigits(speed.value)}`).join(", ")}.`,
    caption:
      "The shape at each critical speed, its largest swing drawn as 1. Triangles: bearings; squares: wheels.",
    figure: {
      data: [...shapes, marks(found.supports, "triangle-up"), marks(found.wheels, "square")],
      layout: {
        width: 720,
        height: 296 + above,
        margin: { l: 64, r: 24, t: above, b: 84 },
        title: { text: "How the shaft whirls", yref: "container", y: 1, yanchor: "top", pad: { t: 16 } },
        legend: { orientation: "h", x: 0, xanchor: "left", y: -0.26, yanchor: "top" },
        xaxis: { title: { text: `station (${sizeSymbol})` } },
        yaxis: { title: { text: "swing (-)" }, range: [-top, top] },
        annotations: names,
        shapes: down,
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
