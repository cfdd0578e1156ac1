/**
 * The protocol counts characters, JavaScript counts UTF-16 units: an emoji is one there and two here.
 * Turns the protocol's position into JavaScript's.
 */
export function unitsFromCharacters(text: string, characters: number): number {
  return [...text].slice(0, characters).join("").length;
}

/** Turns JavaScript's position into the protocol's. */
export function charactersFromUnits(text: string, units: number): number {
  return [...text.slice(0, units)].length;
}
