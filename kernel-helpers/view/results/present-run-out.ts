import { formatFixed } from "../../quantity/index.js";
import type { OffCentre, RunOut } from "../../survey/run-out-types.js";
import type { Fact, Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { cutNote, mostRows } from "./cut-rows.js";
import { runOutFigure } from "./run-out-figure.js";
import { type ShownUnits, shownUnits, smallNumber, stationText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** Run-out between centres: the answer in words, the figure, offset and bend, then each station. */
export function presentRunOut(found: RunOut): Presentation {
  const units = shownUnits(found.unitSystem);
  return Object.freeze<Presentation>({
    title: `Run-out of ${found.title}, between centres`,
    blocks: [
      { type: "text", text: found.text },
      runOutFigure(found),
      { type: "facts", facts: facts(found, units) },
      stationTable(found, units),
      ...cutNote(found.stations.length, found.file),
      ...warningBlocks(found.warnings),
    ],
  });
}

function facts(found: RunOut, units: ShownUnits): Fact[] {
  const { offset, bend, noiseRatio, axisFrom, wornLeftOut } = found;
  const place = (label: string, at: OffCentre, note: string): Fact => ({
    label,
    value: at.real
      ? `${formatMeasured(at.distance, { unit: units.small })} at ${plusMinus(at.direction, { unit: "degree" })}`
      : `none beyond the noise, ${formatMeasured(at.distance, { unit: units.small })}`,
    note,
  });
  return [
    ...(offset === undefined
      ? []
      : [
          place(
            `centre offset at ${offset.from}`,
            offset.first,
            "on radius: half of its total indicator reading",
          ),
          place(
            `centre offset at ${offset.to}`,
            offset.last,
            "on radius: half of its total indicator reading",
          ),
        ]),
    ...(bend === undefined ? [] : [place("bend", bend, "bow in the middle over its ends, on radius")]),
    {
      label: "axis found from",
      value: `${axisFrom.length} stations`,
      note: wornLeftOut ? "worn bands left out" : "all stations, worn or not",
    },
    ...(noiseRatio === undefined
      ? []
      : [
          {
            label: "centres about the axis",
            value: `${formatFixed(noiseRatio, 2)} times the stated uncertainty`,
            note: "near 1 where the shaft bows smoothly and is not worn to one side",
          },
        ]),
  ];
}

function stationTable({ stations }: RunOut, units: ShownUnits): TableBlock {
  return {
    type: "table",
    caption: "Each station; all but the total indicator reading on radius, ± U (95 %)",
    columns: [
      { title: "station", unit: units.sizeSymbol, align: "right" },
      { title: "total indicator reading", unit: units.smallSymbol, align: "right" },
      { title: "off centre", align: "right" },
      { title: "towards", align: "right" },
      { title: "out of round", unit: units.smallSymbol, align: "right" },
      { title: "low side", align: "right" },
      { title: "lower than opposite", align: "right" },
    ],
    rows: stations.slice(0, mostRows).map(({ station, tir, centre, outOfRound, lowSide, lower }) => ({
      cells: [
        stationText(station, units),
        smallNumber(tir, units.small),
        plusMinus(centre.distance, { unit: units.small }),
        centre.real ? plusMinus(centre.direction, { unit: "degree" }) : "",
        smallNumber(outOfRound, units.small),
        lowSide === undefined ? "" : plusMinus(lowSide, { unit: "degree" }),
        lower === undefined ? "" : plusMinus(lower, { unit: units.small }),
      ],
      ...(lower === undefined ? {} : { mark: "warn" as const }),
    })),
    showRows: 20,
  };
}
