import { formatFixed, formatWithUncertainty } from "../../quantity/index.js";
import type { BandEdge, WearBand, WearBands } from "../../survey/profile-types.js";
import type { TableBlock, TableRow } from "../blocks.js";
import { expandedUncertainty } from "../format-measured.js";
import { angleText } from "./angle-text.js";
import {
  nominalText,
  type ShownUnits,
  sizeMeasured,
  sizeText,
  smallMeasured,
  smallNumber,
  stationText,
} from "./shown-units.js";

/** The bands of a shaft, one a row. */
export function bandTable({ bands, edges, nominal, profile }: WearBands, units: ShownUnits): TableBlock {
  const below = nominal === undefined ? "below nominal" : `below ${nominalText(nominal, units)}`;
  return {
    type: "table",
    caption: `Wear bands. Diameter and depth are those of the middle of the band, on diameter, ± U (95 %); ${profile.correction}`,
    columns: [
      { title: "band", align: "right" },
      { title: "stations", unit: units.sizeSymbol, align: "left" },
      { title: "ends between", unit: units.sizeSymbol, align: "left" },
      { title: "state", align: "left" },
      { title: "shape", align: "left" },
      { title: "diameter", align: "right" },
      { title: below, align: "right" },
      {
        title: "slope",
        unit: `${units.smallSymbol} per ${units.system === "inch" ? "in" : "100 mm"}`,
        align: "right",
      },
      { title: "oval by", unit: units.smallSymbol, align: "right" },
      { title: "smallest reading", align: "left" },
      { title: "readings", align: "right" },
    ],
    rows: bands.map((band, i) => bandRow(band, edges[i], units)),
    showRows: 24,
  };
}

function bandRow(band: WearBand, edge: BandEdge | undefined, units: ShownUnits): TableRow {
  const { number, from, to, shape, state, diameter, depth, slope, ovality, smallest } = band;
  const along = (length: WearBand["from"]): string => stationText(length, units);
  const angle = smallest.angle === undefined ? "" : ` at ${angleText(smallest.angle)}`;
  const cells = [
    String(number),
    `${along(from)} – ${along(to)}`,
    edge === undefined ? "end of survey" : `${along(edge.after)} and ${along(edge.before)}`,
    state,
    shape === "flat"
      ? shape
      : `${shape}, ${sizeText(band.diameterAtFrom, units)} to ${sizeText(band.diameterAtTo, units)}`,
    sizeMeasured(diameter, units),
    depth === undefined ? "no nominal" : smallMeasured(depth, units),
    shape === "flat" ? "0" : slopeText(slope, units),
    ovality === undefined ? "one angle" : ovalText(band, units),
    `${sizeText(smallest.diameter, units)}, station ${along(smallest.station)}${angle}`,
    String(band.readingCount),
  ];
  return state === "worn" ? { cells, mark: "warn" } : { cells };
}

function ovalText({ ovality, smallestAngle }: WearBand, { small }: ShownUnits): string {
  if (ovality === undefined) return "";
  const across = smallestAngle === undefined ? "" : `, small at ${angleText(smallestAngle)}`;
  return `${smallNumber(ovality, small)}${across}`;
}

/** Thousandths of an inch for each inch, or micrometres for each 100 mm; positive where the shaft grows. */
function slopeText(slope: WearBand["slope"], { system }: ShownUnits): string {
  const scale = system === "inch" ? 1000 : 100_000;
  const { expanded } = expandedUncertainty(slope);
  if (expanded === 0) return formatFixed(slope.value * scale, 2);
  const [value, uncertainty] = formatWithUncertainty(slope.value * scale, expanded * scale);
  return `${value} ± ${uncertainty}`;
}
