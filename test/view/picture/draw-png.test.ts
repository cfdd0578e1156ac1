import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { drawPng } from "../../../kernel-helpers/view/picture/draw-png.js";
import { heatFigure, typicalFigure, wordlessFigure } from "../typical-figure.js";

interface Pixels {
  readonly width: number;
  readonly height: number;
  at(x: number, y: number): readonly [number, number, number];
}

/**
 * Reads back a PNG of 8-bit colour with opacity, not interlaced.
 * @source PNG (Portable Network Graphics) Specification, W3C, clause 9.2 (filter types), 9.4 (Paeth)
 */
function decode(png: Uint8Array): Pixels {
  const file = Buffer.from(png);
  const [width, height] = [file.readUInt32BE(16), file.readUInt32BE(20)];
  expect([...file.subarray(24, 29)]).toEqual([8, 6, 0, 0, 0]);
  const packed: Buffer[] = [];
  for (let at = 8; at < file.length; at += file.readUInt32BE(at) + 12) {
    if (file.toString("latin1", at + 4, at + 8) === "IDAT")
      packed.push(file.subarray(at + 8, at + 8 + file.readUInt32BE(at)));
  }
  const rows = inflateSync(Buffer.concat(packed));
  const length = width * 4;
  const pixels = new Uint8Array(height * length);
  for (let y = 0; y < height; y++) {
    const filter = rows[y * (length + 1)]!;
    for (let x = 0; x < length; x++) {
      const before = x < 4 ? 0 : pixels[y * length + x - 4]!;
      const above = y === 0 ? 0 : pixels[(y - 1) * length + x]!;
      const corner = x < 4 || y === 0 ? 0 : pixels[(y - 1) * length + x - 4]!;
      const guess = [0, before, above, (before + above) >> 1, paeth(before, above, corner)][filter]!;
      pixels[y * length + x] = rows[y * (length + 1) + 1 + x]! + guess;
    }
  }
  return {
    width,
    height,
    at: (x, y) =>
      [...pixels.subarray(y * length + x * 4, y * length + x * 4 + 3)] as [number, number, number],
  };
}

function paeth(before: number, above: number, corner: number): number {
  const [a, b, c] = [before, above, corner].map((near) => Math.abs(before + above - corner - near));
  return a! <= b! && a! <= c! ? before : b! <= c! ? above : corner;
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
