/** Where a cell ends, and what it says. */
export interface ScannedCell {
  /** The place of the delimiter or line end behind the cell, or the end of the text. */
  readonly end: number;
  /** Without its quotes and the spaces round them; line ends inside it are \n. */
  readonly value: string;
  /** A quote was opened and the text ended before it was closed. */
  readonly open: boolean;
}

/**
 * Reads one cell, by the rules of the table reader: spaces before a cell count for nothing; a quote at its
 * start holds delimiters and line ends together until it closes ("" is a quote inside); a quote anywhere else
 * is an inch mark; text behind a closing quote makes the quotes plain characters.
 *
 * @param text       the whole text
 * @param start      where the cell begins
 * @param delimiter  one character
 */
export function scanCell(text: string, start: number, delimiter: string): ScannedCell {
  const first = skipSpaces(text, start, delimiter);
  if (text[first] !== '"') return plainCell(text, start, delimiter);
  let content = "";
  for (let at = first + 1; at < text.length; at++) {
    const character = text[at]!;
    if (character !== '"') content += character;
    else if (text[at + 1] === '"') {
      content += '"';
      at++;
    } else if (isEnd(text, at + 1, delimiter)) {
      return { end: at + 1, value: withPlainLineEnds(content), open: false };
    } else {
      const end = endOfPlain(text, at + 1, delimiter);
      // The reader's CSV parser lets a # close a quote as well.
      const written =
        text[at + 1] === "#" ? content + text.slice(at + 1, end) : `"${content}${text.slice(at, end)}`;
      const value = withPlainLineEnds(written);
      return { end, value, open: false };
    }
  }
  return { end: text.length, value: withPlainLineEnds(`"${content}`), open: true };
}

/** Reads one cell in which quotes mean nothing, as in a row whose quote is never closed. */
export function plainCell(text: string, start: number, delimiter: string): ScannedCell {
  const end = endOfPlain(text, start, delimiter);
  return { end, value: text.slice(start, end).trim(), open: false };
}

function endOfPlain(text: string, start: number, delimiter: string): number {
  let at = start;
  while (!isEnd(text, at, delimiter)) at++;
  return at;
}

function isEnd(text: string, at: number, delimiter: string): boolean {
  const character = text[at];
  return character === undefined || character === delimiter || character === "\n" || character === "\r";
}

function skipSpaces(text: string, start: number, delimiter: string): number {
  let at = start;
  while (!isEnd(text, at, delimiter) && text[at]!.trim() === "") at++;
  return at;
}

function withPlainLineEnds(text: string): string {
  return text.replace(/\r\n?/g, "\n");
}
