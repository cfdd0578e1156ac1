import type { Annotations, Layout, PlotData } from "plotly.js";
import { formatNumber, type UnitName } from "../../quantity/index.js";
import type { ShaftBending } from "../../shaft/index.js";
import type { FigureBlock } from "../blocks.js";
import { ink, pencil, seriesLook, stateLooks } from "../palette.js";
import { inUnit } from "./joint-text.js";
import { type Domain, onScale, type PlotMark, type PlotTrace, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import type { ShownUnits } from "./shown-units.js";

/** One state of the shaft, and how it is called. */
export interface BendingCase {
  readonly name: string;
  readonly bending: ShaftBending;
}

const shaftPanel: Domain = [0.62, 1];
const momentPanel: Domain = [0.32, 0.56];
const deflectionPanel: Domain = [0, 0.24];
const dashes = ["solid", "dash", "dot", "dashdot"] as const;

/**
 * The shaft from the side with its loads and bearings, the moment and the deflection along it; several states over each
 * other.
 */
export function bendingFigure(cases: readonly BendingCase[], units: ShownUnits): FigureBlock {
  const { size, sizeSymbol, small, smallSymbol } = units;
  const inch = units.system === "inch";
  const [momentUnit, momentSymbol] = inch
    ? (["lbfInch", "lbf·in"] as const)
    : (["newtonMetre", "N·m"] as const);
  const force: UnitName = inch ? "lbf" : "newton";
  const last = cases.at(-1)!.bending;
  const half = Math.max(...last.outline.map(({ diameter }) => diameter.in(size))) / 2;
  const along = last.stations.map(({ station }) => onScale(station, size));
  const room = 0.04 * (along.at(-1)! - along[0]!);
  const line = (
    panel: "y2" | "y3",
    each: (s: ShaftBending["stations"][number]) => number,
    what: string,
  ): PlotTrace[] =>
    cases.map(
      ({ name, bending }, i) =>
        ({
          type: "scatter",
          mode: "lines",
          name,
          legendgroup: name,
          showlegend: panel === "y2" && cases.length > 1,
          xaxis: "x",
          yaxis: panel,
          x: bending.stations.map(({ station }) => onScale(station, size)),
          y: bending.stations.map((s) => tidy(each(s))),
          line: { color: seriesLook(i).color, width: 2, dash: dashes[i % dashes.length]! },
          ...(cases.length === 1 ? { fill: "tozeroy", fillcolor: stateLooks["as made"].wash } : {}),
          hovertemplate: `%{x} ${sizeSymbol}: ${what} %{y:.3~g}<extra>${plotText(name, 40, 80)}</extra>`,
        }) satisfies Record<string, unknown> & Partial<PlotData>,
    );
  const outlines = cases.map(({ bending }, i): PlotTrace => {
    const top = bending.outline
      .filter(({ carries }) => carries)
      .flatMap(({ from, to, diameter }) => [
        [onScale(from, size), diameter.in(size) / 2],
        [onScale(to, size), diameter.in(size) / 2],
      ]);
    const around = [...top, ...top.map(([x, y]) => [x!, -y!]).reverse(), top[0]!];
    return {
      type: "scatter",
      mode: "lines",
      showlegend: false,
      xaxis: "x",
      yaxis: "y",
      x: around.map(([x]) => x!),
      y: around.map(([, y]) => tidy(y!)),
      hoverinfo: "skip",
      line: {
        color: cases.length === 1 ? ink : seriesLook(i).color,
        width: 1.5,
        dash: dashes[i % dashes.length]!,
      },
      ...(i === 0 ? { fill: "toself", fillcolor: stateLooks["as made"].color } : {}),
    } satisfies Record<string, unknown> & Partial<PlotData>;
  });
  const worn = last.outline
    .filter(({ carries }) => !carries)
    .map(
      ({ from, to, diameter }): PlotMark => ({
        type: "rect",
        xref: "x",
        yref: "y",
        x0: onScale(from, size),
        x1: onScale(to, size),
        y0: -Math.min(1.4 * half, diameter.in(size) / 2),
        y1: Math.min(1.4 * half, diameter.in(size) / 2),
        line: { color: pencil, width: 1, dash: "dot" },
      }),
    );
  const loads = [...last.loads].sort((a, b) => a.station.si - b.station.si);
  const loadMarks = loads.map(
    ({ name, station, force: f, direction }, i): PlotMark =>
      ({
        x: onScale(station, size),
        y: half,
        xref: "x",
        yref: "y",
        ax: 0,
        ay: -22 - 17 * (i % 3),
        showarrow: true,
        arrowhead: 2,
        arrowwidth: 1.5,
        arrowcolor: ink,
        xanchor:
          onScale(station, size) < along[0]! + 4 * room
            ? "left"
            : onScale(station, size) > along.at(-1)! - 4 * room
              ? "right"
              : "center",
        text: `${plotText(name, 22, 40)}, ${inUnit(f, force, 3)} to ${formatNumber(direction.in("degree"), 3)}°`,
        font: { size: 11, color: ink },
      }) satisfies Partial<Annotations>,
  );
  const supportMarks = last.supports.map(
    ({ name, station, reaction }): PlotMark =>
      ({
        x: onScale(station, size),
        y: -half,
        xref: "x",
        yref: "y",
        ax: 0,
        ay: 26,
        showarrow: true,
        arrowhead: 2,
        arrowwidth: 2,
        arrowcolor: seriesLook(1).color,
        text: `${plotText(name, 22, 40)}: ${inUnit(reaction.value, force, 3)}`,
        font: { size: 11, color: ink },
      }) satisfies Partial<Annotations>,
  );
  return {
    type: "figure",
    alt: `The shaft from the side with ${loads.length} loads and ${last.supports.length} bearings; its bending moment, at most ${inUnit(last.largestMoment.moment.value, momentUnit, 3)}, and its deflection, at most ${inUnit(last.largestDeflection.deflection.value, small, 3)}.`,
    caption: `Resultants of both planes. Diameters are drawn larger than lengths. Directions are seen from the end where the stations begin: right 0°, up 90°.${cases.length > 1 ? ` Loads and bearing forces are those of "${cases.at(-1)!.name}".` : ""}`,
    figure: {
      data: [
        ...outlines,
        ...line("y2", ({ moment }) => moment.value.in(momentUnit), `moment, ${momentSymbol},`),
        ...line("y3", ({ deflection }) => deflection.value.in(small), `deflection, ${smallSymbol},`),
      ],
      layout: {
        width: 720,
        height: 600,
        title: { text: "The shaft under its loads" },
        margin: { l: 74, r: 24, t: 64, b: 56 },
        xaxis: {
          anchor: "y3",
          range: [tidy(along[0]! - room), tidy(along.at(-1)! + room)],
          title: { text: `station (${sizeSymbol})` },
        },
        yaxis: {
          domain: [...shaftPanel],
          range: [-2.6 * half, 4 * half],
          showticklabels: false,
          showgrid: false,
          ticks: "",
        },
        yaxis2: {
          domain: [...momentPanel],
          rangemode: "tozero",
          title: { text: `moment (${momentSymbol})` },
        },
        yaxis3: {
          domain: [...deflectionPanel],
          rangemode: "tozero",
          title: { text: `deflection (${smallSymbol})` },
        },
        annotations: [...loadMarks, ...supportMarks],
        shapes: worn,
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
