import { describe, expect, it } from "vitest";
import { figureHtml } from "../../kernel-helpers/view/figure-html.js";
import { typicalFigure } from "./typical-figure.js";

const svg = "<svg>µ</svg>";

describe("figureHtml({ figure, svg, alt })", () => {
  const html = figureHtml({ figure: typicalFigure, svg, alt: "Worn by 4 thou" });

  it("shows the static picture, with its size and its words", () => {
    const [, packed] = html.match(/src="data:image\/svg\+xml;base64,([^"]+)"/)!;
    expect(Buffer.from(packed!, "base64").toString()).toBe(svg);
    expect(html).toContain(`alt="Worn by 4 thou" width="720" height="420"`);
  });
  it("hands the figure to the page under the name of its place", () => {
    const page: { journalboxFigures?: { name: string; data: unknown; layout: object }[] } = {};
    new Function("window", html.match(/<script>(.*)<\/script>/)![1]!)(page);
    const [figure] = page.journalboxFigures!;
    expect(html).toContain(`data-journalbox-figure="${figure!.name}"`);
    expect(figure!.data).toEqual(typicalFigure.data);
    expect(figure!.layout).toMatchObject(typicalFigure.layout);
  });
  it("gives the same bytes for the same figure, and another name to another", () => {
    expect(figureHtml({ figure: structuredClone(typicalFigure), svg, alt: "Worn by 4 thou" })).toBe(html);
    const other = { ...typicalFigure, data: typicalFigure.data.slice(0, 1) };
    const nameOf = (text: string): string => text.match(/data-journalbox-figure="(\w+)"/)![1]!;
    expect(nameOf(figureHtml({ figure: other, svg, alt: "" }))).not.toBe(nameOf(html));
  });
  it("keeps hostile words in their place", () => {
    const words = `"><img src=x onerror=alert(1)></script>\u2028`;
    const figure = { data: [{ name: words }], layout: { width: 300, height: 200 } };
    const text = figureHtml({ figure, svg, alt: words });
    expect(text.match(/<img/g)).toHaveLength(1);
    expect(text.match(/<\/script>/g)).toHaveLength(1);
    expect(text.slice(text.indexOf("<script>"))).not.toContain("\u2028");
  });
  it("refuses a figure that the page cannot draw", () => {
    const figure = { data: [{ type: "surface" }], layout: { width: 300, height: 200 } };
    expect(() => figureHtml({ figure, svg, alt: "" })).toThrow(/got surface/);
  });
});
