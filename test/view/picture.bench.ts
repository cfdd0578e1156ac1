import { bench, describe } from "vitest";
import { drawSvg, rasterize } from "../../kernel-helpers/view/picture/index.js";
import { typicalFigure } from "./typical-figure.js";

/** Wanted: the static picture of one figure under 150 ms, the engine being loaded. */
describe("the static picture of a typical figure, warm", async () => {
  const svg = await drawSvg(typicalFigure);
  bench("as SVG", async () => {
    await drawSvg(typicalFigure);
  });
  bench("that SVG as PNG, scale 2", async () => {
    await rasterize(svg, 2);
  });
});
