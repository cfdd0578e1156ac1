import { expect } from "vitest";
import type { Presentation } from "../../kernel-helpers/view/blocks.js";
import type { Drawing } from "../../kernel-helpers/view/drawing/drawing.js";
import { drawingSize } from "../../kernel-helpers/view/drawing/drawing-svg.js";
import { leastWidth } from "../../kernel-helpers/view/drawing/least-width.js";

/** Expects the drawing of a presentation to have a layout that a telephone shows whole, its letters 9 px high at least. */
export function expectNarrowLayout({ blocks }: Presentation): Drawing {
  const block = blocks.find(({ type }) => type === "drawing");
  if (block?.type !== "drawing" || block.narrow === undefined)
    throw new Error("a drawing with a narrow layout was expected");
  expect(leastWidth(block.drawing)).toBeGreaterThan(300);
  expect(leastWidth(block.narrow)).toBeLessThanOrEqual(300);
  expect(drawingSize(block.narrow).width).toBeLessThanOrEqual(366);
  return block.narrow;
}
