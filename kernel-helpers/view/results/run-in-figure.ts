import type { RunIn, RunInBox } from "../../bearing/index.js";
import { formatFixed, type Temperature } from "../../quantity/index.js";
import type { FigureBlock } from "../blocks.js";
import { alarm, pencil, seriesLook } from "../palette.js";
import { plotText } from "./plot-text.js";

const width = 720;
const height = 460;

/** Readings, curves with their bands, what was foretold, and the stop temperature, against time. */
export function runInFigure(run: RunIn): FigureBlock {
  const scale = run.unitSystem === "inch" ? "degF" : "degC";
  const symbol = scale === "degF" ? "°F" : "°C";
  const on = (t: Temperature): number => round(t.in(scale), 3);
  const perDegree = scale === "degF" ? 9 / 5 : 1;
  const lastTime = Math.max(
    ...run.boxes.flatMap(({ readings, curve }) =>
      [...readings, ...curve].map(({ time }) => time.in("minute")),
    ),
  );
  const until = Math.max(lastTime * 1.16, 1);
  const firstTime = Math.min(0, ...run.boxes.map(({ readings }) => readings[0]!.time.in("minute")));
  const traces = run.boxes.flatMap((box, index) => boxTraces(box, index, { on, perDegree, lastTime, until }));
  const room = run.boxes[0]!.readings;
  const foretold = run.boxes.some((box) => box.foretold !== undefined);
  return {
    type: "figure",
    alt: `Temperature of ${run.boxes.map(({ name }) => name).join(" and ")} against time, with the curve each follows to its end, ${foretold ? "the temperatures foretold at the right, " : ""}and the stop temperature of ${run.stopAt}.`,
    caption: `Curves with their 95 % bands${foretold ? "; bars at the right: ends foretold, 95 %" : ""}. A change of speed or oil is a dotted upright line.`,
    figure: {
      data: [
        ...traces,
        {
          type: "scatter",
          mode: "lines",
          name: "room",
          x: room.map(({ time }) => round(time.in("minute"), 3)),
          y: room.map((reading) => on(reading.room)),
          line: { color: pencil, width: 1, dash: "dot" },
          hovertemplate: `room %{y:.1f} ${symbol} at %{x} min<extra></extra>`,
        },
      ],
      layout: {
        title: { text: plotText(`Run-in: ${run.title}`) },
        width,
        height,
        xaxis: { title: { text: "time since the start [min]" }, range: [firstTime - 0.015 * until, until] },
        yaxis: { title: { text: `temperature [${symbol}]` }, ...footRoom(run, on, perDegree) },
        margin: { l: 64, r: 24, t: 76, b: 52 },
        shapes: [
          {
            type: "line",
            xref: "paper",
            x0: 0,
            x1: 1,
            y0: on(run.stopAt),
            y1: on(run.stopAt),
            line: { color: alarm, width: 1.5, dash: "dash" },
          },
          ...run.stretches.slice(1).map(({ from }) => ({
            type: "line",
            yref: "paper",
            x0: from.in("minute"),
            x1: from.in("minute"),
            y0: 0,
            y1: 1,
            line: { color: pencil, width: 1, dash: "dot" },
          })),
        ],
        annotations: [
          ...stretchLabels(run),
          {
            xref: "paper",
            x: 0.01,
            xanchor: "left",
            y: on(run.stopAt),
            yanchor: "bottom",
            showarrow: false,
            text: plotText(`stop at ${run.stopAt}`),
            font: { color: alarm },
          },
        ],
      },
    },
  };
}

/** At the foot of each stretch: its speed, and its oil where that changed; nothing where there is one stretch. */
function stretchLabels({ stretches }: RunIn): Record<string, unknown>[] {
  if (stretches.length < 2) return [];
  return stretches.flatMap(({ from, speed, oil }, i) => {
    const changed = oil !== "" && (i === 0 || oil !== stretches[i - 1]!.oil);
    const words = [speed === undefined ? "" : `${formatFixed(speed.in("rpm"), 0)} rpm`, changed ? oil : ""];
    const text = words.flatMap((word) => (word === "" ? [] : [plotText(word, 18, 60)])).join("<br>");
    if (text === "") return [];
    return [
      {
        x: from.in("minute"),
        xanchor: "left",
        xshift: 3,
        yref: "paper",
        y: 0.01,
        yanchor: "bottom",
        align: "left",
        showarrow: false,
        text,
        font: { color: pencil, size: 11 },
      },
    ];
  });
}

