import { encodePng } from "./encode-png.js";
import { textWidth } from "./text-width.js";

interface CanvasElement {
  width: number;
  height: number;
  getContext: (kind: string) => PixelContext | null;
  toDataURL: () => string;
}

interface ImageData {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** The few 2D operations with which plotly paints heat maps. */
interface PixelContext {
  fillStyle: string;
  fillRect(x: number, y: number, width: number, height: number): void;
  createImageData(width: number, height: number): ImageData;
  putImageData(image: ImageData, left: number, top: number): void;
  measureText(text: string): { readonly width: number };
}

/** Gives a canvas element pixels that can be painted and read out as a PNG. */
export function makePixelCanvas(canvas: CanvasElement): void {
  let pixels = new Uint8Array(0);
  const paintable = (): Uint8Array => {
    const size = canvas.width * canvas.height * 4;
    if (pixels.length !== size) pixels = new Uint8Array(size);
    return pixels;
  };
  const context: PixelContext = {
    fillStyle: "#000",
    fillRect(x, y, width, height) {
      const colour = readColour(context.fillStyle);
      const area = paintable();
      for (
        let row = Math.max(0, Math.round(y));
        row < Math.min(canvas.height, Math.round(y + height));
        row++
      ) {
        for (let at = Math.max(0, Math.round(x)); at < Math.min(canvas.width, Math.round(x + width)); at++)
          area.set(colour, (row * canvas.width + at) * 4);
      }
    },
    createImageData(width, height) {
      return { width, height, data: new Uint8ClampedArray(width * height * 4) };
    },
    putImageData(image, left, top) {
      const area = paintable();
      for (let row = 0; row < image.height; row++) {
        const line = image.data.subarray(row * image.width * 4, (row + 1) * image.width * 4);
        area.set(line, ((row + top) * canvas.width + left) * 4);
      }
    },
    measureText: (text) => ({ width: textWidth(text, 12, false) }),
  };
  canvas.getContext = (kind) => (kind === "2d" ? context : null);
  canvas.toDataURL = () => {
    const png = encodePng(canvas.width, canvas.height, paintable());
    return `data:image/png;base64,${png.toString("base64")}`;
  };
}

/** Reads "rgb(r, g, b)" and "rgba(r, g, b, a)", the only forms plotly paints with. */
function readColour(style: string): readonly [number, number, number, number] {
  const [red, green, blue, opacity = 1] = (style.match(/[\d.]+/g) ?? []).map(Number);
  if (!style.startsWith("rgb") || red === undefined || green === undefined || blue === undefined)
    throw new TypeError(`fillRect: a colour must be rgb(...) or rgba(...), got ${style}`);
  return [red, green, blue, Math.round(opacity * 255)];
}
