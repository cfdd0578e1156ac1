import { describe, expect, it } from "vitest";
import { checkPresentation } from "../../../kernel-helpers/notebook/report/check-presentation.js";
import { wearPresentation } from "./sample-input.js";

function withBlock(block: unknown): unknown {
  return { title: "t", blocks: [block] };
}

function withFigure(data: unknown, layout: unknown = {}): unknown {
  return withBlock({ type: "figure", alt: "a", figure: { data, layout } });
}

describe("checkPresentation(value)", () => {
  it("returns a presentation with every kind of block as it is", () => {
    const presentation = JSON.parse(JSON.stringify(wearPresentation()));
    expect(checkPresentation(presentation)).toEqual(presentation);
  });

  it("keeps that a card has a page of its own, and refuses another word for it", () => {
    const card = { title: "t", blocks: [], ownPage: true };
    expect(checkPresentation(card)).toEqual(card);
    expect(checkPresentation({ ...card, ownPage: "yes" })).toBeUndefined();
  });

  it("keeps a drawing's layout for a telephone, and refuses one that is no drawing", () => {
    const drawing = { width: 715, height: 80, shapes: [] };
    const narrow = { width: 350, height: 90, shapes: [] };
    const block = { type: "drawing", drawing, narrow, alt: "A hub" };
    expect(checkPresentation(withBlock(block))).toEqual(withBlock(block));
    expect(checkPresentation(withBlock({ ...block, narrow: "<svg>" }))).toBeUndefined();
    expect(checkPresentation(withBlock({ ...block, narrow: { ...narrow, width: -1 } }))).toBeUndefined();
  });

  it("drops fields it does not know", () => {
    const given = { title: "t", extra: 1, blocks: [{ type: "text", text: "x", html: "<b>" }] };
    expect(checkPresentation(given)).toEqual({ title: "t", blocks: [{ type: "text", text: "x" }] });
  });

  it.each([
    ["nothing", undefined],
    ["null", null],
    ["a text", "blocks"],
    ["a list", []],
    ["no title", { blocks: [] }],
    ["a title that is no text", { title: 1, blocks: [] }],
    ["no blocks", { title: "t" }],
    ["blocks that are no list", { title: "t", blocks: { length: 0 } }],
    ["a block that is null", withBlock(null)],
    ["a block of unknown type", withBlock({ type: "html", html: "<b>" })],
    ["a text in a list", withBlock({ type: "text", text: ["x"] })],
    ["a fact without value", withBlock({ type: "facts", facts: [{ label: "x" }] })],
    ["a note that is null", withBlock({ type: "facts", facts: [{ label: "x", value: "y", note: null }] })],
    [
      "a number in a cell",
      withBlock({ type: "table", columns: [{ title: "a", align: "left" }], rows: [{ cells: [1] }] }),
    ],
    ["a row too long", withBlock({ type: "table", columns: [], rows: [{ cells: ["x"] }] })],
    ["an unknown side", withBlock({ type: "table", columns: [{ title: "a", align: "justify" }], rows: [] })],
    ["an unknown mark", withBlock({ type: "table", columns: [], rows: [{ cells: [], mark: "x" }] })],
    ["half a row shown", withBlock({ type: "table", columns: [], rows: [], showRows: 0.5 })],
    ["a table stacked by a word", withBlock({ type: "table", columns: [], rows: [], stacked: "yes" })],
    ["an unknown outcome", withBlock({ type: "verdict", outcome: "perhaps", text: "x", because: "y" })],
    ["points that are no list", withBlock({ type: "caution", title: "x", points: "y" })],
    ["traces that are no list", withFigure({})],
    ["a layout that is a list", withFigure([], [])],
    ["a figure without text", withBlock({ type: "figure", figure: { data: [], layout: {} } })],
  ])("returns nothing for %s", (_what, value) => {
    expect(checkPresentation(value)).toBeUndefined();
  });

  it.each(["__proto__", "constructor", "prototype"])(
    "returns nothing for a figure with the key %s",
    (key) => {
      const trace = JSON.parse(`{"x":[{"${key}":{"polluted":1}}]}`);
      expect(checkPresentation(withFigure([trace]))).toBeUndefined();
      expect(checkPresentation(withFigure([], trace))).toBeUndefined();
    },
  );

  it("returns nothing for a figure nested without end", () => {
    const nested = JSON.parse(`${'{"a":'.repeat(1000)}1${"}".repeat(1000)}`);
    expect(checkPresentation(withFigure([nested]))).toBeUndefined();
    const lists = JSON.parse(`{"a":${"[".repeat(1000)}${"]".repeat(1000)}}`);
    expect(checkPresentation(withFigure([lists]))).toBeUndefined();
  });
});
