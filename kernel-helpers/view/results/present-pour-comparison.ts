import type { ComparedPour, PourComparison } from "../../bearing/index.js";
import { formatNumber } from "../../quantity/index.js";
import type { Presentation } from "../blocks.js";
import { rangeText } from "./joint-text.js";

const fills = {
  fills: "yes",
  "cannot tell yet": "cannot tell yet",
  "freezes before it fills": "no",
} as const;

/** Ways to pour a box side by side: the times from good contact to soot or chalk. */
export function presentPourComparison({ pours }: PourComparison): Presentation {
  const between = (of: "beginsToFreeze" | "stopsRunning", { chill: { quick, slow } }: ComparedPour): string =>
    rangeText({ low: quick[of], high: slow[of] }, "second", 2);
  return Object.freeze<Presentation>({
    title: "How long it runs",
    blocks: [
      {
        type: "table",
        caption: "Good contact first, soot or chalk last; how many times as long holds at either",
        columns: [
          { title: "poured", align: "left" },
          { title: "begins to freeze", align: "right" },
          { title: "stops running", align: "right" },
          { title: "times as long", align: "right" },
          { title: "fills", align: "left" },
        ],
        rows: pours.map((pour) => ({
          cells: [
            pour.as,
            between("beginsToFreeze", pour),
            between("stopsRunning", pour),
            formatNumber(pour.timesAsLong, 2),
            fills[pour.verdict],
          ],
        })),
      },
    ],
  });
}
