import { unitButForCapitals, unitNamed, unitSpelled, unitsOf, withArticle } from "../../quantity/index.js";
import { nearestWord } from "../../survey/nearest-word.js";

/** So many units are named where none is likely [-]. */
const fewUnits = 6;

/**
 * What is said where a unit of one kind was expected and something else is written there: the unit that is likely meant, or
 * what the one written measures.
 *
 * @param kind what the unit must measure
 * @param written what stands there, without quotes
 * @example unitWords("length", "lbf") // "a unit of length was expected here, but lbf is a unit of force"
 * @example unitWords("length", "in")  // "there is no unit \"in\"; did you mean \"inch\"?"
 */
export function unitWords(kind: string, written: string): string {
  const known = unitSpelled(written) ?? unitButForCapitals(written);
  const measures = known === undefined ? undefined : unitNamed(known).kind;
  if (measures !== undefined && measures !== kind)
    return `a unit of ${kind} was expected here, but ${written} is a unit of ${measures}`;
  const units = unitsOf(kind);
  const meant = known ?? nearestWord(written, units);
  if (meant !== undefined) return `there is no unit "${written}"; did you mean "${meant}"?`;
  const some = units.slice(0, fewUnits).map((unit) => `"${unit}"`);
  return `there is no unit "${written}"; ${withArticle(kind)} has ${some.join(", ")}${units.length > fewUnits ? " and others" : ""}`;
}
