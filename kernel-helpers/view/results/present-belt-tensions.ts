import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { BeltTensions } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { countText } from "./count-text.js";
import { threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

/** Tensions of belts at rest, each straight part and their mean. */
export function presentBeltTensions({ title, belts, stretchCounted, warnings }: BeltTensions): Presentation {
  const found = belts.map(({ belt, tension }) => `${belt} ${plusMinus(tension)}`).join(", ");
  return Object.freeze<Presentation>({
    title: `Tension at rest from ${title}`,
    blocks: [
      { type: "text", text: `At rest: ${found} (95 %).` },
      {
        type: "table",
        caption: "Each straight part, pulled aside in its middle; ± U (95 %)",
        columns: [
          { title: "belt", align: "left" },
          { title: "straight part", align: "left" },
          { title: "its length", align: "right" },
          { title: "readings", align: "right" },
          { title: "deepest dip", align: "right" },
          { title: "tension", align: "right" },
        ],
        rows: belts.flatMap(({ belt, span, strands }) =>
          strands.map(({ strand, tension, deepest, readingCount }) => ({
            cells: [
              belt,
              strand,
              threeDigits(span),
              String(readingCount),
              `1/${formatFixed(1 / deepest, 0)} of it`,
              plusMinus(tension),
            ],
          })),
        ),
      },
      {
        type: "text",
        text: stretchCounted
          ? "What the pull itself stretches the belt is taken off."
          : `What the pull itself stretches the belt is not taken off; the tension is a little less. ${countText(belts.length, "belt")}, dips up to ${formatNumber(Number((100 * Math.max(...belts.flatMap(({ strands }) => strands.map(({ deepest }) => deepest)))).toFixed(1)))} % of the straight part.`,
      },
      ...warningBlocks(warnings),
    ],
  });
}
