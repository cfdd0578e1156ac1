import { describe, expect, it } from "vitest";
import { checkPresentation } from "../../../kernel-helpers/notebook/report/check-presentation.js";

const withShape = (shape: unknown, size: unknown = 100): unknown => ({
  title: "t",
  blocks: [{ type: "drawing", alt: "a", drawing: { width: size, height: 100, shapes: [shape] } }],
});
const line = { type: "line", from: [0, 0], to: [1, 1], pen: "thin" };

describe("checkPresentation(value), drawings", () => {
  it("keeps a drawing and drops fields it does not know", () => {
    expect(checkPresentation(withShape({ ...line, onclick: "alert(1)" }))).toEqual(withShape(line));
  });
  it.each([
    ["a shape of unknown type", { type: "image", href: "x" }],
    ["a pen that is none", { ...line, pen: "url(#x)" }],
    ["a place that is a text", { ...line, to: ["0", 1] }],
    ["a place that is no number", { ...line, to: [Number.NaN, 1] }],
    ["a place of three numbers", { ...line, to: [0, 1, 2] }],
    ["a place beyond any sheet", { ...line, to: [1e9, 1] }],
    ["a radius of nothing", { type: "circle", centre: [0, 0], radius: 0, pen: "thin", fill: "none" }],
    ["a fill that is none", { type: "circle", centre: [0, 0], radius: 1, pen: "thin", fill: "red" }],
    [
      "an arc of a thousand turns",
      { type: "arc", centre: [0, 0], radius: 1, from: 0, to: 360_000, pen: "thin" },
    ],
    ["a text that is a number", { type: "text", at: [0, 0], text: 1 }],
    ["a size of letters that is none", { type: "text", at: [0, 0], text: "a", size: "99px" }],
    [
      "a head that is no truth",
      { type: "arc", centre: [0, 0], radius: 1, from: 0, to: 9, pen: "thin", head: "x" },
    ],
  ])("refuses %s", (_, shape) => {
    expect(checkPresentation(withShape(shape))).toBeUndefined();
  });
  it("refuses a sheet without size, and one with more shapes than any machine has", () => {
    expect(checkPresentation(withShape(line, 0))).toBeUndefined();
    const many = { width: 1, height: 1, shapes: Array.from({ length: 5001 }, () => line) };
    expect(
      checkPresentation({ title: "t", blocks: [{ type: "drawing", alt: "a", drawing: many }] }),
    ).toBeUndefined();
  });
});
