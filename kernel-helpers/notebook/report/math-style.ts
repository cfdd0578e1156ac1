import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

/**
 * KaTeX's style sheet with those of its fonts inside that a page's formulas use (two or three of twenty, as a rule: all
 * would be 350 kB). Of each font the woff2 form is kept, which every browser of the last years reads.
 *
 * @param html  the page's content
 */
export function mathStyle(html: string): string {
  const file = createRequire(__filename).resolve("katex/dist/katex.min.css");
  const sheet = readFileSync(file, "utf8");
  const wanted = fontsWanted(sheet, html);
  return sheet
    .replace(fontFace, (face) => (wanted.some((font) => isFor(face, font)) ? face : ""))
    .replace(/src:url\(([^)]+\.woff2)\) format\("woff2"\)[^;}]*/g, (_match, font: string) => {
      const base64 = readFileSync(join(dirname(file), font)).toString("base64");
      return `src:url(data:font/woff2;base64,${base64}) format("woff2")`;
    });
}

const fontFace = /@font-face\{[^}]*\}/g;

/** A font as a rule of the sheet asks for it; undefined: whichever. */
interface Font {
  readonly family: string;
  readonly style: string | undefined;
  readonly weight: string | undefined;
}

/** The fonts that rules of the sheet give to something in the page. */
function fontsWanted(sheet: string, html: string): readonly Font[] {
  const classes = new Set([...html.matchAll(/class="([^"]*)"/g)].flatMap(([, names]) => names!.split(/\s+/)));
  const meets = (selector: string): boolean =>
    [...selector.matchAll(/\.([\w-]+)/g)].every(([, name]) => classes.has(name!));
  const rules = [...sheet.replace(fontFace, "").matchAll(/([^{}]+)\{([^{}]*)\}/g)]
    .filter(([, selectors]) => selectors!.split(",").some(meets))
    .map(([, , body]) => ({
      family: /\bfont(?:-family)?:[^;]*?(KaTeX_\w+)/.exec(body!)?.[1],
      style: /\bfont-style:(\w+)/.exec(body!)?.[1],
      weight: /\bfont-weight:(\w+)/.exec(body!)?.[1],
    }));
  const families = [...new Set(rules.flatMap(({ family }) => family ?? []))];
  return rules.flatMap(({ family, style, weight }) => {
    if (family !== undefined) return [{ family, style: style ?? "normal", weight: weight ?? "400" }];
    // Bold or slanted alone: of whichever family stands round it.
    const changes = style === "italic" || weight === "700";
    return changes ? families.map((around) => ({ family: around, style, weight })) : [];
  });
}

function isFor(face: string, { family, style, weight }: Font): boolean {
  return (
    new RegExp(`font-family:"?${family}"?;`).test(face) &&
    (style === undefined || face.includes(`font-style:${style};`)) &&
    (weight === undefined || face.includes(`font-weight:${weight};`))
  );
}
