import { formatFixed } from "../../quantity/index.js";
import type { TaperIdentity, TaperMatch } from "../../survey/taper-setting-types.js";
import type { Fact, Presentation, TableRow } from "../blocks.js";
import { type ShownUnits, shownUnits, systemOfLength } from "./shown-units.js";

/** What the comparison of a taper with the handbook looks like: nearest first, agreement in words. */
export function presentTaperIdentity({ matches, text }: TaperIdentity): Presentation {
  const agreeing = matches.filter(({ agrees }) => agrees);
  const units = shownUnits(matches[0] && systemOfLength(matches[0].misfit));
  const rate = rates[units.system];
  return Object.freeze<Presentation>({
    title: "Which standard taper is it?",
    blocks: [
      { type: "text", text },
      {
        type: "table",
        caption:
          "Nearest first. Off by: measured less standard; u is the standard uncertainty of the measured taper. Misfit: difference of the diameters over the length that was read.",
        columns: [
          { title: "taper", align: "left" },
          { title: rate.name, align: "right" },
          { title: "1 : x", align: "right" },
          { title: "off by", unit: rate.name, align: "right" },
          { title: "off by", unit: "times u", align: "right" },
          { title: "misfit", unit: units.smallSymbol, align: "right" },
          { title: "agrees", align: "left" },
        ],
        rows: matches.map((match) => row(match, units)),
        // Those that agree, and the two next for comparison; the rest folds away.
        showRows: agreeing.length + 2,
      },
      ...(agreeing.length === 0 ? [] : [{ type: "facts", facts: agreeing.map(sourceFact) } as const]),
    ],
  });
}

/** How steep a taper is, as each system of units says it. */
const rates = {
  inch: { name: "in per foot", times: 12, decimals: 5 },
  metric: { name: "mm per 100 mm", times: 100, decimals: 4 },
} as const;

function row(match: TaperMatch, units: ShownUnits): TableRow {
  const { name, taper, difference, differenceInU, misfit } = match;
  const { times, decimals } = rates[units.system];
  return {
    cells: [
      name,
      formatFixed(taper * times, decimals),
      formatFixed(1 / taper, 3),
      formatFixed(difference * times, decimals),
      formatFixed(differenceInU, 1),
      formatFixed(misfit.in(units.small), units.small === "thou" ? 2 : 1),
      agreement(match),
    ],
  };
}

/** A worn or cut-down taper may have a standard's slope without lying anywhere on it. */
function agreement({ agrees, sizeFits }: TaperMatch): string {
  if (!agrees) return "no";
  return sizeFits === false ? "in slope, not in size" : "yes, within the uncertainty";
}

function sourceFact({ name, source }: TaperMatch): Fact {
  return { label: name, value: source };
}
