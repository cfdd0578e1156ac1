import { formatNumber, type Length } from "../../quantity/index.js";
import type { NextReading, NextReadings } from "../../survey/next-readings-types.js";
import type { Presentation, TableBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { chanceText } from "./chance-text.js";
import { nextReadingsDrawing } from "./next-readings-drawing.js";
import {
  type ShownUnits,
  shownUnits,
  sizeUncertainty,
  smallUncertainty,
  stationText,
} from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** A list to take to the bench: where to read next, at which angles, what it brings, and why. */
export function presentNextReadings(found: NextReadings): Presentation {
  const units = shownUnits(found.unitSystem);
  return Object.freeze<Presentation>({
    title: `Read next on ${found.title}: ${found.question}`,
    blocks: [
      { type: "text", text: found.text },
      {
        type: "facts",
        facts: [
          {
            label: "standard uncertainty now",
            value: uncertaintyText(found.before, found, units),
            note: "one standard deviation",
          },
        ],
      },
      ...nextReadingsDrawing(found, units),
      ...(found.readings.length === 0 ? [] : [list(found, units)]),
      ...warningBlocks(found.warnings),
    ],
  });
}

function list(found: NextReadings, units: ShownUnits): TableBlock {
  const limit = found.about === "limit";
  const chances = ({ clearAfterOne, clearAfterThree }: NextReading): string[] =>
    limit ? [chanceText(clearAfterOne!), chanceText(clearAfterThree!)] : [];
  return {
    type: "table",
    caption: "Best place first; standard uncertainty after it is read",
    stacked: true,
    columns: [
      { title: "mark", align: "right" },
      { title: "station", unit: units.sizeSymbol, align: "right" },
      { title: "angles", align: "left" },
      { title: "after one", align: "right" },
      { title: "after three", align: "right" },
      { title: "one takes away", align: "right" },
      ...(limit
        ? [
            { title: "clear after one", align: "right" as const },
            { title: "clear after three", align: "right" as const },
          ]
        : []),
      { title: "why here", align: "left" },
      { title: "read", align: "left" },
    ],
    rows: found.readings.map((reading, i) => ({
      cells: [
        `${i + 1}`,
        stationText(reading.station, units),
        reading.angles.map(angleText).join(", "),
        uncertaintyText(reading.afterOne, found, units),
        uncertaintyText(reading.afterThree, found, units),
        chanceText(reading.gain),
        ...chances(reading),
        reading.reason,
        "",
      ],
    })),
  };
}

function uncertaintyText(u: Length | number, { about }: NextReadings, units: ShownUnits): string {
  if (typeof u === "number")
    return units.system === "inch"
      ? `${formatNumber(u * 12, 2)} in per foot`
      : `${formatNumber(u * 100, 2)} %`;
  return about === "edge" ? sizeUncertainty(u, units) : smallUncertainty(u, units);
}
