import { describe, expect, it } from "vitest";
import { Outline } from "../../../kernel-helpers/notebook/report/outline.js";
import { renderFormula, renderMarkdown } from "../../../kernel-helpers/notebook/report/render-markdown.js";

function render(
  source: string,
  more: { titleAbove?: string; attachments?: Record<string, Record<string, unknown>> } = {},
): string {
  return renderMarkdown(source, { outline: new Outline(2), ...more }).trim();
}

describe("renderMarkdown(source, place)", () => {
  it("renders mathematics and leaves prices alone", () => {
    expect(render("$x$")).toContain('class="katex"');
    expect(render("costs $5 and $6")).toBe("<p>costs $5 and $6</p>");
  });

  it("lets a formula link to nothing", () => {
    expect(render("$\\href{javascript:alert(1)}{x}$")).not.toContain("<a ");
    expect(render("$\\includegraphics{https://example.org/a.png}$")).not.toContain("<img");
  });

  it("shows HTML as text", () => {
    expect(render("<b>a</b>")).toBe("<p>&lt;b&gt;a&lt;/b&gt;</p>");
  });

  it("gives headings the levels below the section's, without a gap", () => {
    expect(render("# a\n\n#### b\n\n## c")).toBe("<h3>a</h3>\n<h4>b</h4>\n<h4>c</h4>");
  });

  it("leaves out a first heading that repeats the title above, and only that", () => {
    expect(render("# Taper\n\ntext", { titleAbove: "Taper" })).toBe("<p>text</p>");
    expect(render("# Tapers\n\ntext", { titleAbove: "Taper" })).toBe("<h3>Tapers</h3>\n<p>text</p>");
  });

  it("keeps full links without opener and referrer, and names other addresses", () => {
    expect(render("[a](https://example.org/b)")).toBe(
      '<p><a href="https://example.org/b" rel="noopener noreferrer">a</a></p>',
    );
    expect(render("[a](../b.csv)")).toBe("<p>a (../b.csv)</p>");
    expect(render("see notes.md")).toBe("<p>see notes.md</p>");
  });

  it("shows pictures from inside the page and pasted ones, and names others", () => {
    const attachments = { "shaft end.png": { "image/png": "iVBORw0KGgo=" } };
    expect(render("![a](data:image/png;base64,AA==)")).toBe(
      '<p><img src="data:image/png;base64,AA==" alt="a"></p>',
    );
    expect(render("![a](<attachment:shaft end.png>)", { attachments })).toBe(
      '<p><img src="data:image/png;base64,iVBORw0KGgo=" alt="a"></p>',
    );
    for (const address of [
      "https://example.org/a.png",
      "a.png",
      "attachment:other.png",
      "attachment:__proto__",
    ])
      expect(render(`![a](${address})`, { attachments })).toBe(
        `<p><span class="left-out">[picture not in this file: a ${address}]</span></p>`,
      );
  });

  it("marks the words of code it knows, and shows other code plain", () => {
    expect(render("```ts\nconst a = 1;\n```")).toContain('<span class="hljs-keyword">const</span>');
    expect(render("```cobol\nADD <1>\n```")).toContain("ADD &lt;1&gt;");
  });
});

describe("renderFormula(latex)", () => {
  it("takes a formula with dollar signs or without", () => {
    expect(renderFormula("$$x^2$$")).toBe(renderFormula("x^2"));
    expect(renderFormula("$x^2$")).toBe(renderFormula("x^2"));
  });

  it("shows a formula it cannot read, rather than fail", () => {
    expect(renderFormula("\\frac{")).toContain("katex-error");
  });
});
