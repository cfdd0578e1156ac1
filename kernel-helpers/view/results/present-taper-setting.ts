import { inFraction, type Length } from "../../quantity/index.js";
import type { TaperSetting } from "../../survey/taper-setting-types.js";
import type { Fact, Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { scaled } from "./scaled.js";
import { nominalText, type ShownUnits, shownUnits, smallText, systemOfLength } from "./shown-units.js";
import { angleFact, withUnit } from "./taper-facts.js";
import { warningBlocks } from "./warning-blocks.js";

/** What to dial in to cut the mate of a taper: each figure with its uncertainty and what it is measured on. */
export function presentTaperSetting(setting: TaperSetting): Presentation {
  const units = shownUnits(systemOfLength(setting.drawUp.onDiameter));
  return Object.freeze<Presentation>({
    title: "Taper: what to dial in",
    blocks: [
      {
        type: "facts",
        facts: [
          compound(setting),
          ...attachment(setting),
          tailstock(setting, units),
          ...sineBar(setting, units),
          drawUp(setting, units),
        ],
      },
      ...indicator(setting, units),
      ...warningBlocks(setting.warnings),
    ],
  });
}

function compound({ compoundAngle }: TaperSetting): Fact {
  return angleFact(
    "compound slide, swung from the axis",
    compoundAngle,
    "the half angle, not the included angle",
  );
}

function attachment({ attachmentPerFoot, taper }: TaperSetting): Fact[] {
  const note = "on diameter; whatever the length of the work";
  return [
    { label: "taper attachment, per foot", value: formatMeasured(attachmentPerFoot, { unit: "inch" }), note },
    { label: "taper attachment, per cent", value: withUnit(scaled(taper, 100), "%"), note },
  ];
}

function tailstock({ tailstockSetOver, betweenCentres }: TaperSetting, units: ShownUnits): Fact {
  const label = "tailstock set-over";
  if (tailstockSetOver === undefined || betweenCentres === undefined)
    return { label, value: "not told: it needs the whole length between centres" };
  return {
    label,
    value: formatMeasured(tailstockSetOver, { unit: units.size }),
    note: `sideways, on radius, for work ${nominalText(betweenCentres, units)} long between centres: the whole length, not the tapered part`,
  };
}

function sineBar({ sineBar: bar }: TaperSetting, units: ShownUnits): Fact[] {
  if (bar === undefined) return [];
  return [
    {
      label: `stack under a ${nominalText(bar.barLength, units)} sine bar`,
      value: formatMeasured(bar.stack, { unit: units.size }),
      note: "for the included angle, flank to flank",
    },
  ];
}

function drawUp({ drawUp: { onDiameter, axial } }: TaperSetting, units: ShownUnits): Fact {
  return {
    label: `draw-up for each ${smallText(onDiameter, units)}`,
    value: formatMeasured(axial, { unit: units.size }),
    note: "travel along the axis for that much on diameter",
  };
}

/** The indicator against the flank: what it must show for each travel of the carriage. */
function indicator({ indicator: rises }: TaperSetting, units: ShownUnits): TableBlock[] {
  if (rises.length === 0) return [];
  return [
    {
      type: "table",
      caption:
        "Indicator against the flank, square to the axis: rise on radius, half the change of diameter, ± U (95 %)",
      columns: [
        { title: "travel along the axis", align: "right" },
        { title: "rise", align: "right" },
      ],
      rows: rises.map(({ travel, rise }) => ({
        cells: [travelText(travel, units), plusMinus(rise, { unit: units.small })],
      })),
    },
  ];
}

function travelText(travel: Length, units: ShownUnits): string {
  return units.system === "inch" ? inFraction(travel) : nominalText(travel, units);
}
