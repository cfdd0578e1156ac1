import { formatNumber, systemOf, unitSystem } from "../../quantity/index.js";
import type { ShaftLoads } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { shownUnits, stationText, systemOfLength } from "./shown-units.js";

/** What presses on each box, and what bends and twists the shaft where it matters. */
export function presentShaftLoads({ loadCase, boxes, places }: ShaftLoads): Presentation {
  const written = boxes[0]!.force.value.writtenIn;
  const inch = (unitSystem() ?? (written === undefined ? "metric" : systemOf(written))) === "inch";
  const units = shownUnits(
    places[0] === undefined ? (inch ? "inch" : "metric") : systemOfLength(places[0].station),
  );
  const torque = inch ? "lbfInch" : "newtonMetre";
  return Object.freeze<Presentation>({
    title: `Loads on the shaft: ${loadCase}`,
    blocks: [
      {
        type: "facts",
        facts: boxes.map(({ name, force, direction }) => ({
          label: `on ${name}`,
          value: plusMinus(force, { unit: inch ? "lbf" : "newton" }),
          note: `± U (95 %); the journal is pressed ${formatNumber(Math.round(direction.in("degree")))}° from straight down, counter-clockwise as seen from where the stations begin`,
        })),
      },
      {
        type: "table",
        caption: "Where it may break, ± U (95 %)",
        columns: [
          { title: "place", align: "left" },
          { title: "station", unit: units.sizeSymbol, align: "right" },
          { title: "bending moment, reversed", align: "right" },
          { title: "torque", align: "right" },
        ],
        rows: places.map(({ name, station, moment, torque: twists }) => ({
          cells: [
            name,
            stationText(station, units),
            plusMinus(moment, { unit: torque }),
            plusMinus(twists, { unit: torque }),
          ],
        })),
      },
    ],
  });
}
