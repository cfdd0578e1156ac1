import { describe, expect, it } from "vitest";
import { checkDrawable } from "../../../kernel-helpers/notebook/report/check-drawable.js";

const inside = "data:image/png;base64,AA==";

describe("checkDrawable(figure)", () => {
  it("lets a figure with pictures inside it pass", () => {
    expect(() =>
      checkDrawable({ data: [{ x: [1] }], layout: { images: [{ source: inside }] } }),
    ).not.toThrow();
  });

  it("refuses pictures from outside, wherever the figure asks for them", () => {
    const source = "https://example.org/a.png";
    const rule =
      /figure: a picture must lie inside it as a data: address, got https:\/\/example\.org\/a\.png/;
    expect(() => checkDrawable({ data: [{ type: "image", source }], layout: {} })).toThrow(rule);
    expect(() => checkDrawable({ data: [], layout: { images: [{ source }] } })).toThrow(rule);
    const template = { layout: { imagedefaults: { source } } };
    expect(() => checkDrawable({ data: [], layout: { template } })).toThrow(rule);
  });

  it("refuses a figure of enormous size", () => {
    const x = Array.from({ length: 1_500_000 }, () => 1);
    expect(() => checkDrawable({ data: [{ x }], layout: {} })).toThrow(
      /at most 3000000 characters, got 30000\d\d/,
    );
  });
});
