import { runningFitByThumb } from "../../handbook/index.js";
import type { Length } from "../../quantity/index.js";

/**
 * What a journal would need, to end an error about a clearance of nothing: by the rule of thumb, or in words where the rule
 * does not reach.
 */
export function clearanceNeeded(journal: Length): string {
  const inches = journal.in("inch");
  if (!(inches >= 1 && inches <= 6)) return "; without room there is no film";
  const { low, high } = runningFitByThumb(journal);
  const [unit, symbol] =
    low.writtenIn === "thou" ? (["thou", "thou"] as const) : (["micrometre", "µm"] as const);
  const of = (length: Length): string => length.in(unit).toPrecision(2);
  return `; without room there is no film, and a journal of ${journal} is commonly given ${of(low)} to ${of(high)} ${symbol} of DIAMETRAL clearance (rule of thumb)`;
}
