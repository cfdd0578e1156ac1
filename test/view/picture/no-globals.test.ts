import { expect, it } from "vitest";
import { typicalFigure } from "../typical-figure.js";

it("loading the engine and drawing add no global name and leave Math alone", async () => {
  const names = (): readonly string[] => Object.getOwnPropertyNames(globalThis).sort();
  const before = names();
  const { random } = Math;
  const { drawPng } = await import("../../../kernel-helpers/view/picture/draw-png.js");
  const png = await drawPng(typicalFigure, { scale: 1 });
  expect(png.length).toBeGreaterThan(1000);
  expect(names()).toEqual(before);
  expect(Math.random).toBe(random);
});
