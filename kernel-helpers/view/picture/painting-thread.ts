import { parentPort } from "node:worker_threads";
import type { Figure } from "../blocks.js";
import { drawSvg } from "./draw-svg.js";
import { loadEngine } from "./engine.js";
import { pngOf } from "./png-of.js";

// The program of the thread in which pictures are drawn, started by thread-painter.ts.

/** A picture to draw. */
export type PictureRequest = { readonly id: number } & (
  | { readonly form: "svg"; readonly figure: Figure }
  | { readonly form: "png"; readonly svg: string; readonly scale: number }
);

/** The picture drawn, or why there is none. */
export interface PictureReply {
  readonly id: number;
  readonly picture?: string | Uint8Array;
  readonly fault?: { readonly name: string; readonly message: string };
}

const port = parentPort!;

async function draw(request: PictureRequest): Promise<string | Uint8Array | undefined> {
  return request.form === "svg" ? drawSvg(request.figure) : pngOf(request.svg, request.scale);
}

port.on("message", (request: PictureRequest) => {
  draw(request).then(
    (picture) => port.postMessage({ id: request.id, picture } satisfies PictureReply),
    (thrown: unknown) => {
      const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
      port.postMessage({ id: request.id, fault: { name, message } } satisfies PictureReply);
    },
  );
});

// Loaded before the first request comes: whoever starts the thread means to draw.
loadEngine().catch(() => undefined); // the first drawing says what is wrong with it
