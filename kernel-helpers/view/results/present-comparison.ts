import type { Comparison } from "../../survey/compare-measured.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";

/** Two ways to one number, their difference, and whether that is more than both are uncertain by. */
export function presentComparison(comparison: Comparison): Presentation {
  const { first, second, difference, agrees, chance } = comparison;
  const percent = chance < 0.001 ? "less than 0.1 %" : `${(100 * chance).toFixed(chance < 0.1 ? 1 : 0)} %`;
  return Object.freeze<Presentation>({
    title: `${capital(first.label)} against ${second.label}`,
    blocks: [
      {
        type: "facts",
        facts: [
          { label: first.label, value: formatMeasured(first.result) },
          { label: second.label, value: formatMeasured(second.result) },
          { label: "difference", value: formatMeasured(difference) },
        ],
      },
      {
        type: "verdict",
        outcome: agrees ? "yes" : "no",
        text: agrees ? "they agree" : "they do not agree",
        because: `a difference at least so large comes by chance in ${percent} of cases, if both are the same`,
      },
    ],
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
