import { describe, expect, it } from "vitest";
import type { Block, Presentation } from "../../kernel-helpers/view/blocks.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";

const one = (block: Block): Presentation => ({ title: "Shaft", blocks: [block] });
const body = (block: Block): string => renderText(one(block)).split("\n").slice(3).join("\n");
const lines = (...text: string[]): string => text.join("\n");

describe("renderText(presentation)", () => {
  it("underlines the title and parts the blocks by an empty line", () => {
    const blocks: Block[] = [
      { type: "text", text: "One." },
      { type: "text", text: "Two." },
    ];
    expect(renderText({ title: "Shaft", blocks })).toBe(lines("Shaft", "═════", "", "One.", "", "Two."));
  });
  it("is the title alone where there are no blocks", () => {
    expect(renderText({ title: "2.4375 in", blocks: [] })).toBe("2.4375 in");
  });
  it("wraps long text between words at 96 characters", () => {
    const text = body({ type: "text", text: "worn journal ".repeat(20).trim() });
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(96);
    expect(text.replaceAll("\n", " ")).toBe("worn journal ".repeat(20).trim());
  });
  it("lines up the values of facts, notes under them", () => {
    const facts = [
      { label: "Nominal", value: "2.4375 in" },
      { label: "Worn to", value: "2.4332 ± 0.0002 in", note: "95 %" },
      { label: "At", value: "4.5 in" },
    ];
    expect(body({ type: "facts", facts })).toBe(
      lines("Nominal  2.4375 in", "Worn to  2.4332 ± 0.0002 in", "         (95 %)", "At       4.5 in"),
    );
  });
  it("sets a table in columns under titles and units, numbers to the right, marks before the row", () => {
    const table: Block = {
      type: "table",
      caption: "Readings",
      columns: [
        { title: "station", unit: "in", align: "right" },
        { title: "remark", align: "left" },
      ],
      rows: [
        { cells: ["0.5", "Ø checked"] },
        { cells: ["10.0", "suspect"], mark: "warn" },
        { cells: ["11.0", "left out"], mark: "bad" },
      ],
    };
    expect(body(table)).toBe(
      lines(
        "Readings",
        "   station  remark",
        "      [in]",
        "   ───────  ─────────",
        "       0.5  Ø checked",
        "!     10.0  suspect",
        "!!    11.0  left out",
      ),
    );
  });
  it("sets the rows of a stacked table one under the other where they are too wide, and only there", () => {
    const columns = [
      { title: "", align: "left" },
      { title: "sleeve", align: "left" },
      { title: "cost", unit: "thou", align: "left" },
      { title: "open", align: "left" },
    ] as const;
    const needs = "a thin tube shrunk on, and turned in place when it is cold, both ends set back a little";
    const rows = [{ cells: ["needs", needs, "9", ""], mark: "warn" as const }, { cells: ["hours", "8"] }];
    expect(body({ type: "table", columns, rows, stacked: true })).toBe(
      lines(
        "! needs",
        "  sleeve: a thin tube shrunk on, and turned in place when it is cold, both ends set back a",
        "    little",
        "  cost [thou]: 9",
        "hours",
        "  sleeve: 8",
      ),
    );
    const short = [{ cells: ["hours", "8", "9", ""] }];
    expect(body({ type: "table", columns, rows: short, stacked: true })).toContain("hours  8");
  });
  it("wraps a long caption like any other text", () => {
    const caption = "worn journal ".repeat(20).trim();
    const text = body({ type: "table", caption, columns: [{ title: "n", align: "right" }], rows: [] });
    const above = text.split("\n").slice(0, -2);
    expect(Math.max(...above.map((line) => line.length))).toBeLessThanOrEqual(96);
    expect(above.join(" ")).toBe(caption);
  });
  it("cuts a table at showRows and says how many there are", () => {
    const rows = ["1", "2", "3"].map((cell) => ({ cells: [cell] }));
    const text = body({ type: "table", columns: [{ title: "n", align: "right" }], rows, showRows: 1 });
    expect(text).toBe(lines("n", "─", "1", "… 2 more rows, 3 in all"));
  });
  it("keeps a row in line whose cell is missing, has a break, or an accent that combines", () => {
    const rows = [{ cells: ["a\nb", "1"] }, { cells: [] }, { cells: ["e\u0301", "22"] }];
    const columns = [
      { title: "x", align: "left" },
      { title: "y", align: "right" },
    ] as const;
    expect(body({ type: "table", columns, rows })).toBe(
      lines("x     y", "───  ──", "a b   1", "", "e\u0301    22"),
    );
  });
  it("says a verdict in words, the answer once", () => {
    const because = "Margin 1 thou.";
    expect(body({ type: "verdict", outcome: "no", text: "does not fit", because })).toBe(
      lines("VERDICT  NO: does not fit", "  Margin 1 thou."),
    );
    expect(body({ type: "verdict", outcome: "cannot tell yet", text: "cannot tell yet", because })).toBe(
      lines("VERDICT  CANNOT TELL YET", "  Margin 1 thou."),
    );
  });
  it("boxes a caution, all sides closed", () => {
    const points = ["Stand clear.", "Chain the pulley."];
    expect(body({ type: "caution", title: "Press", points })).toBe(
      lines(
        "┏━ CAUTION: Press ━━━━┓",
        "┃ • Stand clear.      ┃",
        "┃ • Chain the pulley. ┃",
        "┗━━━━━━━━━━━━━━━━━━━━━┛",
      ),
    );
  });
  it("names a figure and a warning", () => {
    const figure = { data: [], layout: {} };
    expect(body({ type: "figure", figure, alt: "a curve" })).toBe("[figure] a curve");
    expect(body({ type: "figure", figure, alt: "a curve", caption: "Fit" })).toBe("[figure] Fit (a curve)");
    expect(body({ type: "warning", text: "One angle only." })).toBe("WARNING: One angle only.");
  });
  it("obeys no control character, such as a terminal's colours", () => {
    expect(renderText({ title: "a\u001b[31mb", blocks: [] })).toBe("a\ufffd[31mb");
  });
});
