import { Window } from "happy-dom";
import { describe, expect, it } from "vitest";
import type { Drawing, Shape } from "../../../kernel-helpers/view/drawing/drawing.js";
import { drawingSize, drawingSvg } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { rasterize } from "../../../kernel-helpers/view/picture/rasterize.js";
import { expectClose } from "../../support/expect-close.js";

const sheet = (...shapes: Shape[]): Drawing => ({ width: 200, height: 100, shapes });

interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The points of the elements a selector finds in the SVG, as a browser's parser sees them. */
function pointsOf(svg: string, selector: string): readonly (readonly Corner[])[] {
  const { document } = new Window();
  document.body.innerHTML = svg;
  return [...document.querySelectorAll(selector)].map((element) =>
    element
      .getAttribute("points")!
      .split(" ")
      .map((pair) => pair.split(",").map(Number))
      .map(([x, y]) => ({ x: x!, y: y! })),
  );
}

describe("drawingSvg(drawing)", () => {
  it("is a well-formed picture that draws every kind of shape", async () => {
    const svg = drawingSvg(
      sheet(
        { type: "line", from: [0, 0], to: [10, 10], pen: "outline" },
        {
          type: "polyline",
          points: [
            [0, 0],
            [5, 5],
            [9, 0],
          ],
          pen: "hidden",
        },
        {
          type: "polygon",
          points: [
            [0, 0],
            [5, 5],
            [9, 0],
          ],
          pen: "thin",
          fill: "iron",
        },
        { type: "circle", centre: [50, 50], radius: 20, pen: "outline", fill: "oil" },
        { type: "arc", centre: [50, 50], radius: 20, from: 0, to: 90, pen: "force", head: true },
        { type: "arrow", from: [0, 50], to: [40, 50], pen: "warn", both: true },
        { type: "dimension", from: [10, 80], to: [90, 80], offset: 12, text: "80" },
        { type: "text", at: [10, 20], text: 'a < b & "c"', size: "large", turn: 90 },
      ),
    );
    expect((await rasterize(svg, 1)).length).toBeGreaterThan(1000);
    expect(svg).toContain("a &lt; b &amp; &quot;c&quot;");
  });
  it("keeps its size where all fits, and grows where a shape or a text reaches beyond", () => {
    expect(
      drawingSize(sheet({ type: "circle", centre: [50, 50], radius: 20, pen: "thin", fill: "none" })),
    ).toEqual({
      width: 200,
      height: 100,
    });
    const { width, height } = drawingSize(
      sheet(
        { type: "circle", centre: [-10, 50], radius: 20, pen: "thin", fill: "none" },
        { type: "text", at: [190, 50], text: "a long remark that runs out of the sheet" },
      ),
    );
    expect(width).toBeGreaterThan(200 + 30 + 150);
    expect(height).toBe(100);
  });
  it("draws an arc counter-clockwise as seen towards the greater angle, with its head at the end", () => {
    const arc = (from: number, to: number): readonly Corner[] =>
      pointsOf(
        drawingSvg(sheet({ type: "arc", centre: [50, 50], radius: 40, from, to, pen: "force", head: true })),
        "polyline",
      )[0]!;
    const quarter = arc(0, 90);
    expect(quarter[0]).toEqual({ x: 90, y: 50 });
    expect(quarter.at(-1)).toEqual({ x: 50, y: 10 });
    // Half-way up on the right: the short way round.
    expect(quarter[Math.floor(quarter.length / 2)]!.x).toBeGreaterThan(70);
    // Downwards from the same start: clockwise.
    expect(arc(0, -90).at(-1)).toEqual({ x: 50, y: 90 });
  });
  it("points an arrow's head to where it goes", () => {
    const svg = drawingSvg(sheet({ type: "arrow", from: [10, 50], to: [60, 50], pen: "force" }));
    const [head] = pointsOf(svg, "polygon");
    expect(head![0]).toEqual({ x: 60, y: 50 });
    expect(head!.slice(1).every(({ x }) => x < 60)).toBe(true);
    expectClose(head![1]!.y + head![2]!.y, 100, { rel: 1e-12, because: "the head is even about its arrow" });
  });
  it("sets a dimension to the right of the way from point to point, its text never upside down", () => {
    const lineOf = (from: [number, number], to: [number, number]): readonly Corner[] =>
      pointsOf(drawingSvg(sheet({ type: "dimension", from, to, offset: 20, text: "80" })), "polyline").at(
        -1,
      )!;
    expect(lineOf([10, 40], [90, 40]).map(({ y }) => y)).toEqual([60, 60]);
    expect(lineOf([90, 40], [10, 40]).map(({ y }) => y)).toEqual([20, 20]);
    expect(lineOf([50, 10], [50, 90]).map(({ x }) => x)).toEqual([30, 30]);
    const turnOf = (from: [number, number], to: [number, number]): number => {
      const svg = drawingSvg(sheet({ type: "dimension", from, to, offset: 20, text: "80" }));
      return -Number(/rotate\((-?[\d.]+)/.exec(svg)?.[1] ?? 0);
    };
    const ways = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 12);
    for (const way of ways)
      expect(
        Math.cos((turnOf([100, 50], [100 + 40 * Math.cos(way), 50 - 40 * Math.sin(way)]) * Math.PI) / 180),
      ).toBeGreaterThan(-1e-3);
  });
  it("shows a control character as a sign instead of breaking the document", async () => {
    const svg = drawingSvg(sheet({ type: "text", at: [10, 20], text: "nut\u0000 M20\u001b" }));
    expect(svg).toContain("nut� M20�");
    expect((await rasterize(svg, 1)).length).toBeGreaterThan(100);
  });
  it("names the shape whose place is no number, and a radius of nothing", () => {
    expect(() => drawingSvg(sheet({ type: "line", from: [0, Number.NaN], to: [1, 1], pen: "thin" }))).toThrow(
      "drawing: shape 1, a line: every place must be a number, got NaN",
    );
    expect(() =>
      drawingSvg(sheet({ type: "circle", centre: [0, 0], radius: 0, pen: "thin", fill: "none" })),
    ).toThrow("drawing: shape 1, a circle: radius must be above 0, got 0");
    expect(() => drawingSvg({ width: 0, height: 10, shapes: [] })).toThrow(
      /width and height must be above 0/,
    );
  });
});
