import { formatFixed } from "../../quantity/index.js";
import type { TaperIdentity, TaperMatch } from "../../survey/taper-setting-types.js";
import type { Fact, Presentation, TableRow } from "../blocks.js";
import { type ShownUnits, shownUnits, systemOfLength } from "./shown-units.js";

/** What the comparison of a taper with the handbook looks like: nearest first, agreement in words. */
export function presentTaperIdentity({ matches, text }: TaperIdentity): Presentation {
  const agreeing = matches.filter(({ agrees }) => agrees);
  const units = shownUnits(matches[0] && systemOfLength(matches[0].misfit));
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
          { title: "in per foot", align: "right" },
          { title: "1 : x", align: "right" },
          { title: "off by", unit: "in per foot", align: "right" },
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

function row(
  { name, taper, difference, differenceInU, misfit, agrees }: TaperMatch,
  units: ShownUnits,
): TableRow {
  return {
    cells: [
      name,
      formatFixed(taper * 12, 5),
      formatFixed(1 / taper, 3),
      formatFixed(difference * 12, 5),
      formatFixed(differenceInU, 1),
      formatFixed(misfit.in(units.small), units.small === "thou" ? 2 : 1),
      agrees ? "yes, within the uncertainty" : "no",
    ],
  };
}

function sourceFact({ name, source }: TaperMatch): Fact {
  return { label: name, value: source };
}
