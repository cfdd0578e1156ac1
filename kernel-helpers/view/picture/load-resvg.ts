import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";

/** As much of resvg, compiled to WebAssembly, as turning an SVG into a PNG needs. */
export interface Resvg {
  initWasm(module: unknown): Promise<void>;
  readonly Resvg: new (
    svg: string,
    options: {
      readonly fitTo: { readonly mode: "zoom"; readonly value: number };
      readonly background: string;
      readonly font: { readonly fontBuffers: readonly Uint8Array[]; readonly defaultFontFamily: string };
    },
  ) => {
    render(): {
      readonly width: number;
      readonly height: number;
      /** Red, green, blue, opacity of each pixel, row by row. */
      readonly pixels: Uint8Array;
      free(): void;
    };
    free(): void;
  };
}

/** Node's own, which its types leave out. */
declare const WebAssembly: { compile(bytes: Uint8Array): Promise<unknown> };

let compiled: Promise<unknown> | undefined;
let resvg: Promise<Resvg> | undefined;

/** resvg with a memory of its own, loaded at the first call (see picture.bench.ts) and then kept. */
export function loadResvg(): Promise<Resvg> {
  resvg ??= startResvg();
  return resvg;
}

/**
 * Lets go of the resvg at hand: the next call of {@link loadResvg} starts a new one. To be done after it failed,
 * for WebAssembly that stopped in the middle of its work leaves its memory as it happens to be.
 */
export function forgetResvg(): void {
  resvg = undefined;
}

async function startResvg(): Promise<Resvg> {
  const require = createRequire(__filename);
  compiled ??= readFile(require.resolve("@resvg/resvg-wasm/index_bg.wasm")).then(WebAssembly.compile);
  // The package keeps one instance for good in a variable of its module: a new instance needs a new module.
  const path = require.resolve("@resvg/resvg-wasm");
  delete require.cache[path];
  const fresh = require(path) as Resvg;
  await fresh.initWasm(await compiled);
  return fresh;
}
