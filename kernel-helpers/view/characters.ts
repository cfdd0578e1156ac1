/** Text on one line: breaks become spaces, and control characters are shown as � and not obeyed by a terminal. */
export function plainLine(text: string): string {
  return text.replace(/\s*[\r\n\u2028\u2029]+\s*/g, " ").replace(/\p{Cc}/gu, "\ufffd");
}

/** Number of characters as a reader counts them: an accent that combines is part of its letter. */
export function widthInCharacters(text: string): number {
  return [...text.replace(/\p{Mn}/gu, "")].length;
}

/** The widest of some texts, counted in characters; 0 for none. */
export function widest(texts: Iterable<string>): number {
  let most = 0;
  for (const text of texts) most = Math.max(most, widthInCharacters(text));
  return most;
}

/** Text filled up with spaces to a width, on the side where it does not stand. */
export function pad(text: string, width: number, align: "left" | "right"): string {
  const space = " ".repeat(Math.max(0, width - widthInCharacters(text)));
  return align === "right" ? space + text : text + space;
}
