import type { Layout, PlotData } from "plotly.js";
import { formatNumber, type Length, type UnitName } from "../../quantity/index.js";
import type { ShaftBending } from "../../shaft/index.js";
import type { FigureBlock } from "../blocks.js";
import { ink, pencil, seriesLook, stateLooks } from "../palette.js";
import { clockRow, forceClocks } from "./force-clocks.js";
import { inUnit } from "./joint-text.js";
import { onScale, type PlotMark, type PlotTrace, tidy } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import type { ShownUnits } from "./shown-units.js";

/** One state of the shaft, and how it is called. */
export interface BendingCase {
  readonly name: string;
  readonly bending: ShaftBending;
}

/** Heights [px]: half the shaft, a diagram, and what lies between two panels. */
const shaftHalf = 26;
const diagram = 130;
const shearHeight = 90;
const between = 34;
const margin = { l: 74, r: 24, t: 64, b: 56 };
const dashes = ["solid", "dash", "dot", "dashdot"] as const;

/**
 * The shaft from the side with its loads and bearings, shear, moment and deflection along it; several states over each
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
  const thickest = Math.max(
    ...cases.flatMap(({ bending }) =>
      bending.outline.filter(({ carries }) => carries).map(({ diameter }) => diameter.si),
    ),
  );
  /** Half of a diameter as it is drawn [px]. */
  const tall = (diameter: Length): number => tidy((shaftHalf * diameter.si) / thickest);
  const along = last.stations.map(({ station }) => onScale(station, size));
  const room = 0.04 * (along.at(-1)! - along[0]!);
  const line = (
    panel: "y2" | "y3" | "y4",
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
          line: {
            color: seriesLook(i).color,
            width: 2,
            dash: dashes[i % dashes.length]!,
            // Each station says what the shear is just behind it.
            ...(panel === "y4" ? { shape: "hv" as const } : {}),
          },
          ...(cases.length === 1 ? { fill: "tozeroy", fillcolor: stateLooks["as made"].wash } : {}),
          hovertemplate: `%{x} ${sizeSymbol}: ${what} %{y:.3~g}<extra>${plotText(name, 40, 80)}</extra>`,
        }) satisfies Record<string, unknown> & Partial<PlotData>,
    );
  const outlines = cases.map(({ bending }, i): PlotTrace => {
    const top = bending.outline
      .filter(({ carries }) => carries)
      .flatMap(({ from, to, diameter }) => [
        [onScale(from, size), tall(diameter)],
        [onScale(to, size), tall(diameter)],
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
        y0: -Math.min(shaftHalf + 2, tall(diameter)),
        y1: Math.min(shaftHalf + 2, tall(diameter)),
        line: { color: pencil, width: 1, dash: "dot" },
      }),
    );
  const loads = [...last.loads].sort((a, b) => a.station.si - b.station.si);
  const range: readonly [number, number] = [tidy(along[0]! - room), tidy(along.at(-1)! + room)];
  const clocks = [
    forceClocks(
      loads.map(({ name, station, force: f, direction }) => ({
        at: onScale(station, size),
        angle: direction.si,
        text: `${plotText(name, 26, 40)},<br>${inUnit(f, force, 3)} to ${formatNumber(direction.in("degree"), 3)}°`,
        color: ink,
      })),
      "above",
      shaftHalf + 4,
      range,
    ),
    forceClocks(
      last.supports.map(({ name, station, reaction, direction }) => ({
        at: onScale(station, size),
        angle: direction.si,
        text: `${plotText(name, 26, 40)} holds<br>with ${inUnit(reaction.value, force, 3)} to ${formatNumber(direction.in("degree"), 3)}°`,
        color: seriesLook(1).color,
      })),
      "below",
      shaftHalf + 4,
      range,
    ),
  ];
  const above = shaftHalf + 12 + clockRow * loads.length;
  const below = shaftHalf + 12 + clockRow * last.supports.length;
  const heights = [diagram, between, diagram, between, shearHeight, between, above + below];
  const whole = heights.reduce((sum, h) => sum + h, 0);
  const share = (from: number, to: number): [number, number] => [
    tidy(heights.slice(0, from).reduce((sum, h) => sum + h, 0) / whole),
    tidy(heights.slice(0, to).reduce((sum, h) => sum + h, 0) / whole),
  ];
  return {
    type: "figure",
    alt: `The shaft from the side with ${loads.length} loads and ${last.supports.length} bearings; its shear and its bending moment, at most ${inUnit(last.largestMoment.moment.value, momentUnit, 3)}, and its deflection, at most ${inUnit(last.largestDeflection.deflection.value, small, 3)}.`,
    caption: `Resultants of both planes. Diameters are drawn larger than lengths. In the circles each force points as seen from the end where the stations begin: right 0°, up 90°.${cases.length > 1 ? ` Loads and bearing forces are those of "${cases.at(-1)!.name}".` : ""}`,
    figure: {
      data: [
        ...outlines,
        ...line("y2", ({ moment }) => moment.value.in(momentUnit), `moment, ${momentSymbol},`),
        ...line("y4", ({ shear }) => shear.value.in(force), `shear, ${inch ? "lbf" : "N"},`),
        ...line("y3", ({ deflection }) => deflection.value.in(small), `deflection, ${smallSymbol},`),
      ],
      layout: {
        width: 720,
        height: whole + margin.t + margin.b,
        title: { text: "The shaft under its loads" },
        margin,
        xaxis: {
          anchor: "y3",
          // A frame round every panel, though they share the axis.
          mirror: "all",
          range: [...range],
          title: { text: `station (${sizeSymbol})` },
        },
        yaxis: {
          domain: share(6, 7),
          range: [-below, above],
          showticklabels: false,
          showgrid: false,
          ticks: "",
        },
        yaxis2: {
          domain: share(2, 3),
          rangemode: "tozero",
          title: { text: `moment (${momentSymbol})` },
        },
        yaxis3: {
          domain: share(0, 1),
          rangemode: "tozero",
          title: { text: `deflection (${smallSymbol})` },
        },
        yaxis4: {
          domain: share(4, 5),
          rangemode: "tozero",
          title: { text: `shear (${inch ? "lbf" : "N"})` },
        },
        annotations: clocks.flatMap(({ annotations }) => annotations),
        shapes: [...worn, ...clocks.flatMap(({ shapes }) => shapes)],
      } satisfies Record<string, unknown> & Partial<Layout>,
    },
  };
}
