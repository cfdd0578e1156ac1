import { lengthsOf, type Table, textOf } from "../../survey/index.js";
import type { StringGaps } from "./belt-alignment.js";

const places = ["first away", "first towards", "second towards", "second away"] as const;

/**
 * The four gaps of a string stretched past two pulleys, read from a table with the columns `at` and `gap`: `at` says
 * "first away", "first towards", "second towards" or "second away", each once; away from or towards the other pulley.
 *
 * @param table  four rows [text], [m]
 * @returns the gaps as `beltAlignment` takes them [m]
 * @throws RangeError  a place is missing, stands twice, is not one of the four, or has no gap
 * @example
 * const rows = ["first away,10", "first towards,10", "second towards,12", "second away,12"];
 * const bytes = new TextEncoder().encode(["at [text],gap [mm]", ...rows].join("\n"));
 * stringGaps(readTable(bytes, { name: "string", file: "string.csv" })).second[0].in("mm") // 12
 * @source the form of the table: ours
 */
export function stringGaps(table: Table): StringGaps {
  const [at, gaps] = [textOf(table, "at").map((text) => text.trim().toLowerCase()), lengthsOf(table, "gap")];
  at.forEach((text, row) => {
    if (!(places as readonly string[]).includes(text))
      throw new RangeError(
        `stringGaps: ${table.file} line ${table.lines[row]}: at must be one of ${places.join(", ")}, got "${text}"`,
      );
  });
  const [a, b, c, d] = places.map((place) => {
    const rows = at.flatMap((text, row) => (text === place ? [row] : []));
    const gap = rows.length === 1 ? gaps[rows[0]!] : undefined;
    if (gap === undefined)
      throw new RangeError(
        `stringGaps: ${table.file} needs the gap "${place}" once, got ${rows.length === 1 ? "no reading" : `${rows.length} rows`}`,
      );
    return gap;
  });
  return Object.freeze({ first: Object.freeze([a!, b!] as const), second: Object.freeze([c!, d!] as const) });
}
