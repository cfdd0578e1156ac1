/** A count with its word: "1 reading", "12 readings". */
export function countText(count: number, one: string, many: string = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** A list in a sentence: "a", "a and b", "a, b and c"; past `most` the rest is counted. */
export function listText(items: readonly string[], most: number = 6): string {
  if (items.length > most) return `${items.slice(0, most).join(", ")} and ${items.length - most} more`;
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}
