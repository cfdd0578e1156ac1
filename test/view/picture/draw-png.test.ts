import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { drawPng, rasterize } from "../../../kernel-helpers/view/picture/draw-png.js";
import { heatFigure, typicalFigure, wordlessFigure } from "../typical-figure.js";

interface Pixels {
  readonly width: number;
  readonly height: number;
  at(x: number, y: number): readonly [number, number, number];
}

/** Reads a PNG back with a decoder that is not ours. */
function decode(png: Uint8Array): Pixels {
  const size = Buffer.from(png);
  const [width, height] = [size.readUInt32BE(16), size.readUInt32BE(20)];
  const href = `data:image/png;base64,${size.toString("base64")}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" href="${href}"/></svg>`;
  const { pixels } = new Resvg(svg).render();
  return {
    width,
    height,
    at: (x, y) =>
      [...pixels.subarray((y * width + x) * 4, (y * width + x) * 4 + 3)] as [number, number, number],
  };
}

function darkPixels(picture: Pixels, left: number, top: number, right: number, bottom: number): number {
  let count = 0;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) if (Math.max(...picture.at(x, y)) < 128) count++;
  }
  return count;
}

describe("drawPng(figure, { scale })", () => {
  it("gives a PNG file of the layout's size times the scale", async () => {
    const png = await drawPng(typicalFigure, { scale: 2 });
    expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    expect(decode(png)).toMatchObject({ width: 1440, height: 840 });
  });
  it("really sets the text: where the title stands there is ink, and none without it", async () => {
    const worded = decode(await drawPng(typicalFigure, { scale: 1 }));
    const wordless = decode(await drawPng(wordlessFigure, { scale: 1 }));
    const title = [70, 10, 300, 40] as const;
    expect(darkPixels(worded, ...title)).toBeGreaterThan(200);
    expect(darkPixels(wordless, ...title)).toBe(0);
  });
  it("paints the cells of a heat map in their colours", async () => {
    const picture = decode(await drawPng(heatFigure, { scale: 1 }));
    expect(picture.at(75, 100)).toEqual([255, 0, 0]);
    expect(picture.at(225, 100)).toEqual([0, 0, 255]);
  });
  it("gives the same bytes again", async () => {
    const first = await drawPng(heatFigure, { scale: 2 });
    expect(Buffer.compare(await drawPng(heatFigure, { scale: 2 }), first)).toBe(0);
  });
  it("refuses a scale that is not above 0", async () => {
    await expect(drawPng(heatFigure, { scale: 0 })).rejects.toThrow(/drawPng: scale .* got 0/);
    await expect(drawPng(heatFigure, { scale: Number.NaN })).rejects.toThrow(RangeError);
  });
});

describe("rasterize(svg, scale)", () => {
  const text = (letter: string): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="60" height="30"><text x="5" y="22" font-family="Arial" font-size="20">${letter}</text></svg>`;

  it("shows a diameter sign, which the fonts lack, as the letter like it", async () => {
    const [sign, letter] = [await rasterize(text("⌀"), 1), await rasterize(text("Ø"), 1)];
    expect(Buffer.compare(sign, letter)).toBe(0);
    expect(Buffer.compare(await rasterize(text("□"), 1), letter)).not.toBe(0);
  });
  it("sets bold text in the bold face", async () => {
    const bold = text("Ø").replace("<text", `<text font-weight="bold"`);
    expect(Buffer.compare(await rasterize(bold, 1), await rasterize(text("Ø"), 1))).not.toBe(0);
  });
});
