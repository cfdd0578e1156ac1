import { describe, expect, it } from "vitest";
import { cellRaw, cellValue } from "../../../../kernel-helpers/live/grid/model/index.js";

describe("cellValue(raw, delimiter)", () => {
  it.each([
    [" 2.4373 ", "2.4373"],
    [' "light rust, filed"', "light rust, filed"],
    ['"he said ""rust"""', 'he said "rust"'],
    ['2.4375"', '2.4375"'],
    ['"open', '"open'],
    ["", ""],
  ])("%j says %j", (raw, value) => {
    expect(cellValue(raw, ",")).toBe(value);
  });
});

describe("cellRaw(value, old, delimiter, first)", () => {
  it("keeps the spaces round the old cell", () => {
    expect(cellRaw("2.4373", "  2.5O3 ", ",", false)).toBe("  2.4373 ");
  });

  it("puts quotes round a delimiter, and round a quote at the start", () => {
    expect(cellRaw("light rust, filed", " rust", ",", false)).toBe(' "light rust, filed"');
    expect(cellRaw('"a', "", ",", false)).toBe('"""a"');
    expect(cellRaw("light rust, filed", "", ";", false)).toBe("light rust, filed");
  });

  it("puts quotes round a # that would begin a remark", () => {
    expect(cellRaw("#1", "1", ",", true)).toBe('"#1"');
    expect(cellRaw("#1", "1", ",", false)).toBe("#1");
  });

  it("leaves quotes where there were some", () => {
    expect(cellRaw("scored", '"rust"', ",", false)).toBe('"scored"');
  });
});
