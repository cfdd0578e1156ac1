import type { TextBlock } from "../blocks.js";

/** Longer tables are cut to this many rows, with a sentence that says so: the rest stands in the file. */
export const mostRows = 500;

/** The sentence under a table that was cut; nothing where it was not. */
export function cutNote(count: number, file: string): TextBlock[] {
  if (count <= mostRows) return [];
  return [
    {
      type: "text",
      text: `The table shows the first ${mostRows} of ${count} rows; all of them were used, and stand in ${file}.`,
    },
  ];
}
