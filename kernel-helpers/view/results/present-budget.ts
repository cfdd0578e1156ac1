import { formatNumber, type Measured, measured, unitSystem } from "../../quantity/index.js";
import { type AnyUncertain, type Budget, budget } from "../../statistics/index.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { budgetFigure } from "./budget-figure.js";
import { budgetTable, degreesText } from "./budget-table.js";
import { budgetUnit, twoDigits } from "./budget-units.js";
import { scaled } from "./scaled.js";

/** An uncertainty budget: the result, what governs it, the table of sources, and the bars. */
export function presentBudget(shown: Budget): Presentation {
  const { standardUncertainty, degreesOfFreedom, coverage, coverageFactor, expanded } = shown;
  const unit = budgetUnit(shown);
  const percent = `${formatNumber(coverage * 100)} %`;
  return Object.freeze<Presentation>({
    title: shown.title,
    blocks: [
      {
        type: "facts",
        facts: [
          {
            label: "result",
            value: resultText(shown),
          },
          { label: "combined standard uncertainty", value: twoDigits(standardUncertainty, unit) },
          {
            label: `expanded uncertainty, ${percent}`,
            value: twoDigits(expanded, unit),
            note: `k = ${formatNumber(coverageFactor, 3)} for ${degreesText(degreesOfFreedom)} degrees of freedom`,
          },
        ],
      },
      { type: "text", text: governing(shown) },
      budgetTable(shown),
      budgetFigure(shown),
    ],
  });
}

/** An uncertain value is shown with its budget; an exact one by itself. */
export function presentUncertain(value: AnyUncertain): Presentation {
  if (value.sources.some(({ contribution }) => contribution !== 0)) return presentBudget(budget(value));
  return Object.freeze<Presentation>({ title: `${value.value}, taken as exact`, blocks: [] });
}

function resultText({ value, standardUncertainty, degreesOfFreedom, coverage, slope }: Budget): string {
  const found = measured(value, standardUncertainty, degreesOfFreedom);
  if (slope !== true) return formatMeasured(found, { coverage });
  const [factor, unit] = unitSystem() === "inch" ? [12, "in per foot"] : [100, "mm per 100 mm"];
  return formatMeasured(scaled(found as Measured<number>, factor), { coverage }).replace(" (", ` ${unit} (`);
}

/** Which source to work on, in words. */
function governing({ rows, standardUncertainty, isCorrelated }: Budget): string {
  const [first, second] = rows;
  if (Number(standardUncertainty.valueOf()) === 0) return "The sources cancel each other.";
  if (second === undefined) return `All of it comes from ${first!.source}.`;
  if (isCorrelated) return `The largest contribution is that of ${first!.source}.`;
  const without = 1 - Math.sqrt(Math.max(0, 1 - first!.share));
  const gain = Math.round(100 * without);
  return `The largest contribution is that of ${first!.source}: without it the uncertainty would be ${gain < 1 ? "hardly" : `${gain} %`} smaller.`;
}
