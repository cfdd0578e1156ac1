import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { Budget, BudgetRow } from "../../statistics/index.js";
import type { TableBlock } from "../blocks.js";
import { budgetUnit, perUnit, type TableUnit, twoDigits, uncertaintyUnit } from "./budget-units.js";

/**
 * An uncertainty budget as a table, the largest contribution first, the combined uncertainty last. Where every source counts
 * as it is, its standard uncertainty is its contribution and stands once.
 */
export function budgetTable(budget: Budget): TableBlock {
  const unit = budgetUnit(budget);
  const plain = budget.rows.every((row) => sensitivityText(row, unit, budget.slope) === "1");
  return {
    type: "table",
    caption: captionOf(budget, plain),
    columns: [
      { title: "source", align: "left" },
      ...(plain
        ? []
        : ([
            { title: "standard uncertainty", align: "right" },
            { title: "sensitivity", align: "right" },
          ] as const)),
      {
        title: plain ? "standard uncertainty" : "contribution",
        align: "right",
        ...(unit.symbol === "" ? {} : { unit: unit.symbol }),
      },
      { title: "share", align: "right" },
      { title: "degrees of freedom", align: "right" },
    ],
    rows: [
      ...budget.rows.map((row) => ({ cells: cellsOf(row, unit, plain, budget.slope) })),
      {
        cells: [
          "together",
          ...(plain ? [] : ["", ""]),
          twoDigits(budget.standardUncertainty, { ...unit, symbol: "" }),
          "100 %",
          degreesText(budget.degreesOfFreedom),
        ],
      },
    ],
    showRows: 21,
    stacked: true,
  };
}

function captionOf({ isCorrelated }: Budget, plain: boolean): string {
  if (isCorrelated)
    return "Contribution: sensitivity times standard uncertainty. Some sources are correlated: each share holds its part of what they do together, and may be negative.";
  return plain
    ? "Each source counts as it is, with sensitivity 1. The shares are of the variance."
    : "Contribution: sensitivity times standard uncertainty. The shares are of the variance.";
}

function cellsOf(row: BudgetRow, unit: TableUnit, plain: boolean, slope: Budget["slope"]): string[] {
  const own = ownUnit(row, unit, slope);
  return [
    row.source,
    ...(plain ? [] : [twoDigits(row.standardUncertainty, own), sensitivityText(row, unit, slope)]),
    twoDigits(row.contribution, { ...unit, symbol: "" }),
    shareText(row.share),
    degreesText(row.degreesOfFreedom),
  ];
}

function sensitivityText(row: BudgetRow, unit: TableUnit, slope: Budget["slope"]): string {
  const own = ownUnit(row, unit, slope);
  const value = (Number(row.sensitivity.valueOf()) * own.size) / unit.size;
  return `${formatNumber(value, 3)} ${perUnit(unit, own)}`.trim();
}

function ownUnit(row: BudgetRow, unit: TableUnit, slope: Budget["slope"]): TableUnit {
  return slope === true ? unit : uncertaintyUnit(row.standardUncertainty);
}

function shareText(share: number): string {
  return share > 0 && share < 0.0005 ? "under 0.1 %" : `${formatFixed(100 * share, 1)} %`;
}

/** Degrees of freedom as read: "9", "16.7", "∞". */
export function degreesText(degreesOfFreedom: number): string {
  return degreesOfFreedom === Number.POSITIVE_INFINITY ? "∞" : formatNumber(degreesOfFreedom, 3);
}
