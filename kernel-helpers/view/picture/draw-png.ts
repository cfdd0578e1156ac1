import { join } from "node:path";
import type { Figure } from "../blocks.js";
import { drawSvg } from "./draw-svg.js";

/** The fonts lie beside the source, also in the installed package: three folders up is its root, from dist too. */
const fontFolder = join(__dirname, "..", "..", "..", "kernel-helpers", "view", "picture", "fonts");
const fontFiles = ["LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"].map((file) =>
  join(fontFolder, file),
);

/**
 * A static picture of a plotly figure as a PNG file, for viewers that show neither scripts nor SVG.
 * Its text is set in the fonts of this package alone, so that the bytes do not depend on the machine.
 *
 * @param figure see {@link drawSvg}
 * @param options.scale pixels of the picture for each of the layout, > 0 [-]; 2 suits fine screens and print
 * @returns the bytes of a PNG file
 * @throws RangeError  the scale is not a number above 0; see also {@link drawSvg}
 */
export async function drawPng(figure: Figure, options: { readonly scale: number }): Promise<Uint8Array> {
  return rasterize(await drawSvg(figure), options.scale);
}

/** Turns an SVG drawn by {@link drawSvg} into a PNG. */
export async function rasterize(svg: string, scale: number): Promise<Uint8Array> {
  if (!(scale > 0 && Number.isFinite(scale)))
    throw new RangeError(`drawPng: scale must be a number above 0, got ${scale}`);
  const { Resvg } = await import("@resvg/resvg-js");
  // The fonts have no diameter sign; without this it would be an empty box.
  const picture = new Resvg(svg.replaceAll("⌀", "Ø"), {
    fitTo: { mode: "zoom", value: scale },
    background: "#fff",
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: "Liberation Sans" },
  });
  return picture.render().asPng();
}
