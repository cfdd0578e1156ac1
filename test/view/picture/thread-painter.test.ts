import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Figure } from "../../../kernel-helpers/view/blocks.js";
import { drawSvg, rasterize } from "../../../kernel-helpers/view/picture/index.js";
import { ThreadPainter } from "../../../kernel-helpers/view/picture/thread-painter.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { heatFigure, typicalFigure } from "../typical-figure.js";

let painter: ThreadPainter;
beforeAll(async () => {
  await ensureBuilt();
  painter = new ThreadPainter({ png: true });
}, buildTimeout);
afterAll(() => painter.close());

/** The same figure with the fields of each object the other way round. */
function turned(figure: Figure): Figure {
  return JSON.parse(
    JSON.stringify(figure, (_, value) =>
      typeof value === "object" && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    ),
  );
}

describe("ThreadPainter", () => {
  it("draws the bytes that are drawn here, in whatever order the fields were written", async () => {
    const svg = await painter.svg(typicalFigure);
    expect(svg === (await drawSvg(typicalFigure))).toBe(true);
    expect(svg === (await drawSvg(turned(typicalFigure)))).toBe(true);
    expect(
      Buffer.compare((await painter.png(heatFigure, 2))!, await rasterize(await drawSvg(heatFigure), 2)),
    ).toBe(0);
  });
  it("draws each figure once: the second time takes no time", async () => {
    await painter.svg(typicalFigure);
    const began = process.hrtime.bigint();
    await painter.svg(turned(typicalFigure));
    expect(Number(process.hrtime.bigint() - began) / 1e6).toBeLessThan(20);
  });
  it("tells why a figure cannot be drawn, and draws the next", async () => {
    const bad: Figure = { data: [{ type: "pie3d" }], layout: { width: 300, height: 200 } };
    await expect(painter.svg(bad)).rejects.toThrow(/figure: data\[0\]\.type must be one/);
    await expect(painter.svg(bad)).rejects.toMatchObject({ name: "TypeError" });
    expect(await painter.svg(heatFigure)).toMatch(/^<svg/);
  });
  it("has no PNG where nobody wants any", async () => {
    const without = new ThreadPainter({ png: false });
    expect(await without.png(heatFigure, 2)).toBeUndefined();
    await without.close();
  });
  it("fails those who wait when it is closed, and those who come later", async () => {
    const closing = new ThreadPainter({ png: true });
    const waiting = closing.svg(heatFigure);
    const failed = expect(waiting).rejects.toThrow("the drawing thread has ended");
    await closing.close();
    await failed;
    await expect(closing.svg(typicalFigure)).rejects.toThrow("the drawing thread has ended");
  });
});
