import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pictureDataUri, svgDataUri, textDataUri } from "../../../kernel-helpers/notebook/report/data-uri.js";
import { hasBrowser, inBrowser } from "./browser.js";

describe("svgDataUri(svg)", () => {
  it("says the same to a browser, and stays inside an attribute in double quotes", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (svg) => {
        const uri = svgDataUri(svg);
        expect(uri).not.toMatch(/["<>&#\n\r\t]/);
        expect(decodeURIComponent(uri.slice(uri.indexOf(",") + 1))).toBe(svg);
      }),
    );
  });
});

describe("textDataUri(mediaType, text)", () => {
  it("says the same to a browser", async () => {
    const text = "Ø 61.9 mm, \u2126\n";
    const response = await fetch(textDataUri("text/csv", text));
    expect(response.headers.get("content-type")).toBe("text/csv;charset=utf-8");
    expect(await response.text()).toBe(text);
  });

  it("says the same for any text, and stays inside an attribute in single quotes", async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "binary" }), async (text) => {
        const uri = textDataUri("application/json", text);
        expect(uri).not.toMatch(/['<>&#\n\r\t]/);
        const bytes = Buffer.from(await (await fetch(uri)).arrayBuffer());
        expect(bytes.toString("utf8")).toBe(text);
      }),
    );
    const spaces = ' {\n  "a":   "x"  ';
    expect(await (await fetch(textDataUri("application/json", spaces))).text()).toBe(spaces);
  });
});

describe("textDataUri(mediaType, text) in a page", () => {
  it.runIf(hasBrowser)("is handed over to the letter, rows of spaces and quotes too", async () => {
    const text = `{\n  "a":   "it's",\n  "Ø": ["<b>", "100 % & #1"]\n} `;
    await inBrowser(`<a href='${textDataUri("application/json", text)}'>x</a>`, async (page) => {
      const got = await page.evaluate(`fetch(document.querySelector("a").href).then((one) => one.text())`);
      expect(got).toBe(text);
    });
  });
});

describe("pictureDataUri(mediaType, base64)", () => {
  it("joins lines of base64", () => {
    expect(pictureDataUri("image/png", "iVBO\nRw0K\n")).toBe("data:image/png;base64,iVBORw0K");
  });
  it("returns nothing for what is no base64, or no picture of a known type", () => {
    expect(pictureDataUri("image/png", '"><b>')).toBeUndefined();
    expect(pictureDataUri("image/png", "")).toBeUndefined();
    expect(pictureDataUri("image/svg+xml", "AAAA")).toBeUndefined();
  });
});
