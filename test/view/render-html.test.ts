import { Window } from "happy-dom";
import { describe, expect, it } from "vitest";
import type { Block, FigureBlock, Presentation } from "../../kernel-helpers/view/blocks.js";
import type { Drawing } from "../../kernel-helpers/view/drawing/drawing.js";
import { renderHtml } from "../../kernel-helpers/view/render-html.js";
import { viewStyle } from "../../kernel-helpers/view/style.js";

const options = { picture: ({ alt }: FigureBlock) => `<img alt="${alt.length}">`, withStyle: false };
const html = (...blocks: Block[]): string => renderHtml({ title: "Shaft", blocks }, options);

/** The page a browser makes of it: texts of the elements that match. */
function texts(fragment: string, selector: string): readonly string[] {
  const { document } = new Window();
  document.body.innerHTML = fragment;
  return [...document.querySelectorAll(selector)].map((element) => element.textContent.trim());
}

const table: Block = {
  type: "table",
  caption: "Readings",
  columns: [
    { title: "station", unit: "in", align: "right" },
    { title: "remark", align: "left" },
  ],
  rows: [{ cells: ["0.5", "good"] }, { cells: ["1.0", "left out"], mark: "bad" }, { cells: ["1.5"] }],
};

describe("renderHtml(presentation, options)", () => {
  it("is a section named by its title", () => {
    expect(html({ type: "text", text: "Worn." })).toBe(
      `<section class="jb" aria-label="Shaft">\n<h4 class="jb-title">Shaft</h4>\n<p>Worn.</p>\n</section>`,
    );
  });
  it("marks a card that is printed on a page of its own, and no other", () => {
    const card: Presentation = { title: "Card", blocks: [], ownPage: true };
    expect(renderHtml(card, options)).toContain(`<section class="jb jb-page"`);
    expect(renderHtml({ ...card, ownPage: false }, options)).toContain(`<section class="jb" `);
  });
  it("sets the title as a heading of the level asked for", () => {
    const presentation: Presentation = { title: "Shaft", blocks: [] };
    expect(renderHtml(presentation, { ...options, headingLevel: 2 })).toContain(
      `<h2 class="jb-title">Shaft</h2>`,
    );
    for (const headingLevel of [0, 7, 2.5, Number.NaN])
      expect(() => renderHtml(presentation, { ...options, headingLevel })).toThrow(
        /renderHtml: headingLevel must be a whole number from 1 to 6, got/,
      );
  });
  it("brings the style sheet only when asked", () => {
    const presentation: Presentation = { title: "Shaft", blocks: [] };
    const styled = renderHtml(presentation, { ...options, withStyle: true });
    expect(styled).toBe(`<style>${viewStyle}</style>\n${renderHtml(presentation, options)}`);
  });
  it("shows a drawing as an image with its size and a text for those who cannot see it", () => {
    const fragment = html({
      type: "drawing",
      drawing: {
        width: 120,
        height: 80,
        shapes: [{ type: "line", from: [9, 9], to: [60, 60], pen: "thin" }],
      },
      alt: 'A "line"',
      caption: "Line.",
    });
    const { document } = new Window();
    document.body.innerHTML = fragment;
    const image = document.querySelector("figure.jb-drawing img")!;
    expect(image.getAttribute("src")).toMatch(/^data:image\/svg\+xml;charset=utf-8,%3Csvg/);
    expect(["alt", "width", "height"].map((name) => image.getAttribute(name))).toEqual([
      'A "line"',
      "120",
      "80",
    ]);
    expect(texts(fragment, "figcaption")).toEqual(["Line."]);
  });
  it("lets a drawing shrink until its smallest letters are 9 px, and then scroll without its caption", () => {
    const wide = (width: number, size: "small" | "normal"): Window["document"] => {
      const { document } = new Window();
      document.body.innerHTML = html({
        type: "drawing",
        drawing: { width, height: 80, shapes: [{ type: "text", at: [9, 40], text: "hub", size }] },
        alt: "A hub",
        caption: "Hub.",
      });
      return document;
    };
    const document = wide(1200, "small");
    const sheet = document.querySelector("figure > .jb-fit[tabindex='0']")!;
    expect(sheet.querySelector("img")!.getAttribute("style")).toBe("--w:982px"); // 1200·9/11
    expect(sheet.querySelector("figcaption")).toBeNull();
    expect(document.querySelector("figure > figcaption")!.textContent).toBe("Hub.");
    expect(wide(1200, "normal").querySelector("img")!.getAttribute("style")).toBe("--w:831px"); // 1200·9/13
    expect(wide(360, "small").querySelector(".jb-fit")).toBeNull();
  });
  it("shows a second drawing on a telephone where the first cannot shrink to it: the block's own, or the same closed up", () => {
    const drawn = (width: number, narrow?: Drawing): Element | null => {
      const { document } = new Window();
      const shapes = [{ type: "text", at: [9, 40], text: "hub", size: "small" }] as const;
      const drawing = { width, height: 80, shapes };
      const own = narrow === undefined ? {} : { narrow };
      document.body.innerHTML = html({ type: "drawing", drawing, ...own, alt: "A hub" });
      return document.querySelector("figure > picture > source") as unknown as Element | null;
    };
    const closer = drawn(715)!;
    expect(closer.getAttribute("media")).toBe("screen and (max-width:700px)");
    // At 300 px its small letters are 9 px high: 300·11/9.
    expect(Number(closer.getAttribute("width"))).toBeLessThanOrEqual(366);
    // A space would end the address, a comma at its end too.
    expect(closer.getAttribute("srcset")).toMatch(/^data:image\/svg\+xml;charset=utf-8,%3Csvg\S+[^,\s]$/);
    const own = drawn(715, { width: 350, height: 200, shapes: [] })!;
    expect(["width", "height"].map((name) => own.getAttribute(name))).toEqual(["350", "200"]);
    expect(drawn(360)).toBeNull();
  });
  it("keeps a number with its unit and uncertainty on one line, in facts and cells", () => {
    const facts = [{ label: "Worn to", value: "2.4332 ± 0.0002 in (95 %, k = 2.0)" }];
    const fragment = html({ type: "facts", facts });
    expect(texts(fragment, "dl dd")[0]!.split(" ")).toEqual([
      "2.4332",
      "±\u00a00.0002\u00a0in",
      "(95\u00a0%,\u00a0k\u00a0=\u00a02.0)",
    ]);
  });
  it("lists facts as terms and values, the note inside the value", () => {
    const facts = [{ label: "Worn to", value: "2.4332 in", note: "95 %" }];
    const fragment = html({ type: "facts", facts });
    expect(texts(fragment, "dl dt")).toEqual(["Worn to"]);
    expect(texts(fragment, "dl dd small")).toEqual(["95 %"]);
  });
  it("makes a table with caption, heads, a row of units and a cell for each column", () => {
    const fragment = html(table);
    expect(texts(fragment, "caption")).toEqual(["Readings"]);
    expect(texts(fragment, "thead th[scope=col]")).toEqual(["station", "remark"]);
    expect(texts(fragment, "thead .jb-unit")).toEqual(["in", ""]);
    expect(texts(fragment, "tbody td")).toEqual(["0.5", "good", "1.0", "left out", "1.5", ""]);
    expect(texts(fragment, "tbody td.jb-r")).toEqual(["0.5", "1.0", "1.5"]);
    expect(texts(fragment, "tr.jb-bad td")).toEqual(["1.0", "left out"]);
    expect(fragment).not.toContain("<details>");
  });
  it("keeps each cell of a column of short words on one line, and lets longer ones wrap", () => {
    const columns = [
      { title: "state of the band", align: "left" },
      { title: "remark", align: "left" },
    ] as const;
    const rows = [{ cells: ["as made", "worn"] }, { cells: ["worn", "pits from lying wet"] }];
    const fragment = html({ type: "table", columns, rows, showRows: 1 });
    expect(texts(fragment, "td.jb-w")).toEqual(["as made", "worn"]);
    expect(viewStyle).toMatch(/td:is\([^)]*\.jb-w\)\{white-space:nowrap\}/);
  });
  it("gives a column room for its longest cell, and for its title on two lines", () => {
    const columns = [{ title: "smallest reading", align: "right" }] as const;
    const widths = (cell: string): string[] =>
      html({ type: "table", columns, rows: [{ cells: [cell] }] }).match(/width:[\d.]+ch/g)!;
    expect(widths("2.4319")).toEqual(["width:11ch"]);
    expect(widths("2.43417 ± 0.00021")).toEqual(["width:20ch"]);
  });
  it("names every cell after its column and unit where rows may stand by themselves, a first one in words not", () => {
    const columns = [
      { title: "cut", align: "left" },
      { title: "depth <a>", unit: "thou", align: "right" },
      { title: "", align: "left" },
    ] as const;
    const fragment = html({ type: "table", columns, rows: [{ cells: ["1", "4", "all"] }], stacked: true });
    const { document } = new Window();
    document.body.innerHTML = fragment;
    const names = [...document.querySelectorAll(".jb-stack tbody td")].map((td) => td.getAttribute("data-h"));
    expect(names).toEqual(["cut: ", "depth <a> [thou]: ", ""]);
    // A bare number needs its column's head; words stand as a heading.
    document.body.innerHTML = html({
      type: "table",
      columns,
      rows: [{ cells: ["first cut", "4", "all"] }],
      stacked: true,
    });
    expect(document.querySelector(".jb-stack tbody td")!.getAttribute("data-h")).toBeNull();
    const turned = [...columns].reverse();
    const travels = html({
      type: "table",
      columns: turned.slice(1),
      rows: [{ cells: ["1", "4"] }],
      stacked: true,
    });
    expect(travels).toContain('data-h="depth &lt;a&gt; [thou]: "');
    expect(html({ type: "table", columns, rows: [] })).not.toContain("jb-stack");
  });
  it("has no row of units where no column has one", () => {
    const columns = [{ title: "remark", align: "left" }] as const;
    expect(texts(html({ type: "table", columns, rows: [] }), "thead tr")).toHaveLength(1);
  });
  it("folds the rows past showRows, under the same heads, none lost and none twice", () => {
    const fragment = html({ ...table, showRows: 1 });
    expect(texts(fragment, ".jb-scroll > table tbody tr")).toEqual(["0.5good"]);
    expect(texts(fragment, "details summary")).toEqual(["2 more rows, 3 in all"]);
    expect(texts(fragment, "details tbody td:first-child")).toEqual(["1.0", "1.5"]);
    expect(texts(fragment, "details th")).toEqual(["station", "remark"]);
  });
  it("puts the picture in a figure with its caption", () => {
    const figure = { data: [], layout: {} };
    expect(html({ type: "figure", figure, alt: "curve", caption: "Fit" })).toContain(
      `<figure><img alt="5"><figcaption>Fit</figcaption></figure>`,
    );
  });
  it("says a verdict in words and signs, not by colour alone", () => {
    const because = "Margin 1 thou.";
    const answers = (["yes", "no", "cannot tell yet"] as const).map((outcome) =>
      texts(
        html({ type: "verdict", outcome, text: "fits", because }),
        "[role=note][aria-label=Verdict] strong",
      ),
    );
    expect(answers.flat()).toEqual(["✓ Yes: fits", "✗ No: fits", "? Cannot tell yet: fits"]);
    const same = html({ type: "verdict", outcome: "cannot tell yet", text: "cannot tell yet", because });
    expect(texts(same, "strong")).toEqual(["? Cannot tell yet"]);
  });
  it("names a caution and a warning as such", () => {
    const fragment = html(
      { type: "caution", title: "Press", points: ["Stand clear.", "Chain it."] },
      { type: "warning", text: "One angle." },
    );
    expect(texts(fragment, "[role=note][aria-label=Caution] strong")).toEqual(["CAUTION: Press"]);
    expect(texts(fragment, ".jb-caution li")).toEqual(["Stand clear.", "Chain it."]);
    expect(texts(fragment, "p.jb-warning")).toEqual(["Warning: One angle."]);
  });
  it("escapes every text it is given", () => {
    const words = `"><script>alert(1)</script><i a='`;
    const hostile: Block[] = [
      { type: "text", text: words },
      { type: "facts", facts: [{ label: words, value: words, note: words }] },
      {
        type: "table",
        caption: words,
        columns: [{ title: words, unit: words, align: "left" }],
        rows: [{ cells: [words] }],
      },
      { type: "figure", figure: { data: [], layout: {} }, alt: words, caption: words },
      { type: "verdict", outcome: "no", text: words, because: words },
      { type: "caution", title: words, points: [words] },
      { type: "warning", text: words },
    ];
    const fragment = renderHtml({ title: words, blocks: hostile }, options);
    expect(fragment).not.toMatch(/<script|<i /);
    // Title twice, text, fact 3, table's caption twice, head, unit, cell, figure's caption, verdict 2, caution 2, warning.
    expect(fragment.split("&lt;script&gt;alert(1)&lt;/script&gt;")).toHaveLength(1 + 17);
    expect(texts(fragment, "tbody td, figcaption, .jb-caution li")).toEqual([words, words, words]);
  });
});
