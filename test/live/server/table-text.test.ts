import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bytesOfTable, textOfTable } from "../../../kernel-helpers/live/server/table-text.js";

describe("textOfTable(bytes), bytesOfTable(text, before)", () => {
  it("give back any text, letter for letter", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        fc.pre(!text.startsWith("\uFEFF"));
        expect(textOfTable(bytesOfTable(text, undefined))).toBe(text);
      }),
    );
  });
  it("put the mark of UTF-8 before a text whose file had it, once", () => {
    const marked = Buffer.from("\uFEFFa");
    expect(bytesOfTable("b", marked)).toEqual(Buffer.from("\uFEFFb"));
    expect(bytesOfTable("\uFEFFb", marked)).toEqual(Buffer.from("\uFEFFb"));
    expect(bytesOfTable("b", Buffer.from("a"))).toEqual(Buffer.from("b"));
  });
});
