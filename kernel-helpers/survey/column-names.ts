// What the reader knows of a column by its name alone. Names are in lower case.

const words = new Set([
  "remark",
  "remarks",
  "comment",
  "comments",
  "note",
  "notes",
  "instrument",
  "by",
  "date",
  "time",
]);

/** A column of words even without brackets: remark, comment, note, instrument, by, date, time. */
export function isWordsName(name: string): boolean {
  return words.has(name);
}

/** A place along the shaft. */
export function isPlaceName(name: string): boolean {
  return name === "station";
}

/** A place round the shaft. */
export function isAngleName(name: string): boolean {
  return name === "angle";
}

/** The number of a repeated reading. */
export function isRepeatName(name: string): boolean {
  return name === "repeat";
}

/** A diameter, which is never zero, and of one order of magnitude over a part. */
export function isDiameterName(name: string): boolean {
  return /\b(diameter|dia|bore|od|id)\b/.test(name);
}
