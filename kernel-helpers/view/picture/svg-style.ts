import { isElement, type SvgElement } from "./svg-node.js";

const defaultFontSize = 12;

/** A property of the element itself: its style first, then the attribute of the same name. */
export function ownStyle(element: SvgElement, name: string): string | null {
  for (const declaration of (element.getAttribute("style") ?? "").split(";")) {
    const colon = declaration.indexOf(":");
    if (colon > 0 && declaration.slice(0, colon).trim() === name) return declaration.slice(colon + 1).trim();
  }
  return element.getAttribute(name);
}

/** A property that children take over from their parents, e.g. text-anchor. */
export function inheritedStyle(element: SvgElement, name: string): string | null {
  const own = ownStyle(element, name);
  if (own !== null && own !== "") return own;
  return isElement(element.parentNode) ? inheritedStyle(element.parentNode, name) : null;
}

/** Font size of an element [px]; a share (70%, 0.7em) is of its parent's. */
export function fontSize(element: SvgElement): number {
  const own = ownStyle(element, "font-size");
  const parentSize = (): number =>
    isElement(element.parentNode) ? fontSize(element.parentNode) : defaultFontSize;
  if (own === null || own === "") return parentSize();
  const size = Number.parseFloat(own);
  if (own.endsWith("%")) return (size / 100) * parentSize();
  return own.endsWith("em") ? size * parentSize() : size;
}

export function isBold(element: SvgElement): boolean {
  return /bold|[6-9]00/.test(inheritedStyle(element, "font-weight") ?? "");
}

export function isUpperCase(element: SvgElement): boolean {
  return inheritedStyle(element, "text-transform") === "uppercase";
}
