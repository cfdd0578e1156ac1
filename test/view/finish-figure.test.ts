import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import type { Figure } from "../../kernel-helpers/view/blocks.js";
import { finishFigure, traceTypes } from "../../kernel-helpers/view/finish-figure.js";

const size = { width: 400, height: 300 };
const withTrace = (trace: Record<string, unknown>): Figure => ({ data: [trace], layout: size });

describe("finishFigure(figure)", () => {
  it("puts the house style under what the figure says itself", () => {
    const finished = finishFigure({ data: [], layout: { ...size, font: { size: 20 } } });
    expect(finished.layout).toMatchObject({ ...size, font: { size: 20 }, template: { layout: {} } });
    expect(finishFigure({ data: [], layout: { ...size, template: { a: 1 } } }).layout.template).toEqual({
      a: 1,
    });
  });
  it("takes each type the page can draw, and a trace without a type", () => {
    for (const type of [undefined, ...traceTypes])
      expect(finishFigure(withTrace({ type })).data).toHaveLength(1);
  });
  it("names the trace that the page cannot draw, and those it can", () => {
    const figure = { data: [{ type: "scatter" }, { type: "scatterpolar" }], layout: size };
    expect(() => finishFigure(figure)).toThrow(/figure: data\[1\]\.type must .*scatter.* got scatterpolar/);
  });
  it("wants a size, no wider than a notebook shows", () => {
    expect(() => finishFigure({ data: [], layout: { height: 300 } })).toThrow(
      /layout\.width .* got undefined/,
    );
    expect(() => finishFigure({ data: [], layout: { width: 721, height: 300 } })).toThrow(
      /100 to 720, got 721/,
    );
    expect(() => finishFigure({ data: [], layout: { width: 700, height: Number.NaN } })).toThrow(
      /height .* got NaN/,
    );
  });
  it("names the value that is not plain JSON", () => {
    expect(() => finishFigure(withTrace({ y: [1, Number.NaN] }))).toThrow(
      /data\[0\]\.y\[1\] must .* got NaN/,
    );
    expect(() => finishFigure(withTrace({ y: new Float64Array(2) }))).toThrow(
      /data\[0\]\.y .* got an object of Float64Array/,
    );
    expect(() => finishFigure(withTrace({ x: [new Date(0)] }))).toThrow(
      /data\[0\]\.x\[0\] .* got an object of Date/,
    );
    expect(() => finishFigure({ data: [], layout: { ...size, f: () => 1 } })).toThrow(
      /layout\.f must be plain JSON/,
    );
  });
  it("refuses a picture that lies outside the figure, naming where it is asked for", () => {
    const outside = "http://example.org/shaft.png";
    const images = [{ source: "data:image/png;base64,AAAA" }, { source: outside }];
    expect(() => finishFigure({ data: [], layout: { ...size, images } })).toThrow(
      /figure: layout\.images\[1\]\.source must hold the picture itself as a data: address, got http:\/\/example\.org\/shaft\.png/,
    );
    const template = { layout: { images: [{ source: `file:///${"x".repeat(100)}` }] } };
    expect(() => finishFigure({ data: [], layout: { ...size, template } })).toThrow(
      /layout\.template\.layout\.images\[0\]\.source .* got file:\/\/\/x{72}…$/,
    );
  });
  it("refuses the picture of a trace, even one that the figure holds: drawing it needs a browser", () => {
    const source = "data:image/png;base64,AAAA";
    expect(() => finishFigure(withTrace({ type: "image", source }))).toThrow(
      /figure: data\[0\]\.source must be left out: give the pixels as z/,
    );
    const template = { data: { image: [{ source }] } };
    expect(() => finishFigure({ data: [], layout: { ...size, template } })).toThrow(
      /layout\.template\.data\.image\[0\]\.source must be left out/,
    );
  });
  it.each(["DATA:image/png;base64,AAAA", "data:text/html,AAAA", "shaft.png", 7])(
    "refuses %s as a picture, for plotly would try to fetch it",
    (source) => {
      expect(() => finishFigure({ data: [], layout: { ...size, images: [{ source }] } })).toThrow(
        `figure: layout.images[0].source must hold the picture itself as a data: address, got ${source}`,
      );
    },
  );
  it("takes a picture that the figure holds itself, none, and a source that is the user's own word", () => {
    const images = [{ source: "data:image/png;base64,AAAA" }, { source: "" }];
    expect(finishFigure({ data: [], layout: { ...size, images } }).layout.images).toEqual(images);
    expect(finishFigure(withTrace({ customdata: [{ source: "shop book" }] })).data).toHaveLength(1);
    expect(finishFigure({ data: [], layout: { ...size, meta: { source: "shop book" } } }).data).toEqual([]);
  });
  it("takes null for a gap", () => {
    expect(finishFigure(withTrace({ y: [1, null, 2] })).data[0]).toEqual({ y: [1, null, 2] });
  });
  it("takes objects made in another context, as a notebook's cells are", () => {
    const figure = runInNewContext("({ data: [{ y: [1, 2] }], layout: { width: 300, height: 200 } })");
    expect(finishFigure(figure).data).toHaveLength(1);
  });
});
