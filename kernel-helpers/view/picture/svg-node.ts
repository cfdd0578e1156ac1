/** As much of a DOM node as measuring a drawing needs. */
export interface SvgNode {
  readonly nodeType: number;
  readonly nodeValue: string | null;
  readonly childNodes: Iterable<SvgNode>;
}

/** As much of a DOM element as measuring a drawing needs. */
export interface SvgElement extends SvgNode {
  readonly tagName: string;
  readonly namespaceURI: string | null;
  readonly parentNode: SvgNode | null;
  getAttribute(name: string): string | null;
  hasAttribute(name: string): boolean;
}

export const svgNamespace = "http://www.w3.org/2000/svg";

export function isElement(node: SvgNode | null): node is SvgElement {
  return node !== null && node.nodeType === 1;
}

export function isText(node: SvgNode): boolean {
  return node.nodeType === 3;
}

/** A length attribute as a number [px]; 0 where it is missing. */
export function numberOf(element: SvgElement, name: string): number {
  return Number.parseFloat(element.getAttribute(name) ?? "") || 0;
}
