import type { Quantity } from "../../quantity/index.js";
import { riceCdf } from "../../statistics/index.js";
import type { PermissibleUnbalance } from "./permissible-unbalance.js";
import type { MeasuredUnbalance } from "./unbalance-vector.js";

/** Whether an unbalance may stay. */
export interface UnbalanceVerdict {
  readonly kind: "unbalance verdict";
  readonly state: "within" | "beyond" | "cannot tell yet";
  readonly amount: MeasuredUnbalance["amount"];
  readonly permissible: Quantity<"mass unbalance">;
  readonly grade: number;
  /** Permissible less found; below 0 where it is beyond. */
  readonly margin: Quantity<"mass unbalance">;
  /** Chance that the true unbalance lies within the permissible [-]. */
  readonly chanceWithin: number;
}

/** A verdict is given only where its chance is at least this. */
const sure = 0.95;

/**
 * Whether a measured unbalance lies within what a grade permits.
 *
 * The true vector lies about the measured one with the stated uncertainty in both directions; the chance that it is
 * shorter than permitted is Rice's distribution.
 *
 * @param found  the unbalance with its standard uncertainty, > 0 [kg·m]
 * @param permissible  as `permissibleUnbalance` returns it
 * @returns "within" or "beyond" where its chance is 95 % or more, else "cannot tell yet"
 * @throws RangeError  the uncertainty is 0
 * @example
 * const angle = measured(degree(30), degree(5));
 * const found = { amount: measured(quantity(10, "ounceInch"), quantity(2, "ounceInch")), angle };
 * judgeUnbalance(found, permissibleUnbalance({ mass: pound(180), speed: rpm(110), grade: 16 })).state // "within"
 * @source S. O. Rice, 1945, see `riceCdf`
 */
export function judgeUnbalance(
  found: MeasuredUnbalance,
  permissible: PermissibleUnbalance,
): UnbalanceVerdict {
  const { amount } = found;
  if (!(amount.standardUncertainty.si > 0))
    throw new RangeError("judgeUnbalance: the unbalance needs a standard uncertainty above 0, got 0");
  const chanceWithin = riceCdf(permissible.amount.si, amount.value.si, amount.standardUncertainty.si);
  return Object.freeze({
    kind: "unbalance verdict",
    state: chanceWithin >= sure ? "within" : chanceWithin <= 1 - sure ? "beyond" : "cannot tell yet",
    amount,
    permissible: permissible.amount,
    grade: permissible.grade,
    margin: permissible.amount.minus(amount.value),
    chanceWithin,
  });
}
