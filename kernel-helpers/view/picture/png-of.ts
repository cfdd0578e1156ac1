import { NotRasterized, rasterize } from "./rasterize.js";

/** An SVG as the bytes of a PNG file; undefined where it cannot be turned into pixels. */
export async function pngOf(svg: string, scale: number): Promise<Uint8Array | undefined> {
  try {
    return await rasterize(svg, scale);
  } catch (error) {
    if (error instanceof NotRasterized) return undefined;
    throw error;
  }
}
