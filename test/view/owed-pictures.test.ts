import { beforeEach, describe, expect, it } from "vitest";
import { blocksMimeType, type Presentation } from "../../kernel-helpers/view/blocks.js";
import { bundleOf, owingBundleOf, resetLoader } from "../../kernel-helpers/view/bundle.js";
import { owesPictures, withPictures } from "../../kernel-helpers/view/owed-pictures.js";
import { PainterHere } from "../../kernel-helpers/view/picture/painter.js";
import { heatFigure, typicalFigure } from "./typical-figure.js";

const shaft: Presentation = {
  title: "Shaft",
  blocks: [
    { type: "figure", figure: heatFigure, alt: "two cells" },
    { type: "text", text: "<!--journalbox: picture 1 comes here--> $& is no mark" },
    { type: "figure", figure: typicalFigure, alt: "shaft" },
  ],
};
const figures = shaft.blocks.filter((block) => block.type === "figure");

beforeEach(resetLoader);

describe("owingBundleOf(value) and withPictures(bundle, figures, painter)", () => {
  it("give in two steps what bundleOf gives in one", async () => {
    const owing = owingBundleOf(shaft, "a")!;
    expect(owesPictures(owing.data)).toBe(true);
    expect(String(owing.data["text/html"])).not.toContain("<img");
    const paid = await withPictures(owing, figures, new PainterHere());
    expect(owesPictures(paid.data)).toBe(false);
    resetLoader();
    expect(paid).toEqual(await bundleOf(shaft, "a"));
    expect(String(paid.data["text/html"]).match(/<img /g)).toHaveLength(2);
  });
  it("refuse in the first step a figure that cannot be drawn", () => {
    const bad = { title: "Shaft", blocks: [{ type: "figure", figure: { data: [], layout: {} }, alt: "" }] };
    expect(() => owingBundleOf(bad)).toThrow(/figure: layout\.width/);
  });
  it("leave the PNG out where the painter has none", async () => {
    const one: Presentation = { title: "Shaft", blocks: [figures[0]!] };
    const painter = { svg: async () => "<svg/>", png: async () => undefined };
    const { data } = await withPictures(owingBundleOf(one)!, [figures[0]!], painter);
    expect(Object.keys(data)).toEqual(["text/html", "text/plain", blocksMimeType]);
    expect(String(data["text/html"])).toContain(Buffer.from("<svg/>").toString("base64"));
  });
});

describe("owesPictures(data)", () => {
  it("is false for what is no presentation of ours, whatever its HTML says", () => {
    const html = owingBundleOf(shaft)!.data["text/html"];
    expect(owesPictures({ "text/html": html })).toBe(false);
    expect(owesPictures({ [blocksMimeType]: shaft, "text/html": "<p>plain</p>" })).toBe(false);
  });
});
