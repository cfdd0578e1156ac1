import { formatFixed } from "../../quantity/index.js";
import type { Lobes, Roundness } from "../../survey/roundness-types.js";
import type { Fact, Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { chanceText } from "./chance-text.js";
import { type ShownUnits, shownUnits, smallText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** The roundness of a section: the answer in words, circle and deviation, and its lobes, all on radius. */
export function presentRoundness(found: Roundness): Presentation {
  const units = shownUnits(found.unitSystem);
  const where = found.station === undefined ? "" : ` at ${found.station}`;
  return Object.freeze<Presentation>({
    title: `Roundness of ${found.title}${where}`,
    blocks: [
      { type: "text", text: found.text },
      { type: "facts", facts: facts(found, units) },
      ...(found.lobes.length === 0 ? [] : [lobeTable(found, units)]),
      ...warningBlocks(found.warnings),
    ],
  });
}

function facts(found: Roundness, units: ShownUnits): Fact[] {
  const { setUp, tir, eccentricity, direction, deviation, deviationIs, noiseRatio } = found;
  return [
    {
      label: "held",
      value: setUp.held === "in a vee block" ? `in a vee block of ${setUp.included}` : setUp.held,
      note: `${found.readingCount} readings at ${found.angleCount} angles`,
    },
    {
      label: "total indicator reading",
      value: smallText(tir, units),
      note: "largest less smallest, as read",
    },
    ...(eccentricity === undefined || direction === undefined
      ? []
      : [
          {
            label: "eccentricity",
            value: formatMeasured(eccentricity, { unit: units.small }),
            note: "on radius; by itself it gives twice that of total indicator reading",
          },
          { label: "highest at", value: formatMeasured(direction, { unit: "degree" }) },
        ]),
    {
      label: deviationIs === "measured" ? "roundness deviation" : "roundness deviation, at least",
      value: formatMeasured(deviation, { unit: units.small }),
      note: "peak to valley about the least-squares circle, on radius",
    },
    ...(noiseRatio === undefined
      ? []
      : [
          {
            label: "scatter",
            value: `${formatFixed(noiseRatio, 2)} times the stated uncertainty`,
            note: "near 1 when the indicator does what is said of it",
          },
        ]),
  ];
}

function lobeTable({ lobes, setUp }: Roundness, units: ShownUnits): TableBlock {
  const vee = setUp.held === "in a vee block";
  return {
    type: "table",
    caption: `Lobes, valley to crest on radius, ± U (95 %)${vee ? ", corrected for the vee" : ""}`,
    columns: [
      { title: "lobes", align: "right" },
      ...(vee ? [{ title: "factor of the vee", align: "right" as const }] : []),
      { title: "height", align: "right" },
      { title: "first crest at", align: "right" },
      { title: "chance of noise", align: "right" },
      { title: "stands out", align: "left" },
    ],
    rows: lobes.map((lobe) => ({
      cells: [
        String(lobe.count),
        ...(vee ? [formatFixed(lobe.factor, 2)] : []),
        lobe.height === undefined ? "does not show" : plusMinus(lobe.height, { unit: units.small }),
        lobe.real && lobe.crestAt !== undefined ? plusMinus(lobe.crestAt, { unit: "degree" }) : "",
        lobe.height === undefined ? "" : chanceText(lobe.chance),
        standsOut(lobe),
      ],
    })),
  };
}

function standsOut({ height, real }: Lobes): string {
  if (height === undefined) return "cannot be seen in this vee";
  return real ? "yes" : "no";
}
