import { describe, expect, it } from "vitest";
import { readingsTable } from "../../../kernel-helpers/notebook/report/readings-table.js";

describe("readingsTable(name, text)", () => {
  it("takes remarks, titles, units and cells apart", () => {
    const table = readingsTable(
      "t",
      '\ufeff# by: micrometer\r\nstation [in],remark\r\n1.50,"rusty, worn"\r\n2,\r\n',
    )!;
    expect(table.remarks).toEqual(["by: micrometer"]);
    expect(table.rows).toBe(2);
    expect(table.block.caption).toBe("t, 2 rows");
    expect(table.block.columns).toEqual([
      { title: "station", unit: "in", align: "right" },
      { title: "remark", align: "left" },
    ]);
    expect(table.block.rows.map(({ cells }) => cells)).toEqual([
      ["1.50", "rusty, worn"],
      ["2", ""],
    ]);
  });

  it("puts a column with a word among its numbers on the left", () => {
    expect(readingsTable("t", "a\n1\n2.5O3\n")!.block.columns[0]!.align).toBe("left");
  });

  it("shows rows that are too short or too long as they are", () => {
    const { columns, rows } = readingsTable("t", "a,b\n1\n1,2,3\n")!.block;
    expect(columns.map(({ title }) => title)).toEqual(["a", "b", ""]);
    expect(rows.map(({ cells }) => cells)).toEqual([
      ["1", "", ""],
      ["1", "2", "3"],
    ]);
  });

  it("shows the first 500 rows of a long table, and knows how many there are", () => {
    const { block, rows } = readingsTable("t", `a\n${"1\n".repeat(100_000)}`)!;
    expect(block.rows.length).toBe(500);
    expect(rows).toBe(100_000);
  });

  it("returns nothing where no table can be made of the text", () => {
    expect(readingsTable("t", "")).toBeUndefined();
    expect(readingsTable("t", "# only a remark\n")).toBeUndefined();
    expect(readingsTable("t", 'a\n"left open')).toBeUndefined();
  });
});
