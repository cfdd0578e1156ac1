import { type Affine, compose, identity, parseTransform } from "./affine.js";
import { type Box, boxAround, emptyBox, transformBox, union } from "./box.js";
import { flattenPath } from "./path-points.js";
import { type MeasuredPath, measurePath } from "./point-along.js";
import { isElement, numberOf, type SvgElement, svgNamespace } from "./svg-node.js";
import { ownStyle } from "./svg-style.js";
import { textBox } from "./text-box.js";

/** The box of an SVG element in its own coordinates, without its own transform: what getBBox gives. */
export function elementBox(element: SvgElement): Box {
  switch (element.tagName.toLowerCase()) {
    case "text":
    case "tspan":
      return textBox(element);
    case "rect":
    case "image":
      return rectangleBox(element);
    case "circle":
      return circleBox(element);
    case "path":
    case "line":
      return boxAround(pathOf(element).points.map(({ x, y }) => [x, y] as const));
    case "g":
    case "svg":
    case "a":
      return boxOfChildren(element);
    default:
      return emptyBox;
  }
}

/** The box of an element on the page: what getBoundingClientRect gives, the drawing being at the page's corner. */
export function boxOnPage(element: SvgElement): Box {
  return transformBox(mapToPage(element), elementBox(element));
}

const measured = new WeakMap<SvgElement, { readonly d: string; readonly path: MeasuredPath }>();

/** The flattened path of a path or line element, kept until its attribute changes. */
export function pathOf(element: SvgElement): MeasuredPath {
  const d =
    element.tagName.toLowerCase() === "line" ? lineAsPath(element) : (element.getAttribute("d") ?? "");
  const known = measured.get(element);
  if (known?.d === d) return known.path;
  const path = measurePath(flattenPath(d));
  measured.set(element, { d, path });
  return path;
}

function lineAsPath(line: SvgElement): string {
  const at = (name: string): number => numberOf(line, name);
  return `M${at("x1")},${at("y1")}L${at("x2")},${at("y2")}`;
}

function rectangleBox(element: SvgElement): Box {
  const [x0, y0] = [numberOf(element, "x"), numberOf(element, "y")];
  return { x0, y0, x1: x0 + numberOf(element, "width"), y1: y0 + numberOf(element, "height") };
}

function circleBox(element: SvgElement): Box {
  const [x, y, r] = [numberOf(element, "cx"), numberOf(element, "cy"), numberOf(element, "r")];
  return { x0: x - r, y0: y - r, x1: x + r, y1: y + r };
}

function boxOfChildren(element: SvgElement): Box {
  let box = emptyBox;
  for (const child of element.childNodes) {
    if (!isElement(child) || ownStyle(child, "display") === "none") continue;
    box = union(box, transformBox(parseTransform(child.getAttribute("transform")), elementBox(child)));
  }
  return box;
}

function mapToPage(element: SvgElement): Affine {
  const own = parseTransform(element.getAttribute("transform"));
  const parent = element.parentNode;
  const inDrawing = isElement(parent) && parent.namespaceURI === svgNamespace;
  return compose(inDrawing ? mapToPage(parent) : identity, own);
}
