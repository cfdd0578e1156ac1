import { isPlaceName, isWordsName } from "../../../survey/column-names.js";

/** What the head of a column shows, and how its cells are typed. */
export interface ColumnLook {
  /** The whole header as written. */
  readonly header: string;
  /** Without angle and unit: "diameter". */
  readonly name: string;
  /** "90 deg" where the column was read at one angle, else "". */
  readonly angle: string;
  /** "in"; "" for words and plain numbers, and where none is written. */
  readonly unit: string;
  /** Words need letters; everything else a keypad with a decimal point. */
  readonly holds: "words" | "numbers";
  /** The station: it stays in sight when the table is pushed sideways. */
  readonly isStation: boolean;
}

/**
 * Reads a header for the eye. What is wrong with it is the table reader's business.
 *
 * @example columnLook("diameter @ 90 deg [in]") // { name: "diameter", angle: "90 deg", unit: "in", holds: "numbers", … }
 */
export function columnLook(header: string): ColumnLook {
  const text = header.trim().replace(/\s+/g, " ");
  const [, label, spelling] = /^([^[\]]*)\[([^[\]]*)\]$/.exec(text) ?? [undefined, text, undefined];
  const [name, ...angles] = label!.split("@").map((part) => part.trim());
  const unit = spelling?.trim() ?? "";
  const words = unit === "text" || (spelling === undefined && isWordsName(name!.toLowerCase()));
  return Object.freeze({
    header: text,
    name: name!,
    angle: angles.join(" @ "),
    unit: unit === "text" || unit === "-" ? "" : unit,
    holds: words ? "words" : "numbers",
    isStation: isPlaceName(name!.toLowerCase()),
  });
}
