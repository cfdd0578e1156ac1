import { describe, expect, it } from "vitest";
import { pastedBlock } from "../../../../kernel-helpers/live/grid/model/index.js";

describe("pastedBlock(text, holds)", () => {
  it("takes rows of a spreadsheet, parted by tabs", () => {
    expect(pastedBlock("1\t2.4373\trust, filed\r\n4\t\t\r\n", "numbers")).toEqual([
      ["1", "2.4373", "rust, filed"],
      ["4", "", ""],
    ]);
  });

  it("takes rows parted by commas, with quotes", () => {
    expect(pastedBlock('1,2.4373,"rust, filed"\n4,2.4371,', "numbers")).toEqual([
      ["1", "2.4373", "rust, filed"],
      ["4", "2.4371", ""],
    ]);
  });

  it("takes a column", () => {
    expect(pastedBlock("2.4373\n2.4371\n", "numbers")).toEqual([["2.4373"], ["2.4371"]]);
  });

  it("parts no decimal commas", () => {
    expect(pastedBlock("2,4373\n2,4371\n", "numbers")).toEqual([["2,4373"], ["2,4371"]]);
    expect(pastedBlock("2,4373", "numbers")).toBeUndefined();
  });

  it("leaves one cell, and words with commas, to be pasted as text", () => {
    expect(pastedBlock("2.4373", "numbers")).toBeUndefined();
    expect(pastedBlock("rust, filed", "words")).toBeUndefined();
    expect(pastedBlock("", "numbers")).toBeUndefined();
  });

  it("takes one row of numbers apart", () => {
    expect(pastedBlock("1,2.4373,2.4371", "numbers")).toEqual([["1", "2.4373", "2.4371"]]);
  });
});
