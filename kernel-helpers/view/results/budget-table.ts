import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { Budget, BudgetRow } from "../../statistics/index.js";
import type { TableBlock } from "../blocks.js";
import { perUnit, type TableUnit, twoDigits, uncertaintyUnit } from "./budget-units.js";

/** An uncertainty budget as a table, the largest contribution first, the combined uncertainty last. */
export function budgetTable(budget: Budget): TableBlock {
  const unit = uncertaintyUnit(budget.value);
  return {
    type: "table",
    caption: budget.isCorrelated
      ? "Contribution: sensitivity times standard uncertainty. Some sources are correlated: each share holds its part of what they do together, and may be negative."
      : "Contribution: sensitivity times standard uncertainty. The shares are of the variance.",
    columns: [
      { title: "source", align: "left" },
      { title: "standard uncertainty", align: "right" },
      { title: "sensitivity", align: "right" },
      { title: "contribution", align: "right", ...(unit.symbol === "" ? {} : { unit: unit.symbol }) },
      { title: "share", align: "right" },
      { title: "degrees of freedom", align: "right" },
    ],
    rows: [
      ...budget.rows.map((row) => ({ cells: cellsOf(row, unit) })),
      {
        cells: [
          "together",
          "",
          "",
          twoDigits(budget.standardUncertainty, { ...unit, symbol: "" }),
          "100 %",
          degreesText(budget.degreesOfFreedom),
        ],
      },
    ],
    showRows: 21,
  };
}

function cellsOf(row: BudgetRow, unit: TableUnit): string[] {
  const own = uncertaintyUnit(row.standardUncertainty);
  const slope = (Number(row.sensitivity.valueOf()) * own.size) / unit.size;
  return [
    row.source,
    twoDigits(row.standardUncertainty, own),
    `${formatNumber(slope, 3)} ${perUnit(unit, own)}`.trim(),
    twoDigits(row.contribution, { ...unit, symbol: "" }),
    `${formatFixed(100 * row.share, 1)} %`,
    degreesText(row.degreesOfFreedom),
  ];
}

/** Degrees of freedom as read: "9", "16.7", "∞". */
export function degreesText(degreesOfFreedom: number): string {
  return degreesOfFreedom === Number.POSITIVE_INFINITY ? "∞" : formatNumber(degreesOfFreedom, 3);
}
