import { beforeEach, describe, expect, it } from "vitest";
import { blocksMimeType, type Presentation } from "../../kernel-helpers/view/blocks.js";
import { bundleOf, resetLoader } from "../../kernel-helpers/view/bundle.js";
import { heatFigure, typicalFigure } from "./typical-figure.js";

const loaderMark = `<script data-journalbox="plotly">`;
const plain: Presentation = { title: "Shaft", blocks: [{ type: "text", text: "Worn." }] };
const drawn: Presentation = {
  title: "Shaft",
  blocks: [{ type: "figure", figure: heatFigure, alt: "two cells" }],
};

async function htmlOf(value: unknown, cell?: string): Promise<string> {
  return String((await bundleOf(value, cell))!.data["text/html"]);
}

beforeEach(resetLoader);

describe("bundleOf(value)", () => {
  it("is nothing for undefined and null", async () => {
    expect(await bundleOf(undefined)).toBeUndefined();
    expect(await bundleOf(null)).toBeUndefined();
  });
  it("is plain text, four levels deep, for a value without a look", async () => {
    const { data } = (await bundleOf({ a: { b: { c: { d: { e: 1 } } } } }))!;
    expect(Object.keys(data)).toEqual(["text/plain"]);
    expect(String(data["text/plain"]).replace(/\s+/g, " ")).toBe("{ a: { b: { c: { d: { e: 1 } } } } }");
  });
  it("is html, text and the blocks for a presentation", async () => {
    const { data, metadata } = (await bundleOf(plain))!;
    expect(Object.keys(data)).toEqual(["text/html", "text/plain", blocksMimeType]);
    expect(data["text/html"]).toMatch(/^<style>.*<section class="jb"/s);
    expect(data["text/plain"]).toBe("Shaft\n═════\n\nWorn.");
    expect(data[blocksMimeType]).toEqual(plain);
    const card = { ...plain, ownPage: true };
    expect((await bundleOf(card))!.data[blocksMimeType]).toEqual(card);
    expect(metadata).toEqual({});
  });
  it("has a picture in the html and a PNG with its size where there is one figure", async () => {
    const { data, metadata } = (await bundleOf(drawn))!;
    expect(data["text/html"]).toContain(`src="data:image/svg+xml;base64,`);
    expect(Buffer.from(String(data["image/png"]), "base64").toString("latin1", 1, 4)).toBe("PNG");
    expect(metadata).toEqual({ "image/png": { width: 300, height: 200 } });
  });
  it("has no PNG where there are two figures, but both pictures", async () => {
    const two = {
      ...drawn,
      blocks: [...drawn.blocks, { type: "figure", figure: typicalFigure, alt: "shaft" }],
    };
    const { data } = (await bundleOf(two))!;
    expect(data).not.toHaveProperty("image/png");
    expect(String(data["text/html"]).match(/<img /g)).toHaveLength(2);
  });
  it("has html and text, and no PNG, where the drawing cannot be turned into pixels", async () => {
    // All of the one trace lies past the right edge, inside the group by which plotly clips its axes.
    const outside = {
      data: [{ type: "scatter", mode: "lines", x: [50, 50], y: [0, 1], line: { color: "#000" } }],
      layout: { width: 300, height: 200, xaxis: { range: [0, 1] }, yaxis: { range: [0, 1] } },
    };
    const { data, metadata } = (await bundleOf({
      title: "Shaft",
      blocks: [{ type: "figure", figure: outside, alt: "nothing" }],
    }))!;
    expect(Object.keys(data)).toEqual(["text/html", "text/plain", blocksMimeType]);
    expect(data["text/html"]).toContain(`src="data:image/svg+xml;base64,`);
    expect(metadata).toEqual({});
    expect((await bundleOf(drawn))!.data).toHaveProperty("image/png");
  });
  it("rejects a figure that cannot be drawn, and does not count it as shown", async () => {
    const bad = { title: "Shaft", blocks: [{ type: "figure", figure: { data: [], layout: {} }, alt: "" }] };
    await expect(bundleOf(bad)).rejects.toThrow(/figure: layout\.width/);
    expect(await htmlOf(drawn)).toContain(loaderMark);
  });
});

describe("the loader of plotly.js", () => {
  it("comes with the first figure only", async () => {
    expect(await htmlOf(plain)).not.toContain(loaderMark);
    expect(await htmlOf(drawn)).toContain(loaderMark);
    expect(await htmlOf(drawn)).not.toContain(loaderMark);
  });
  it("comes again after resetLoader()", async () => {
    await htmlOf(drawn);
    resetLoader();
    expect(await htmlOf(drawn)).toContain(loaderMark);
  });
  it("comes again when the cell that brought it is run again, and from no other", async () => {
    expect(await htmlOf(drawn, "wear")).toContain(loaderMark);
    expect(await htmlOf(drawn, "taper")).not.toContain(loaderMark);
    expect(await htmlOf(drawn, "wear")).toContain(loaderMark);
  });
});
