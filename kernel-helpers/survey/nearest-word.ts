/**
 * The word nearest to one that is not known, where it is near enough to have been meant: at most two
 * letters put in, left out or changed, and fewer than half of them; undefined where none is.
 *
 * @example nearestWord("temprature", ["temperature", "part"]) // "temperature"
 * @source V. I. Levenshtein, Binary codes capable of correcting deletions, insertions and reversals, Soviet
 * Physics Doklady 10 (1966) 707–710 (the distance; from memory)
 */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  let nearest: string | undefined;
  let least = Math.min(3, word.length / 2);
  for (const candidate of known) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (distance < least) [nearest, least] = [candidate, distance];
  }
  return nearest;
}

function editDistance(a: string, b: string): number {
  // Row i holds the distances of the first i letters of a from each beginning of b.
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}
