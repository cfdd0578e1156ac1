import type { CleanUp } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { shownUnits, sizeText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

const axisWords = {
  "own centres": "about the shaft's own centres",
  "sound surfaces": "about new centres, on the axis of the sound surfaces",
} as const;

/** What a worn stretch cleans up to: bounds, and by indicator. */
export function presentCleanUp(found: CleanUp): Presentation {
  const units = shownUnits(found.unitSystem);
  const { most, least, about, plan, from, to, stationCount, next } = found;
  return Object.freeze<Presentation>({
    title: `The largest true cylinder left, ${from} to ${to}`,
    blocks: [
      {
        type: "text",
        text:
          about.length > 0
            ? `Turned ${axisWords[about[0]!.axis]} it cleans up at ${sizeText(plan.value, units)} or a little below; station ${about[0]!.decidedAt} decides it.`
            : `It cleans up somewhere between ${sizeText(least.value, units)} and ${sizeText(most.value, units)}: diameters alone cannot tell on which side metal is missing. Plan on the lower.`,
      },
      {
        type: "facts",
        facts: [
          ...about.map(({ axis, diameter, decidedAt }) => ({
            label: axisWords[axis],
            value: formatMeasured(diameter, { unit: units.size }),
            note: `by indicator; decided at ${decidedAt}`,
          })),
          {
            label: "at most",
            value: formatMeasured(most, { unit: units.size }),
            note: "worn evenly all round",
          },
          {
            label: "at least",
            value: formatMeasured(least, { unit: units.size }),
            note: "all worn on one side: twice the loss",
          },
          {
            label: "stations",
            value: String(stationCount),
            note: "the surface between them counted as no lower than neighbours differ",
          },
        ],
      },
      ...(next === "" ? [] : [{ type: "text" as const, text: next }]),
      ...warningBlocks(found.warnings),
    ],
  });
}
