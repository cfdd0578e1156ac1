import type { Window as HappyWindow } from "happy-dom";
import { emptyBox, isEmpty, toDomRectangle } from "./box.js";
import { boxOnPage, elementBox, pathOf } from "./element-box.js";
import { makePixelCanvas } from "./pixel-canvas.js";
import { pointAlong, totalLength } from "./point-along.js";
import { type SvgElement, svgNamespace } from "./svg-node.js";
import { textBox } from "./text-box.js";

const svgTags = ["svg", "g", "text", "tspan", "path", "rect", "circle", "line", "image"];

/** What a browser measures and happy-dom does not. */
const measurements = {
  getBBox(this: SvgElement) {
    return toDomRectangle(elementBox(this));
  },
  getBoundingClientRect(this: SvgElement) {
    return toDomRectangle(this.namespaceURI === svgNamespace ? boxOnPage(this) : emptyBox);
  },
  getComputedTextLength(this: SvgElement) {
    const box = textBox(this);
    return isEmpty(box) ? 0 : box.x1 - box.x0;
  },
  getTotalLength(this: SvgElement) {
    return totalLength(pathOf(this));
  },
  getPointAtLength(this: SvgElement, distance: number) {
    return pointAlong(pathOf(this), distance);
  },
};

/**
 * A window without a screen on which plotly can draw: happy-dom, which knows elements and styles, with the
 * measuring of text, boxes and paths put in, and a canvas that can be read out. Nothing global is touched.
 */
export async function openDrawingWindow(): Promise<HappyWindow> {
  const { Window } = await import("happy-dom");
  const window = new Window({ width: 1200, height: 900 });
  for (const prototype of prototypesThatMeasure(window)) {
    for (const [name, value] of Object.entries(measurements)) replace(prototype, name, value);
  }
  const createElement = window.document.createElement.bind(window.document);
  replace(window.document, "createElement", (tag: string) => {
    const element = createElement(tag);
    if (tag.toLowerCase() === "canvas") makePixelCanvas(element as never);
    return element;
  });
  // With `image-rendering: pixelated` plotly would write one pixel a cell, which few viewers enlarge sharply.
  replace(window, "CSS", { supports: () => false });
  return window;
}

/** Element's prototype, and every one between it and an SVG tag's own that measures by itself. */
function prototypesThatMeasure(window: HappyWindow): ReadonlySet<object> {
  const found = new Set<object>([window.Element.prototype]);
  for (const tag of svgTags) {
    let prototype: object = Object.getPrototypeOf(window.document.createElementNS(svgNamespace, tag));
    while (prototype !== Object.prototype) {
      if (Object.keys(measurements).some((name) => Object.hasOwn(prototype, name))) found.add(prototype);
      prototype = Object.getPrototypeOf(prototype);
    }
  }
  return found;
}

function replace(owner: object, name: string, value: unknown): void {
  Object.defineProperty(owner, name, { value, configurable: true, writable: true });
}
