import { describe, expect, it } from "vitest";
import { lightSvg } from "../../../kernel-helpers/notebook/report/light-svg.js";
import { drawSvg } from "../../../kernel-helpers/view/picture/draw-svg.js";
import { rasterize } from "../../../kernel-helpers/view/picture/rasterize.js";
import { svgDataUri } from "../../../kernel-helpers/view/svg-data-uri.js";
import { heatFigure, typicalFigure } from "../../view/typical-figure.js";

describe("lightSvg(svg)", () => {
  it.each([
    ["readings, lines, bands and notes", typicalFigure],
    ["a heat map", heatFigure],
  ])("looks the same to the pixel: %s", async (_, figure) => {
    const svg = await drawSvg(figure);
    const light = lightSvg(svg);
    expect(Buffer.compare(await rasterize(light, 2), await rasterize(svg, 2))).toBe(0);
    const clips = [...light.matchAll(/<clipPath id='([^']*)'/g)].map(([, id]) => id!);
    expect(clips.length).toBeGreaterThan(0);
    for (const id of clips) expect(light).toContain(`url(#${id})`);
    expect(light).not.toMatch(/ data-|[;']opacity:1[;']|<g\/>|<path\/>|\d\.\d{7}/);
  });

  // Measured: 0.47 of the bytes.
  it("is at least twice as small in the page, for a figure of readings", async () => {
    const svg = await drawSvg(typicalFigure);
    expect(svgDataUri(lightSvg(svg)).length).toBeLessThan(0.5 * svgDataUri(svg).length);
  });

  it("says a style once that parts share, and leaves one that is said once where it is", () => {
    const line = (style: string): string => `<path d="M0,0" style="${style}"/>`;
    const svg = `<svg width="9">${line("stroke: red; stroke-width: 2px;").repeat(2)}${line("fill: red;")}</svg>`;
    expect(lightSvg(svg)).toBe(
      "<svg width='9'><style>.s0{stroke:red;stroke-width:2px}</style>" +
        "<path d='M0,0' class='s0'/><path d='M0,0' class='s0'/><path d='M0,0' style='fill:red'/></svg>",
    );
  });

  it("leaves text alone, and a property that outdoes an attribute", () => {
    const text = `<text style="opacity: 1; fill: rgb(1, 2, 3);" opacity="0.5"> class="a" rgb(1, 2, 3)</text>`;
    expect(lightSvg(text)).toBe(
      `<text style='opacity:1;fill:#010203' opacity='0.5'> class="a" rgb(1, 2, 3)</text>`,
    );
  });
});
