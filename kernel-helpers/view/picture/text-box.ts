import { ascent, descent, unitsPerEm } from "./arial-widths.js";
import { type Box, emptyBox, union } from "./box.js";
import { isElement, isText, numberOf, type SvgElement } from "./svg-node.js";
import { fontSize, inheritedStyle, isBold, isUpperCase } from "./svg-style.js";
import { textWidth } from "./text-width.js";

const zeroWidthSpace = "\u200b";

/** A line of text being set: where it starts, how long it has grown, and the base line of each run in it. */
interface Line {
  readonly x: number;
  readonly y: number;
  /** How far raised or lowered text (sub, sup) has moved off the line. */
  shift: number;
  width: number;
  readonly runs: { readonly baseLine: number; readonly size: number }[];
}

/**
 * The box of an SVG text or tspan, in its own coordinates, as Chromium measures it: width from the advances,
 * height from the font's ascent and descent, each rounded to a whole pixel.
 * Knows lines (a tspan of its own x and y, or of class "line"), raised and lowered runs (dy), and text-anchor.
 */
export function textBox(element: SvgElement): Box {
  const lines = [startLine(element)];
  setChildren(element, lines);
  const anchor = inheritedStyle(element, "text-anchor");
  return lines.map((line) => lineBox(line, anchor)).reduce(union, emptyBox);
}

function startLine(element: SvgElement): Line {
  const y = numberOf(element, "y") + shiftOf(element);
  return { x: numberOf(element, "x"), y, shift: 0, width: 0, runs: [] };
}

function setChildren(element: SvgElement, lines: Line[]): void {
  for (const child of element.childNodes) {
    if (isText(child)) setRun(child.nodeValue ?? "", element, lines.at(-1)!);
    else if (isElement(child) && /^(tspan|a)$/i.test(child.tagName)) {
      if (startsLine(child)) lines.push(startLine(child));
      else lines.at(-1)!.shift += shiftOf(child);
      setChildren(child, lines);
    }
  }
}

function setRun(text: string, element: SvgElement, line: Line): void {
  const size = fontSize(element);
  const shown = isUpperCase(element) ? text.toUpperCase() : text;
  line.width += textWidth(shown.replace(/[\t\n]/g, " "), size, isBold(element));
  // The zero-width space carries sub and sup back to the line and must not stretch the box.
  if (text.replaceAll(zeroWidthSpace, "") !== "") line.runs.push({ baseLine: line.y + line.shift, size });
}

function startsLine(tspan: SvgElement): boolean {
  return tspan.getAttribute("class") === "line" || (tspan.hasAttribute("x") && tspan.hasAttribute("y"));
}

function shiftOf(element: SvgElement): number {
  const dy = element.getAttribute("dy") ?? "";
  const amount = Number.parseFloat(dy) || 0;
  return dy.endsWith("em") ? amount * fontSize(element) : amount;
}

function lineBox(line: Line, anchor: string | null): Box {
  const share = anchor === "middle" ? 0.5 : anchor === "end" ? 1 : 0;
  const x0 = line.x - share * line.width;
  let box = emptyBox;
  for (const { baseLine, size } of line.runs) {
    const y0 = baseLine - Math.round((ascent / unitsPerEm) * size);
    const y1 = baseLine + Math.round((descent / unitsPerEm) * size);
    box = union(box, { x0, y0, x1: x0 + line.width, y1 });
  }
  return box;
}
