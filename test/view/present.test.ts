import { describe, expect, it } from "vitest";
import { degF, inch, lbf, measured, newton, thou } from "../../kernel-helpers/quantity/index.js";
import type { TableBlock } from "../../kernel-helpers/view/blocks.js";
import { present } from "../../kernel-helpers/view/present.js";

const tableOf = (value: unknown): TableBlock => present(value)!.blocks[0] as TableBlock;

describe("present(value)", () => {
  it("gives a presentation back as it is", () => {
    const presentation = { title: "Shaft", blocks: [{ type: "text", text: "Worn." }] };
    expect(present(presentation)).toBe(presentation);
  });
  it("makes a table of flat records, units from the keys, numbers to the right", () => {
    const records = [
      { "station [in]": 0.5, remark: "good", used: true },
      { "station [in]": -10, remark: null },
    ];
    expect(present(records)!.title).toBe("Table of 2 rows");
    const { columns, rows } = tableOf(records);
    expect(columns).toEqual([
      { title: "station", unit: "in", align: "right" },
      { title: "remark", align: "left" },
      { title: "used", align: "left" },
    ]);
    expect(rows.map((row) => row.cells)).toEqual([
      ["0.5", "good", "true"],
      ["−10", "", ""],
    ]);
  });
  it("gives a column of quantities the unit they are shown in, and leaves each its own where they differ", () => {
    const records = [
      { station: inch(1), wear: thou(3.5), load: lbf(200), at: degF(68), off: measured(inch(2), thou(1)) },
      { station: inch(2.25), wear: thou(5), load: newton(90), at: degF(70), off: undefined },
    ];
    const { columns, rows } = tableOf(records);
    expect(columns).toEqual([
      { title: "station", unit: "in", align: "right" },
      { title: "wear", unit: "thou", align: "right" },
      { title: "load", align: "right" },
      { title: "at", align: "right" },
      { title: "off", align: "right" },
    ]);
    expect(rows.map((row) => row.cells)).toEqual([
      ["1", "3.5", "200 lbf", "68 °F", "2.0000 ± 0.0020 in (95 %, k = 2.0)"],
      ["2.25", "5", "90 N", "70 °F", ""],
    ]);
  });
  it("shows a single record with values that have units one a line", () => {
    expect(present({ bore: inch(2), turns: 3, by: "file" })).toEqual({
      title: "3 values",
      blocks: [
        {
          type: "facts",
          facts: [
            { label: "bore", value: "2 in" },
            { label: "turns", value: "3" },
            { label: "by", value: "file" },
          ],
        },
      ],
    });
    expect(present({ turns: 3 })).toBeUndefined();
  });
  it("cuts a long list and says so", () => {
    const { blocks } = present(Array.from({ length: 501 }, (_, n) => ({ n })))!;
    expect((blocks[0] as TableBlock).rows).toHaveLength(500);
    expect(blocks[1]).toEqual({ type: "text", text: "Only the first 500 of 501 rows are shown." });
    expect(present(Array.from({ length: 500 }, (_, n) => ({ n })))!.blocks).toHaveLength(1);
  });
  it("has no look for anything else", () => {
    for (const value of [
      1,
      "text",
      [],
      [1, 2],
      [{}],
      [{ deep: { er: 1 } }],
      [{ f: () => 1 }],
      { title: "x" },
      [[1]],
    ])
      expect(present(value)).toBeUndefined();
    expect(present({ title: "x", blocks: [{ type: "hologram" }] })).toBeUndefined();
  });
});
