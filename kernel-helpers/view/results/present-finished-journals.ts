import { formatNumber } from "../../quantity/index.js";
import type { FinishedJournal, FinishedJournals, JournalLoad } from "../../shaft/index.js";
import type { Fact, Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { shownUnits, sizeMeasured, stationText, systemOfLength } from "./shown-units.js";

/** The journals that boxes are made to: size, place, what presses them and how they lean. */
export function presentFinishedJournals({ journals, speed, torque }: FinishedJournals): Presentation {
  const units = shownUnits(systemOfLength(journals[0]!.diameter.value));
  const inch = units.system === "inch";
  const facts: Fact[] = [
    ...(speed === undefined ? [] : [{ label: "speed", value: `${formatNumber(speed.in("rpm"), 4)} rpm` }]),
    ...(torque === undefined
      ? []
      : [
          {
            label: "torque carried",
            value: inch
              ? `${formatNumber(torque.in("lbfInch"), 3)} lbf·in`
              : `${formatNumber(torque.in("newtonMetre"), 3)} N·m`,
          },
        ]),
  ];
  return Object.freeze<Presentation>({
    title: journals.length === 1 ? "The journal as finished" : "The journals as finished",
    blocks: [
      {
        type: "table",
        caption: "± U (95 %); a load that stands still presses from straight down (0°) counter-clockwise",
        columns: [
          { title: "journal", align: "left" },
          { title: "from", unit: units.sizeSymbol, align: "right" },
          { title: "to", unit: units.sizeSymbol, align: "right" },
          { title: "length", unit: units.sizeSymbol, align: "right" },
          { title: "finished diameter", align: "right" },
          { title: "load", align: "right" },
          { title: "presses towards", align: "left" },
          { title: "leans", unit: inch ? "thou per inch" : "mm per m", align: "right" },
        ],
        stacked: true,
        rows: journals.map((journal) => ({
          cells: [
            journal.name,
            stationText(journal.from, units),
            stationText(journal.to, units),
            stationText(journal.length, units),
            sizeMeasured(journal.diameter, units),
            journal.load === undefined
              ? "not known"
              : plusMinus(journal.load.force, { unit: inch ? "lbf" : "newton" }),
            towards(journal.load),
            leans(journal),
          ],
        })),
      },
      ...(facts.length === 0 ? [] : [{ type: "facts" as const, facts }]),
    ],
  });
}

function towards(load: JournalLoad | undefined): string {
  if (load?.direction === undefined) return load?.turnsWithShaft ? "turns with the shaft" : "not known";
  const at = `${formatNumber(Math.round(load.direction.in("degree")))}°`;
  return load.turnsWithShaft ? `the shaft's mark ${at}, turns with it` : `${at}, seen from ${load.seenFrom}`;
}

/** A slope in thousandths: thou per inch and millimetres per metre are the same number. */
function leans({ slope }: FinishedJournal): string {
  if (slope === undefined) return "not known";
  return plusMinus({
    ...slope,
    value: 1000 * slope.value,
    standardUncertainty: 1000 * slope.standardUncertainty,
  });
}
