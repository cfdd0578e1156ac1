import { describe, expect, it } from "vitest";
import { loadResvg } from "../../../kernel-helpers/view/picture/load-resvg.js";
import { NotRasterized, rasterize } from "../../../kernel-helpers/view/picture/rasterize.js";

const document = (content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60" height="30"><clipPath id="c"><path d="M0,0H60V30H0Z"/></clipPath>${content}</svg>`;
const text = (letter: string): string =>
  document(`<text x="5" y="22" font-family="Arial" font-size="20">${letter}</text>`);

/** All that the group holds lies off the canvas: resvg stops in the middle of its work. */
const offCanvas = [
  document(`<g clip-path="url(#c)"><path d="M0,-300L50,-300" stroke="#000"/></g>`),
  document(`<g clip-path="url(#c)"><path d="M500,0L500,90" stroke="#000"/></g>`),
  document(`<g opacity="0.5"><path d="M0,-30000L50,-30000.5z" stroke="#000"/></g>`),
];

describe("rasterize(svg, scale)", () => {
  it("shows a diameter sign, which the fonts lack, as the letter like it", async () => {
    const [sign, letter] = [await rasterize(text("⌀"), 1), await rasterize(text("Ø"), 1)];
    expect(Buffer.compare(sign, letter)).toBe(0);
    expect(Buffer.compare(await rasterize(text("□"), 1), letter)).not.toBe(0);
  });
  it("sets bold text in the bold face", async () => {
    const bold = text("Ø").replace("<text", `<text font-weight="bold"`);
    expect(Buffer.compare(await rasterize(bold, 1), await rasterize(text("Ø"), 1))).not.toBe(0);
  });
  it.each(offCanvas)(
    "refuses what resvg stops at, and draws the next picture all the same: %s",
    async (svg) => {
      const before = await rasterize(text("Ø"), 1);
      await expect(rasterize(svg, 1)).rejects.toThrow(NotRasterized);
      expect(Buffer.compare(await rasterize(text("Ø"), 1), before)).toBe(0);
    },
  );
  it("draws the next picture on a new instance, for the old one's memory may be out of order", async () => {
    const old = await loadResvg();
    expect(await loadResvg()).toBe(old);
    await expect(rasterize(offCanvas[0]!, 1)).rejects.toThrow(/drawPng: resvg cannot .*\(unreachable\)/);
    expect(await loadResvg()).not.toBe(old);
  });
  it("refuses text that is no SVG, with resvg's reason", async () => {
    await expect(rasterize("<svg", 1)).rejects.toThrow(/drawPng: resvg cannot .*SVG data parsing failed/);
  });
});
