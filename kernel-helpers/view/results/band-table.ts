import { type Length, type Measured, measured } from "../../quantity/index.js";
import type { BandEdge, WearBand, WearBands } from "../../survey/profile-types.js";
import type { TableBlock, TableRow } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { nominalText, type ShownUnits, stationText } from "./shown-units.js";

/** The bands of a shaft, one a row: where each lies, and how far it is worn. */
export function bandTable({ bands, edges, nominal }: WearBands, units: ShownUnits): TableBlock {
  // The size is not to be broken over two lines.
  const size = nominal && nominalText(nominal, units).replaceAll(" ", "\u00a0");
  return {
    type: "table",
    caption: "Wear bands: diameter and depth at the middle of each, on diameter, at 20 °C, ± U (95 %)",
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
    edge === undefined ? "end of survey" : `${along(edge.after)} – ${along(edge.before)}`,
    state,
    bare(diameter, units.size),
    depth === undefined ? "no nominal" : bare(depth, units.small),
  ];
  return state === "worn" ? { cells, mark: "warn" } : { cells };
}

/** Value and expanded uncertainty, the unit being that of the column. */
function bare(length: Measured<Length>, unit: ShownUnits["size" | "small"]): string {
  const { value, standardUncertainty, degreesOfFreedom } = length;
  return plusMinus(measured(value.in(unit), standardUncertainty.in(unit), degreesOfFreedom));
}
