import type { Figure } from "../blocks.js";

/** Draws static pictures of figures: here and now, or elsewhere and each once. */
export interface Painter {
  /** The picture as an SVG document; see drawSvg for what cannot be drawn. */
  svg(figure: Figure): Promise<string>;
  /** That picture as the bytes of a PNG file; undefined where it cannot be turned into pixels, or nobody wants that. */
  png(figure: Figure, scale: number): Promise<Uint8Array | undefined>;
}

/** Draws in this thread, each figure once. The drawing engine is loaded only when there is something to draw. */
export class PainterHere implements Painter {
  readonly #drawn: WeakMap<Figure, Promise<string>> = new WeakMap();

  svg(figure: Figure): Promise<string> {
    const drawn = this.#drawn.get(figure) ?? drawNow(figure);
    this.#drawn.set(figure, drawn);
    return drawn;
  }

  async png(figure: Figure, scale: number): Promise<Uint8Array | undefined> {
    const svg = await this.svg(figure);
    const { pngOf } = await import("./png-of.js");
    return pngOf(svg, scale);
  }
}

async function drawNow(figure: Figure): Promise<string> {
  const { drawSvg } = await import("./draw-svg.js");
  return drawSvg(figure);
}
