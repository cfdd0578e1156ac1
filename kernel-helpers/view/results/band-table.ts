import type { Length } from "../../quantity/index.js";
import type { BandEdge, WearBand, WearBands } from "../../survey/profile-types.js";
import type { TableBlock, TableRow } from "../blocks.js";
import { bareMeasured } from "./bare-measured.js";
import { percentText } from "./percent-text.js";
import { nominalText, placeText, type ShownUnits, stationText } from "./shown-units.js";

/** The bands of a shaft, one a row: where each lies, and how far it is worn. */
export function bandTable({ bands, edges, nominal }: WearBands, units: ShownUnits): TableBlock {
  // The size is not to be broken over two lines.
  const size = nominal && nominalText(nominal, units).replaceAll(" ", "\u00a0");
  return {
    type: "table",
    caption: `Wear bands: diameter and depth at the middle of each, on diameter, at 20 °C, ± U (95 %)${edges.some(({ probability }) => probability !== undefined) ? "; where each ends, with the probability that it does, and where else it may (95 %)" : ""}`,
    columns: [
      { title: "band", align: "right" },
      { title: "stations", unit: units.sizeSymbol, align: "left" },
      { title: "ends between", unit: units.sizeSymbol, align: "left" },
      { title: "state", align: "left" },
      { title: "diameter", unit: units.sizeSymbol, align: "right" },
      { title: `below ${size ?? "nominal"}`, unit: units.smallSymbol, align: "right" },
    ],
    rows: bands.map((band, i) => bandRow(band, edges[i], units)),
    showRows: 24,
  };
}

function bandRow(band: WearBand, edge: BandEdge | undefined, units: ShownUnits): TableRow {
  const { number, from, to, state, diameter, depth } = band;
  const along = (length: Length): string => stationText(length, units);
  const cells = [
    String(number),
    `${along(from)} – ${along(to)}`,
    edge === undefined ? "end of survey" : edgeText(edge, units),
    state,
    bareMeasured(diameter, units.size),
    depth === undefined ? "no nominal" : bareMeasured(depth, units.small),
  ];
  return state === "worn" ? { cells, mark: "warn" } : { cells };
}

/** "13 – 14 (98 %)"; and where it may as well be elsewhere "13 – 14 (61 %), 12.07 – 13.94 (95 %)". */
function edgeText({ after, before, probability, interval, reach }: BandEdge, units: ShownUnits): string {
  const along = (at: Length): string => stationText(at, units);
  const place = (at: Length): string => placeText(at, units);
  const gap = `${along(after)} – ${along(before)}`;
  if (probability === undefined) return gap;
  const wide = interval && `${along(interval.after)} – ${along(interval.before)}`;
  const elsewhere =
    reach === undefined || wide === gap ? "" : `, ${place(reach.low)} – ${place(reach.high)} (95\u00a0%)`;
  return `${gap} (${percentText(probability)})${elsewhere}`;
}
