import type { Figure } from "../blocks.js";
import { drawSvg } from "./draw-svg.js";
import { rasterize } from "./rasterize.js";

/**
 * A static picture of a plotly figure as a PNG file, for viewers that show neither scripts nor SVG.
 * Its text is set in the fonts of this package alone, so that the bytes do not depend on the machine.
 *
 * @param figure see {@link drawSvg}
 * @param options.scale pixels of the picture for each of the layout, > 0 [-]; 2 suits fine screens and print
 * @returns the bytes of a PNG file
 * @throws RangeError  the scale is not a number above 0; see also {@link drawSvg}
 * @throws NotRasterized  the drawing cannot be turned into pixels, see {@link rasterize}
 */
export async function drawPng(figure: Figure, options: { readonly scale: number }): Promise<Uint8Array> {
  return rasterize(await drawSvg(figure), options.scale);
}
