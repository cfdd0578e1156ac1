import {
  type Force,
  formatNumber,
  type Length,
  type Measured,
  quantityFromSi,
} from "../../quantity/index.js";
import type { BendingStation, ShaftBending } from "../../shaft/index.js";
import type { Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { bendingFigure } from "./bending-figure.js";
import { jointUnits } from "./joint-text.js";
import { scaled } from "./scaled.js";
import { type ShownUnits, shownUnits, smallMeasured, stationText, systemOfLength } from "./shown-units.js";
import { momentText } from "./strength-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** A shaft bent by its loads: the drawing with its diagrams, what each bearing bears, where it is worst. */
export function presentBending(found: ShaftBending): Presentation {
  const units = bendingUnits(found);
  const { largestMoment, largestDeflection, shares } = found;
  const torque = jointUnits(largestMoment.station);
  return Object.freeze<Presentation>({
    title: "Bending of the shaft",
    blocks: [
      { type: "text", text: `Counted: ${found.loadCase.join("; ")}.` },
      bendingFigure([{ name: "shaft", bending: found }], units),
      supportTable(found, units),
      {
        type: "facts",
        facts: [
          {
            label: "largest moment",
            value: `${momentText(largestMoment.moment, torque)} at ${place(largestMoment, units)}`,
            note:
              shares.length === 0
                ? "95 %"
                : `95 %; its doubt is of ${shares
                    .slice(0, 3)
                    .filter(({ share }) => share >= 0.005)
                    .map(({ source, share }) => `${source} (${Math.round(100 * share)} %)`)
                    .join(", ")}`,
          },
          {
            label: "largest deflection",
            value: `${formatMeasured(largestDeflection.deflection, { unit: units.small })}`,
            note: `at ${place(largestDeflection, units)}`,
          },
          ...found.loads.map(({ name, deflection, slope }) => ({
            label: `at ${name}`,
            value: `${smallMeasured(deflection, units)}, slope ${slopeText(slope)}`,
            note: "deflection and lean, 95 %",
          })),
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

export function bendingUnits({ largestMoment }: ShaftBending): ShownUnits {
  return shownUnits(systemOfLength(largestMoment.station));
}

function place({ station }: BendingStation, units: ShownUnits): string {
  // Found on a mesh, along which the moment hardly changes: no finer than a rule reads.
  const at = quantityFromSi("length", station.si, station.writtenIn as never);
  return `${formatNumber(Number(at.in(units.size).toFixed(units.system === "inch" ? 2 : 0)), 6)} ${units.sizeSymbol}`;
}

/** A lean in thousandths: "0.42 ± 0.05 in 1000". */
export function slopeText(slope: Measured<number>): string {
  return slope.standardUncertainty > 0
    ? `${plusMinus(scaled(slope, 1000))} in 1000`
    : `${formatNumber(slope.value * 1000, 3)} in 1000`;
}

export function forceText(force: Measured<Force>, { system }: ShownUnits): string {
  const unit = system === "inch" ? "lbf" : "newton";
  return force.standardUncertainty.si > 0
    ? plusMinus(force, { unit })
    : `${formatNumber(force.value.in(unit), 4)} ${system === "inch" ? "lbf" : "N"}`;
}

function supportTable({ supports }: ShaftBending, units: ShownUnits): TableBlock {
  return {
    type: "table",
    stacked: true,
    caption: "What each bearing bears, 95 % intervals",
    columns: [
      { title: "bearing", align: "left" },
      { title: "station", unit: units.sizeSymbol, align: "right" },
      { title: "load", align: "right" },
      { title: "pressed towards", align: "right" },
      { title: "slope of the shaft", align: "right" },
    ],
    rows: supports.map(({ name, station, reaction, loadDirection, slope }) => ({
      cells: [
        name,
        stationText(station as Length, units),
        forceText(reaction, units),
        `${formatNumber(loadDirection.in("degree"), 3)}°`,
        slopeText(slope),
      ],
    })),
  };
}
