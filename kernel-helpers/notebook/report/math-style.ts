import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

let style: string | undefined;

/**
 * KaTeX's style sheet with its fonts inside (about 370 kB), for pages that hold mathematics.
 * Of each font the woff2 form is kept, which every browser of the last years reads.
 */
export function mathStyle(): string {
  style ??= withFontsInside(createRequire(__filename).resolve("katex/dist/katex.min.css"));
  return style;
}

function withFontsInside(file: string): string {
  const sheet = readFileSync(file, "utf8");
  return sheet.replace(/src:url\(([^)]+\.woff2)\) format\("woff2"\)[^;}]*/g, (_match, font: string) => {
    const base64 = readFileSync(join(dirname(file), font)).toString("base64");
    return `src:url(data:font/woff2;base64,${base64}) format("woff2")`;
  });
}
