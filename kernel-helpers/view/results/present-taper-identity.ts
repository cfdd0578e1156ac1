import { formatFixed } from "../../quantity/index.js";
import type { TaperIdentity, TaperMatch } from "../../survey/taper-setting-types.js";
import type { Presentation, TableRow } from "../blocks.js";
import { type ShownUnits, shownUnits, systemOfLength } from "./shown-units.js";

/** What the comparison of a taper with the handbook looks like: nearest first, agreement in words. */
export function presentTaperIdentity({ matches, text }: TaperIdentity): Presentation {
  const units = shownUnits(matches[0] && systemOfLength(matches[0].misfit));
  return Object.freeze<Presentation>({
    title: "Which standard taper is it?",
    blocks: [
      { type: "text", text },
      {
        type: "table",
        caption: "Nearest first. Misfit: difference of the diameters over the length that was read.",
        columns: [
          { title: "taper", align: "left" },
          { title: "in per foot", align: "right" },
          { title: "1 : x", align: "right" },
          { title: "measured minus standard", unit: "in per foot", align: "right" },
          { title: "in standard uncertainties", align: "right" },
          { title: "misfit", unit: units.smallSymbol, align: "right" },
          { title: "agrees", align: "left" },
          { title: "source", align: "left" },
        ],
        rows: matches.map((match) => row(match, units)),
        showRows: 8,
      },
    ],
  });
}

function row(
  { name, taper, difference, differenceInU, misfit, agrees, source }: TaperMatch,
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
      source,
    ],
  };
}
