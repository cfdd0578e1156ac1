import { describe, expect, it } from "vitest";
import { viewStyle } from "../../kernel-helpers/view/style.js";

/** Relative luminance of "#rrggbb". Source: WCAG 2.1, definitions of relative luminance and contrast ratio. */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const accents = (css: string): readonly string[] =>
  [...css.matchAll(/--(?:bad|warn|good):(#\w{6})/g)].map((match) => match[1]!);

describe("viewStyle", () => {
  it("is smaller than 3.4 kB, for it goes into every output; a tenth of it serves tables on a telephone", () => {
    expect(Buffer.byteLength(viewStyle)).toBeLessThan(3400);
  });
  it("touches nothing outside .jb", () => {
    const outermost: string[] = [];
    let depth = 0;
    let selector = "";
    for (const character of viewStyle) {
      if (character === "{" && depth++ === 0) outermost.push(selector.trim());
      if (character === "}") depth--;
      selector = depth === 0 && character !== "}" ? selector + character : "";
    }
    expect(depth).toBe(0);
    expect(outermost).toEqual([".jb:not(#jb)", "[data-jp-theme-light=false] .jb:not(#jb)"]);
  });
  it("never sets the colour of text, but for print: it takes the page's", () => {
    const colours = [...viewStyle.matchAll(/[{;]color:([^;}]+)/g)].map((match) => match[1]);
    expect(new Set(colours)).toEqual(new Set(["inherit", "#000"]));
    expect(viewStyle).toMatch(/@media print\{color:#000;/);
  });
  // WCAG 2.1, 1.4.11: parts that carry meaning need a contrast of 3 : 1.
  it("has accents that stand out on light paper and on dark", () => {
    const [ordinary, dark] = viewStyle.split("[data-jp-theme-light=false]") as [string, string];
    expect(accents(ordinary)).toHaveLength(3);
    expect(accents(dark)).toHaveLength(3);
    for (const paper of ["#ffffff", "#15181c"])
      for (const accent of accents(ordinary)) expect(contrast(accent, paper)).toBeGreaterThan(3);
    for (const accent of accents(dark)) expect(contrast(accent, "#111111")).toBeGreaterThan(4.5);
  });
});
