import { formatFixed } from "../../quantity/index.js";
import type { WearBand, WearBands } from "../../survey/profile-types.js";
import type { TableBlock, TableRow } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { angleText } from "./angle-text.js";
import { scaled } from "./scaled.js";
import { type ShownUnits, smallNumber, stationText } from "./shown-units.js";

/** What each band looks like: its slope along the shaft, how far it is out of round, its smallest reading. */
export function bandShapeTable({ bands }: WearBands, units: ShownUnits): TableBlock {
  const { sizeSymbol, smallSymbol, system } = units;
  const round = bands.some(({ ovality }) => ovality !== undefined);
  return {
    type: "table",
    caption: round
      ? "Shape of the bands: slope ± U (95 %), positive where the shaft grows; mean ovality, and the angle at which the band is smallest, where one stands out"
      : "Shape of the bands: slope ± U (95 %), positive where the shaft grows. Read at one angle: nothing is known of roundness.",
    columns: [
      { title: "band", align: "right" },
      { title: "slope", unit: `${smallSymbol} per ${system === "inch" ? "in" : "100 mm"}`, align: "right" },
      ...(round
        ? ([
            { title: "oval by", unit: smallSymbol, align: "right" },
            { title: "small at", align: "right" },
          ] as const)
        : []),
      { title: "smallest reading", unit: sizeSymbol, align: "right" },
      { title: "at station", unit: sizeSymbol, align: "right" },
      ...(round ? ([{ title: "at angle", align: "right" }] as const) : []),
    ],
    rows: bands.map((band) => shapeRow(band, units, round)),
    showRows: 24,
  };
}

function shapeRow(band: WearBand, units: ShownUnits, round: boolean): TableRow {
  const { number, shape, state, slope, ovality, smallestAngle, smallest } = band;
  // Thousandths of an inch for each inch, or micrometres for each 100 mm.
  const scale = units.system === "inch" ? 1000 : 100_000;
  const cells = [
    String(number),
    shape === "flat" ? "flat" : plusMinus(scaled(slope, scale)),
    ...(round
      ? [
          ovality === undefined ? "one angle" : smallNumber(ovality, units.small),
          angleText(smallestAngle) || "–",
        ]
      : []),
    formatFixed(smallest.diameter.in(units.size), units.decimals),
    stationText(smallest.station, units),
    ...(round ? [angleText(smallest.angle) || "–"] : []),
  ];
  return state === "worn" ? { cells, mark: "warn" } : { cells };
}
