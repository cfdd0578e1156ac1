import { readFileSync } from "node:fs";
import { compileFunction } from "node:vm";
import type { Window as HappyWindow } from "happy-dom";
import { plotlyFile } from "../plotly-file.js";
import { openDrawingWindow } from "./drawing-window.js";
import { createSeededMath } from "./seeded-math.js";

/** As much of plotly.js as drawing a static picture needs. */
export interface Plotly {
  toImage(
    figure: { readonly data: unknown; readonly layout: unknown; readonly config: unknown },
    options: { readonly format: "svg"; readonly width: number; readonly height: number },
  ): Promise<string>;
  setPlotConfig(config: { readonly logging: number }): void;
  readonly PlotSchema: { get(): { readonly traces: Readonly<Record<string, unknown>> } };
}

export interface Engine {
  readonly plotly: Plotly;
  /** The document plotly draws in. */
  readonly document: HappyWindow["document"];
  /** Chooses the random numbers of the next drawing. */
  seed(value: number): void;
}

let engine: Promise<Engine> | undefined;

/** plotly.js on a window without a screen, loaded at the first call (about 0.3 s) and then kept. */
export function loadEngine(): Promise<Engine> {
  engine ??= startEngine(plotlyFile());
  return engine;
}

/** Lets go of the engine at hand: the next call of {@link loadEngine} starts a new one. */
export function forgetEngine(): void {
  engine = undefined;
}

/** An engine of its own from a file of plotly.js. */
export async function startEngine(file: string): Promise<Engine> {
  const window = await openDrawingWindow();
  const { math, seed } = createSeededMath();
  const module = { exports: {} };
  const scope: Record<string, unknown> = {
    ...browserNames(window),
    module,
    exports: module.exports,
    Math: math,
  };
  const run = compileFunction(readFileSync(file, "utf8"), Object.keys(scope), { filename: file });
  run.apply(window, Object.values(scope));
  const plotly = module.exports as Plotly;
  plotly.setPlotConfig({ logging: 0 });
  return { plotly, document: window.document, seed };
}

/** The names plotly takes from a browser's global scope, given to it as parameters instead. */
function browserNames(window: HappyWindow): Record<string, unknown> {
  const { document, navigator, Element, HTMLElement, SVGElement, Node } = window;
  const { MutationObserver, DOMParser, XMLSerializer, Image } = window;
  return {
    window,
    self: window,
    document,
    navigator,
    Element,
    HTMLElement,
    SVGElement,
    Node,
    MutationObserver,
    DOMParser,
    XMLSerializer,
    Image,
    getComputedStyle: window.getComputedStyle.bind(window),
    requestAnimationFrame: (draw: () => void) => setTimeout(draw, 0),
    cancelAnimationFrame: clearTimeout,
  };
}
