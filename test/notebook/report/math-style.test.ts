import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { mathStyle } from "../../../kernel-helpers/notebook/report/math-style.js";
import { renderFormula } from "../../../kernel-helpers/notebook/report/render-markdown.js";
import { hasBrowser, inBrowser } from "./browser.js";

/** The whole sheet with all its fonts inside, as published. */
function wholeSheet(): string {
  const file = createRequire(__filename).resolve("katex/dist/katex.min.css");
  return readFileSync(file, "utf8").replace(/url\((fonts\/[^)]+\.woff2)\)/g, (_, font: string) => {
    return `url(data:font/woff2;base64,${readFileSync(join(dirname(file), font)).toString("base64")})`;
  });
}

const facesIn = (style: string): string[] =>
  [
    ...style.matchAll(
      /@font-face\{[^}]*font-family:"?(\w+)"?;font-style:(\w+);font-weight:(\w+);src:url\(data:/g,
    ),
  ].map(([, ...face]) => face.join(" "));

const formulas = [
  String.raw`u = \frac{a}{\sqrt{3}}`,
  String.raw`p = \sum_{i=1}^{n} \left( \int_0^1 x_i\,dx \right)`,
  String.raw`\mathbf{M}\,\boldsymbol{\theta} = \mathbb{R}`,
  String.raw`\mathcal{L} + \mathscr{S} + \mathfrak{g}`,
  String.raw`\textbf{torque} \textit{by hand} \texttt{code} \mathsf{s}`,
  String.raw`\text{bold \textbf{and \textit{slanted}}}`,
  String.raw`\begin{pmatrix} a & b \\ c & d \\ e & f \\ g & h \end{pmatrix} \Bigg\{ x`,
];

describe("mathStyle(html)", () => {
  it("brings upright and slanted letters alone for a plain formula", () => {
    expect(facesIn(mathStyle(renderFormula("F = m a"))).sort()).toEqual([
      "KaTeX_Main normal 400",
      "KaTeX_Math italic 400",
    ]);
  });

  // The browser says which of all fonts it took for a formula: each of them must be among those brought.
  it.runIf(hasBrowser).each([formulas[1]!, formulas.join(" ")])(
    "brings every font that a browser takes for %s",
    async (formula) => {
      const html = renderFormula(formula);
      await inBrowser(`<!DOCTYPE html><style>${wholeSheet()}</style>${html}`, async (page) => {
        const taken = (await page.evaluate(
          `document.fonts.ready.then(() => [...document.fonts].filter((font) => font.status === "loaded")
            .map((font) => [font.family.replaceAll('"', ""), font.style, font.weight].join(" ")).join())`,
        )) as string;
        const faces = taken.split(",").map((face) =>
          face
            .replace(" normal normal", " normal 400")
            .replace(/ bold$/, " 700")
            .replace(/ normal$/, " 400"),
        );
        expect(faces).toContain("KaTeX_Math italic 400"); // the browser took fonts at all
        expect(facesIn(mathStyle(html))).toEqual(expect.arrayContaining(faces));
      });
    },
  );

  it("keeps all rules of the sheet but those for fonts", () => {
    const bare = (style: string): string => style.replace(/@font-face\{[^}]*\}/g, "");
    expect(bare(mathStyle(""))).toBe(bare(wholeSheet()));
    expect(facesIn(mathStyle(""))).toEqual([]);
  });
});