/** A range that leaves the foot of the figure to the names of the stretches; none where there are none. */
function footRoom(
  run: RunIn,
  on: (t: Temperature) => number,
  perDegree: number,
): { readonly range?: readonly [number, number] } {
  const lines = Math.max(0, ...stretchLabels(run).map(({ text }) => String(text).split("<br>").length));
  if (lines === 0) return {};
  const seen = run.boxes.flatMap(({ readings, curve, foretold }) => [
    ...readings.flatMap(({ temperature, room }) => [on(temperature), on(room)]),
    ...curve.flatMap(({ temperature, band }) =>
      [-1, 1].map((side) => on(temperature) + side * band.si * perDegree),
    ),
    ...(foretold === undefined
      ? []
      : [-1.96, 1.96].map((k) => on(foretold.temperature) + k * foretold.standardUncertainty.si * perDegree)),
  ]);
  const [low, high] = [Math.min(...seen, on(run.stopAt)), Math.max(...seen, on(run.stopAt))];
  return {
    range: [round(low - (0.05 + 0.055 * lines) * (high - low), 3), round(high + 0.09 * (high - low), 3)],
  };
}

interface Scaled {
  readonly on: (t: Temperature) => number;
  readonly perDegree: number;
  readonly lastTime: number;
  readonly until: number;
}

function boxTraces(
  box: RunInBox,
  index: number,
  { on, perDegree, lastTime, until }: Scaled,
): Record<string, unknown>[] {
  const { color, symbol } = seriesLook(index);
  const name = plotText(box.name);
  const times = box.curve.map(({ time }) => round(time.in("minute"), 3));
  const middle = box.curve.map(({ temperature }) => on(temperature));
  const half = box.curve.map(({ band }) => band.si * perDegree);
  const traces: Record<string, unknown>[] = [];
  if (times.length > 0)
    traces.push(
      {
        type: "scatter",
        mode: "lines",
        x: [...times, ...[...times].reverse()],
        y: [
          ...middle.map((value, i) => round(value + half[i]!, 3)),
          ...middle.map((value, i) => round(value - half[i]!, 3)).reverse(),
        ],
        fill: "toself",
        fillcolor: color,
        opacity: 0.16,
        line: { width: 0 },
        hoverinfo: "skip",
        showlegend: false,
      },
      {
        type: "scatter",
        mode: "lines",
        x: times,
        y: middle,
        line: { color, width: 1.6 },
        hoverinfo: "skip",
        showlegend: false,
      },
    );
  traces.push({
    type: "scatter",
    mode: "markers",
    name,
    x: box.readings.map(({ time }) => round(time.in("minute"), 3)),
    y: box.readings.map(({ temperature }) => on(temperature)),
    marker: { color, symbol, size: 8 },
    customdata: box.readings.map(({ line }) => line),
    hovertemplate: `${name} %{y:.1f} at %{x} min, line %{customdata}<extra></extra>`,
  });
  if (box.foretold !== undefined) {
    // Side by side at the right, clear of the curves.
    const x = lastTime + (until - lastTime) * (0.35 + 0.3 * index);
    traces.push({
      type: "scatter",
      mode: "markers",
      name: `${name}, foretold`,
      x: [round(x, 3)],
      y: [on(box.foretold.temperature)],
      error_y: {
        type: "constant",
        value: round(1.96 * box.foretold.standardUncertainty.si * perDegree, 3),
        color,
        thickness: 2,
        width: 6,
      },
      marker: { color, symbol: `${symbol}-open`, size: 9 },
      hovertemplate: `${name}, foretold: %{y:.1f}<extra></extra>`,
    });
  }
  return traces;
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
