import { describe, expect, it } from "vitest";
import { cleanHtml, isBlankHtml } from "../../../kernel-helpers/notebook/report/clean-html.js";

describe("cleanHtml(html)", () => {
  it("keeps text, tables and lists", () => {
    const html =
      '<table><tbody><tr><td colspan="2">a<sub>1</sub></td></tr></tbody></table><ul><li>b</li></ul>';
    expect(cleanHtml(html)).toBe(html);
  });

  it("keeps pictures that lie inside the page, and no others", () => {
    expect(cleanHtml('<img src="data:image/png;base64,AA==" alt="a">')).toBe(
      '<img src="data:image/png;base64,AA==" alt="a" />',
    );
    for (const src of ["https://example.org/a.png", "//example.org/a.png", "a.png", "data:text/html,x"])
      expect(cleanHtml(`<img src="${src}">`)).toBe("");
  });

  it("keeps alignment and weight of a style, and no more", () => {
    expect(cleanHtml('<p style="text-align:right;position:fixed;background:url(//x)">a</p>')).toBe(
      '<p style="text-align:right">a</p>',
    );
  });

  it("drops classes and ids, which could mean something in the page", () => {
    expect(cleanHtml('<p class="jb stamp" id="readings">a</p>')).toBe("<p>a</p>");
  });

  it("makes headings bold text, for the report has its own", () => {
    expect(cleanHtml("<h1>a</h1>")).toBe("<strong>a</strong>");
  });

  it("keeps full links without opener and referrer, and only the text of others", () => {
    expect(cleanHtml('<a href="https://example.org/a" onclick="x">a</a>')).toBe(
      '<a href="https://example.org/a" rel="noopener noreferrer" target="_blank">a</a>',
    );
    for (const href of [
      "javascript:x",
      "java\nscript:x",
      "a.html",
      "//example.org",
      "data:text/html,x",
      "file:///a",
    ])
      expect(cleanHtml(`<a href="${href}">a</a>`)).toBe("<a>a</a>");
  });

  it("drops scripts and styles with their text", () => {
    expect(cleanHtml("<script>a</script><style>b</style><p>c</p>")).toBe("<p>c</p>");
  });
});

describe("isBlankHtml(html)", () => {
  it("tells what shows something from what does not", () => {
    expect(isBlankHtml("<div> <p></p></div>")).toBe(true);
    expect(isBlankHtml("<div>a</div>")).toBe(false);
    expect(isBlankHtml('<img src="data:image/png;base64,AA==" />')).toBe(false);
  });
});
