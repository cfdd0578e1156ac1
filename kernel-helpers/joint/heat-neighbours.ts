import { heatCeiling } from "./heat-ceilings.js";
import type { HeatNeighbour } from "./heat-nut.js";

/**
 * Reads what is near a nut that is to be warmed, and what share of its rise reaches each: "paint 50 %; Babbitt 2 15 %".
 *
 * Valid when: each share is a judgement of somebody who looked at the machine; it is watched with a temperature stick.
 *
 * @param text  names as `heatCeiling` knows them, each with its share above 0 to 100 %, divided by a semicolon; "nothing"
 * where nothing is near [-]
 * @returns the neighbours for `heatNut`, in the order of the text
 * @throws SyntaxError  an entry has no share in %, or one that is not above 0 to 100, or is given twice
 * @throws RangeError   a name is not known; the message lists those that are
 * @example heatNeighbours("paint 50 %; Babbitt 2 15 %")[1].share // 0.15
 */
export function heatNeighbours(text: string): readonly HeatNeighbour[] {
  if (text.trim().toLowerCase() === "nothing") return Object.freeze([]);
  const neighbours = text.split(";").map((entry) => {
    const [, name = "", percent = ""] = /^\s*(\S.*?)\s+(\d+(?:\.\d+)?)\s*%\s*$/.exec(entry) ?? [];
    const share = Number(percent) / 100;
    if (!(share > 0 && share <= 1))
      throw new SyntaxError(
        `heatNeighbours: "${entry.trim()}" of "${text}": a name and its share of the nut's rise, above 0 to 100 %, were expected, e.g. paint 50 %; or "nothing" where nothing is near`,
      );
    heatCeiling(name);
    return Object.freeze({ name, share });
  });
  const names = neighbours.map(({ name }) => name.toLowerCase());
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined)
    throw new SyntaxError(`heatNeighbours: each name must be given once, got "${twice}" twice in "${text}"`);
  return Object.freeze(neighbours);
}
