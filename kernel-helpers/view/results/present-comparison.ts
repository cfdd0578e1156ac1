import type { Comparison } from "../../survey/compare-measured.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";

/** Two ways to one number, their difference, and whether that is more than both are uncertain by. */
export function presentComparison(comparison: Comparison): Presentation {
  const { first, second, difference, agrees, chance } = comparison;
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
        because: `If both measure the same thing, a difference at least so large comes by chance in ${chanceText(chance)} of cases.`,
      },
    ],
  });
}

function chanceText(chance: number): string {
  if (chance < 0.001) return "less than 0.1 %";
  if (chance > 0.99) return "more than 99 %";
  return `${(100 * chance).toFixed(chance < 0.0995 ? 1 : 0)} %`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
