import { describe, expect, it } from "vitest";
import type { Drawing, Shape } from "../../../kernel-helpers/view/drawing/drawing.js";
import { drawingSize } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { narrowDrawing } from "../../../kernel-helpers/view/drawing/narrow-drawing.js";
import { expectClose } from "../../support/expect-close.js";

const shapes: readonly Shape[] = [
  {
    type: "polygon",
    points: [
      [100, 20],
      [500, 20],
      [500, 120],
      [100, 120],
    ],
    pen: "outline",
    fill: "metal",
  },
  { type: "circle", centre: [300, 70], radius: 40, pen: "outline", fill: "none" },
  { type: "arrow", from: [100, 70], to: [500, 70], pen: "force" },
  { type: "text", at: [90, 70], text: "cross-beam", size: "small", anchor: "end" },
  { type: "dimension", from: [500, 120], to: [100, 120], offset: -24, text: "400 mm" },
];
const drawing: Drawing = { width: 600, height: 160, shapes };

describe("narrowDrawing(drawing, width)", () => {
  const narrow = narrowDrawing(drawing, 366)!;
  const found = <T extends Shape["type"]>(of: Drawing, type: T): Extract<Shape, { type: T }> =>
    of.shapes.find((shape) => shape.type === type) as Extract<Shape, { type: T }>;

  it("fills the width asked for and no more", () => {
    expect(drawingSize(narrow).width).toBeLessThanOrEqual(366);
    expect(drawingSize(narrow).width).toBeGreaterThan(360);
  });
  it("keeps letters and the room of a dimension's, and shrinks all shapes alike, so that a drawing to scale stays so", () => {
    const factor = found(narrow, "circle").radius / found(drawing, "circle").radius;
    expect(factor).toBeLessThan(0.65);
    const alike = { rel: 1e-12, because: "one factor for all" };
    expectClose(found(narrow, "circle").centre[0], 300 * factor, alike);
    expectClose(found(narrow, "polygon").points[2]![1], 120 * factor, alike);
    expectClose(found(narrow, "arrow").to[0], 500 * factor, alike);
    expect(found(narrow, "text")).toMatchObject({ text: "cross-beam", size: "small", anchor: "end" });
    expect(found(narrow, "dimension")).toMatchObject({ offset: -24, text: "400 mm" });
  });
  it("leaves a drawing that is narrow already, and says where letters alone are too wide", () => {
    expect(narrowDrawing(drawing, 700)).toBe(drawing);
    const words: Shape = { type: "text", at: [0, 40], text: "a line of many words, wider than a telephone" };
    expect(narrowDrawing({ ...drawing, shapes: [words] }, 200)).toBeUndefined();
  });
});
