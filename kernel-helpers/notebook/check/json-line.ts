/**
 * The line of a JSON text on which an entry stands, given the names that lead to it from the outermost object; 0 where
 * it is not found. The text must be valid JSON.
 *
 * @example jsonLine('{\n  "a": {\n    "b": 1\n  }\n}', ["a", "b"]) // 3
 */
export function jsonLine(text: string, path: readonly string[]): number {
  let at = 0;
  const tokens = [...text.matchAll(/"(?:[^"\\]|\\.)*"(\s*:)?|[[\]{}]/g)];
  let depth = 0;
  let wanted = 0;
  for (const token of tokens) {
    const [sign] = token;
    if (/^[{[]/.test(sign)) depth += 1;
    else if (/^[}\]]/.test(sign)) {
      depth -= 1;
      if (depth < wanted) return 0; // the entry's object ended without it
    } else if (token[1] !== undefined && depth === wanted + 1) {
      const name: string = JSON.parse(sign.slice(0, sign.lastIndexOf('"') + 1));
      if (name !== path[wanted]) continue;
      at = token.index;
      wanted += 1;
      if (wanted === path.length) return text.slice(0, at).split("\n").length;
    }
  }
  return 0;
}
