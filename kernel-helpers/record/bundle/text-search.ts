/** Looks for texts that are not to be shared. */
export interface TextSearch {
  /** Whether one of them stands in a text, as whole words. */
  readonly standsIn: (text: string) => boolean;
  /** How many are too short to be looked for: they would be found everywhere [-]. */
  readonly tooShort: number;
}

/** Shorter texts are no words of their own [characters]. */
const shortest = 3;

/**
 * A search for any of the texts given, as whole words, whatever their capitals; also where the text is HTML that
 * writes some signs as entities.
 *
 * @example searchFor(["light rust", "AB"]).standsIn("Light rust at 4 in") // true
 * @example searchFor(["light rust", "AB"]).tooShort // 1
 */
export function searchFor(texts: readonly string[]): TextSearch {
  const all = [...new Set(texts.map((text) => text.trim().replace(/\s+/g, " ")))].filter(
    (text) => text !== "",
  );
  const long = all.filter((text) => text.length >= shortest);
  if (long.length === 0) return Object.freeze({ standsIn: (): boolean => false, tooShort: all.length });
  const words = long.map((text) => text.replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&").replaceAll(" ", "\\s+"));
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${words.join("|")})(?![\\p{L}\\p{N}])`, "iu");
  return Object.freeze({
    standsIn: (text: string) =>
      pattern.test(text) || (text.includes("&") && pattern.test(withoutEntities(text))),
    tooShort: all.length - long.length,
  });
}

const entities: Readonly<Record<string, string>> = {
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&#39;": "'",
  "&amp;": "&",
};

function withoutEntities(html: string): string {
  return html.replace(/&(?:lt|gt|quot|#39|amp);/g, (entity) => entities[entity]!);
}
