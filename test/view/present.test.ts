import { describe, expect, it } from "vitest";
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
