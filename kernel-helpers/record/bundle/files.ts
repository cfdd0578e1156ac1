/** Files by their paths with forward slashes, e.g. "tables/shaft-survey.csv". */
export type Files = ReadonlyMap<string, Uint8Array>;

/** Paths in the order in which a bundle lists them: by their characters, whatever the machine's language. */
export function sortedPaths(files: Files): readonly string[] {
  return [...files.keys()].sort();
}

/** Text as a file holds it. */
export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** A file as text in UTF-8; signs that are none become a question mark in a box. */
export function textOf(bytes: Uint8Array): string {
  return new TextDecoder("utf-8").decode(bytes);
}
