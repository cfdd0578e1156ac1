import { plainLine, widthInCharacters } from "./characters.js";

/** Characters in a line of plain text, as a terminal beside other windows shows them. */
export const lineLength = 96;

/** Breaks text between words into lines of at most `length` characters; a longer word stands on its own line. */
export function wrapText(text: string, length: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of plainLine(text).split(/ +/)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && widthInCharacters(longer) > length) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
