/** A value with more parts than this is not searched to its end. */
const mostParts = 50_000;

/**
 * The sources named in a value: every text that stands under `source` or `sources`, at any depth, each once and in
 * order. Results that rest on a handbook carry the book or standard of each constant under that name.
 *
 * @example sourcesIn([{ name: "Morse 3", source: "ISO 296:1991" }]) // ["ISO 296:1991"]
 */
export function sourcesIn(value: unknown): readonly string[] {
  const found = new Set<string>();
  const seen = new Set<object>();
  const waiting: { readonly value: unknown; readonly isSource: boolean }[] = [{ value, isSource: false }];
  for (let next = waiting.pop(); next !== undefined && seen.size < mostParts; next = waiting.pop()) {
    if (typeof next.value === "string" && next.isSource && next.value.trim() !== "") found.add(next.value);
    if (typeof next.value !== "object" || next.value === null || seen.has(next.value)) continue;
    seen.add(next.value);
    const inList = Array.isArray(next.value);
    for (const [name, inner] of Object.entries(next.value))
      waiting.push({
        value: inner,
        isSource: inList ? next.isSource : name === "source" || name === "sources",
      });
  }
  return Object.freeze([...found].sort());
}
