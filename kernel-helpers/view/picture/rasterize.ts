import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { encodePng } from "./encode-png.js";
import { forgetResvg, loadResvg } from "./load-resvg.js";

/** The fonts lie beside the source, also in the installed package: three folders up is its root, from dist too. */
const fontFolder = join(__dirname, "..", "..", "..", "kernel-helpers", "view", "picture", "fonts");
const fontFiles = ["LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"];

let fonts: Promise<readonly Uint8Array[]> | undefined;

/** An SVG that cannot be turned into pixels; the picture itself may still be good. */
export class NotRasterized extends Error {
  override readonly name: string = "NotRasterized";
}

/**
 * Turns an SVG drawn by drawSvg into a PNG. Its text is set in the fonts of this package alone, so that the
 * bytes do not depend on the machine.
 *
 * @param svg an SVG document
 * @param scale pixels of the picture for each of the drawing, > 0 [-]
 * @returns the bytes of a PNG file
 * @throws RangeError  the scale is not a number above 0
 * @throws NotRasterized  resvg cannot draw it: no SVG, too large, or a group with all it holds off the canvas
 */
export async function rasterize(svg: string, scale: number): Promise<Uint8Array> {
  if (!(scale > 0 && Number.isFinite(scale)))
    throw new RangeError(`drawPng: scale must be a number above 0, got ${scale}`);
  fonts ??= Promise.all(fontFiles.map((file) => readFile(join(fontFolder, file))));
  const font = { fontBuffers: await fonts, defaultFontFamily: "Liberation Sans" };
  const { Resvg } = await loadResvg();
  try {
    // The fonts have no diameter sign; without this it would be an empty box.
    const picture = new Resvg(svg.replaceAll("⌀", "Ø"), {
      fitTo: { mode: "zoom", value: scale },
      background: "#fff",
      font,
    });
    const image = picture.render();
    // resvg's own way to pack takes twice as long, for half as much again.
    const png = encodePng(image.width, image.height, image.pixels);
    image.free();
    picture.free();
    return png;
  } catch (cause) {
    forgetResvg();
    throw new NotRasterized(`drawPng: resvg cannot turn this drawing into pixels (${reason(cause)})`, {
      cause,
    });
  }
}

function reason(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}
