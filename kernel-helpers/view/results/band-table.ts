import { formatFixed, type Length, type Measured, measured } from "../../quantity/index.js";
import type { BandEdge, WearBand, WearBands } from "../../survey/profile-types.js";
import type { TableBlock, TableRow } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { angleText } from "./angle-text.js";
import { scaled } from "./scaled.js";
import { nominalText, type ShownUnits, smallNumber, stationText } from "./shown-units.js";

/** The bands of a shaft, one a row. */
export function bandTable({ bands, edges, nominal }: WearBands, units: ShownUnits): TableBlock {
  const below = nominal === undefined ? "below nominal" : `below ${nominalText(nominal, units)}`;
  return {
    type: "table",
    caption: "Wear bands: diameter and depth at the middle of each, on diameter, at 20 °C, ± U (95 %)",
    columns: [
      { title: "band", align: "right" },
      { title: "stations", unit: units.sizeSymbol, align: "left" },
      { title: "ends between", unit: units.sizeSymbol, align: "left" },
      { title: "state", align: "left" },
      { title: "shape", align: "left" },
      { title: "diameter", unit: units.sizeSymbol, align: "right" },
      { title: below, unit: units.smallSymbol, align: "right" },
      { title: "oval by, small at", unit: units.smallSymbol, align: "right" },
      { title: "smallest reading", unit: units.sizeSymbol, align: "left" },
    ],
    rows: bands.map((band, i) => bandRow(band, edges[i], units)),
    showRows: 24,
  };
}

function bandRow(band: WearBand, edge: BandEdge | undefined, units: ShownUnits): TableRow {
  const { number, from, to, shape, state, diameter, depth, slope, ovality, smallest } = band;
  const along = (length: Length): string => stationText(length, units);
  const angle = smallest.angle === undefined ? "" : `, ${angleText(smallest.angle)}`;
  const size = formatFixed(smallest.diameter.in(units.size), units.decimals);
  const cells = [
    String(number),
    `${along(from)} – ${along(to)}`,
    edge === undefined ? "end of survey" : `${along(edge.after)} – ${along(edge.before)}`,
    state,
    shape === "flat" ? shape : `${shape}, ${slopeText(slope, units)}`,
    bare(diameter, units.size),
    depth === undefined ? "no nominal" : bare(depth, units.small),
    ovality === undefined ? "one angle" : ovalText(ovality, band, units),
    `${size} at ${along(smallest.station)}${angle}`,
  ];
  return state === "worn" ? { cells, mark: "warn" } : { cells };
}

/** Value and expanded uncertainty, the unit being that of the column. */
function bare(length: Measured<Length>, unit: ShownUnits["size" | "small"]): string {
  const { value, standardUncertainty, degreesOfFreedom } = length;
  return plusMinus(measured(value.in(unit), standardUncertainty.in(unit), degreesOfFreedom));
}

function ovalText(ovality: Length, { smallestAngle }: WearBand, { small }: ShownUnits): string {
  const across = smallestAngle === undefined ? "" : `, ${angleText(smallestAngle)}`;
  return `${smallNumber(ovality, small)}${across}`;
}

/** Thousandths of an inch for each inch, or micrometres for each 100 mm; positive where the shaft grows. */
function slopeText(slope: WearBand["slope"], { system, smallSymbol }: ShownUnits): string {
  const scale = system === "inch" ? 1000 : 100_000;
  return `${plusMinus(scaled(slope, scale))} ${smallSymbol} per ${system === "inch" ? "in" : "100 mm"}`;
}
