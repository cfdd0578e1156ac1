/**
 * A picture in which every style that several of its parts share is said once, in a style sheet of its own; it looks the
 * same, for a class outdoes attributes as a style does.
 *
 * Valid when: attributes stand in single quotes, and the picture holds neither classes nor a style sheet.
 */
export function stylesOnce(svg: string): string {
  const uses = new Map<string, number>();
  for (const [, style] of svg.matchAll(styleIn)) uses.set(style!, (uses.get(style!) ?? 0) + 1);
  const shared = [...uses].filter(([style, count]) => isWorthIt(style.length, count)).map(([style]) => style);
  if (shared.length === 0) return svg;
  const names = new Map(shared.map((style, index) => [style, `s${index.toString(36)}`]));
  const sheet = shared.map((style) => `.${names.get(style)}{${style}}`).join("");
  return svg
    .replace(/<[A-Za-z][^>]*>/g, (tag) =>
      tag.replace(styleIn, (said, style: string) =>
        names.has(style) ? ` class='${names.get(style)}'` : said,
      ),
    )
    .replace(/<svg [^>]*>/, (tag) => `${tag}<style>${sheet}</style>`);
}

/** A style may hold no brace, nor an entity, that would mean something else in a sheet. */
const styleIn = / style='([^'{}&<]+)'/g;

/** A class costs its name at every use, and once more in the sheet. */
function isWorthIt(length: number, count: number): boolean {
  return length * (count - 1) > 2 * count + 6;
}
