/** A stretch of two texts: lines both have, or what stands in each in place of the other. */
export interface TextStretch {
  readonly same: boolean;
  readonly mine: readonly string[];
  readonly theirs: readonly string[];
}

/** Beyond so many pairs of lines a middle part is shown whole instead of compared line by line. */
const mostPairs = 4_000_000;

/**
 * Compares two texts line by line, by their longest common list of lines.
 *
 * @param mine    one text
 * @param theirs  the other
 * @returns the stretches in order; those that differ hold the lines of both sides
 * @source D. S. Hirschberg, Communications of the ACM 18 (1975) 341 (the table of the classic method), from memory
 */
export function compareTexts(mine: string, theirs: string): readonly TextStretch[] {
  const [a, b] = [linesOf(mine), linesOf(theirs)];
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  let [endA, endB] = [a.length, b.length];
  while (endA > start && endB > start && a[endA - 1] === b[endB - 1]) {
    endA--;
    endB--;
  }
  const stretches: TextStretch[] = [];
  if (start > 0) stretches.push(stretch(true, a.slice(0, start), a.slice(0, start)));
  stretches.push(...middleStretches(a.slice(start, endA), b.slice(start, endB)));
  if (endA < a.length) stretches.push(stretch(true, a.slice(endA), a.slice(endA)));
  return stretches;
}

function middleStretches(a: readonly string[], b: readonly string[]): TextStretch[] {
  if (a.length === 0 && b.length === 0) return [];
  if (a.length * b.length > mostPairs) return [stretch(false, a, b)];
  const common = commonLengths(a, b);
  const width = b.length + 1;
  const stretches: TextStretch[] = [];
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const fromA = i;
    while (i < a.length && j < b.length && a[i] === b[j]) {
      i++;
      j++;
    }
    if (i > fromA) stretches.push(stretch(true, a.slice(fromA, i), a.slice(fromA, i)));
    const [oddA, oddB] = [i, j];
    while ((i < a.length || j < b.length) && !(i < a.length && j < b.length && a[i] === b[j])) {
      if (j >= b.length || (i < a.length && common[(i + 1) * width + j]! >= common[i * width + j + 1]!)) i++;
      else j++;
    }
    if (i > oddA || j > oddB) stretches.push(stretch(false, a.slice(oddA, i), b.slice(oddB, j)));
  }
  return stretches;
}

/** How many lines the rests of both texts have in common, from each pair of lines on. */
function commonLengths(a: readonly string[], b: readonly string[]): Uint32Array {
  const width = b.length + 1;
  const lengths = new Uint32Array((a.length + 1) * width);
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      lengths[i * width + j] =
        a[i] === b[j]
          ? lengths[(i + 1) * width + j + 1]! + 1
          : Math.max(lengths[(i + 1) * width + j]!, lengths[i * width + j + 1]!);
  return lengths;
}

function stretch(same: boolean, mine: readonly string[], theirs: readonly string[]): TextStretch {
  return Object.freeze({ same, mine, theirs });
}

function linesOf(text: string): readonly string[] {
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n?|\n/);
  if (lines.at(-1) === "") lines.pop();
  return lines;
}
