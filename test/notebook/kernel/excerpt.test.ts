import { describe, expect, it } from "vitest";
import { excerpt } from "../../../kernel-helpers/notebook/kernel/excerpt.js";

const source = ["one", "two", "three", "four(five)", "six", "seven", "eight"].join("\n");

describe("excerpt(source, at, length)", () => {
  it("shows the line with two lines about it and carets under what is meant", () => {
    expect(excerpt(source, { line: 4, column: 6 }, 4)).toEqual([
      "  2 | two",
      "  3 | three",
      "> 4 | four(five)",
      "    |      ^^^^",
      "  5 | six",
      "  6 | seven",
    ]);
  });
  it("shows what there is at the first and the last line", () => {
    expect(excerpt("a", { line: 1, column: 1 })).toEqual(["> 1 | a", "    | ^"]);
  });
  it("repeats tabs, so that the caret stands under its character", () => {
    expect(excerpt("\ta\tb", { line: 1, column: 4 })[1]).toBe("    | \t \t^");
  });
  it("cuts the carets at the end of the line", () => {
    expect(excerpt("ab", { line: 1, column: 2 }, 50)[1]).toBe("    |  ^");
  });
  it("gives nothing for a line outside the source", () => {
    expect(excerpt(source, { line: 9, column: 1 })).toEqual([]);
  });
});
