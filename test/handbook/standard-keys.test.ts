import { describe, expect, it } from "vitest";
import { standardKey, standardKeys } from "../../kernel-helpers/handbook/index.js";
import { inch, mm } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

/** "1-3/4", "5/16", "1" as printed. */
function printed(cell: string): number {
  const [whole, fraction] = cell.includes("-")
    ? cell.split("-")
    : cell.includes("/")
      ? ["0", cell]
      : [cell, "0/1"];
  const [top, bottom] = fraction!.split("/").map(Number);
  return Number(whole) + top! / bottom!;
}

describe("standardKey(diameter, standard, form)", () => {
  // Source: ANSI/ASME B17.1, as in Shigley & Nisbett, 9th edition, table 7-6, p. 391; the file is as printed.
  it("has every row of the published inch table, at both ends of its range", () => {
    const { rows, columns } = readReference("asme-b171-keys");
    expect(columns).toEqual(["over", "to_incl", "W", "H_square", "H_rect", "depth_square", "depth_rect"]);
    expect(rows.length).toBe(14);
    for (const [over, to, w, square, rectangular, depthSquare, depthRectangular] of rows)
      for (const d of [printed(over!) + 0.001, printed(to!)]) {
        const exact = { abs: 1e-12, because: "binary fractions" };
        const key = standardKey(inch(d), "ASME B17.1");
        expectClose(key.width.in("inch"), printed(w!), exact);
        expectClose(key.height.in("inch"), printed(square!), exact);
        expectClose(key.seatDepth.in("inch"), printed(depthSquare!), exact);
        if (rectangular === "") continue;
        const flat = standardKey(inch(d), "ASME B17.1", "rectangular");
        expectClose(flat.width.in("inch"), printed(w!), exact);
        expectClose(flat.height.in("inch"), printed(rectangular!), exact);
        expectClose(flat.seatDepth.in("inch"), printed(depthRectangular!), exact);
      }
  });
  // Source: DIN 6885 part 1, as in a public catalogue of gear units: b × h, t1, t2 for shafts over 38 to 200 mm.
  it.each([
    [44, 12, 8, 5, 3.3],
    [50, 14, 9, 5.5, 3.8],
    [58, 16, 10, 6, 4.3],
    [60, 18, 11, 7, 4.4],
    [75, 20, 12, 7.5, 4.9],
    [85, 22, 14, 9, 5.4],
    [95, 25, 14, 9, 5.4],
    [110, 28, 16, 10, 6.4],
    [130, 32, 18, 11, 7.4],
    [150, 36, 20, 12, 8.4],
    [170, 40, 22, 13, 9.4],
    [200, 45, 25, 15, 10.4],
    [22, 6, 6, 3.5, 2.8],
    [10, 3, 3, 1.8, 1.4],
  ])("gives a %s mm shaft the key %s × %s of the metric table", (d, b, h, t1, t2) => {
    const key = standardKey(mm(d), "ISO 773");
    const exact = { rel: 1e-12, because: "as printed" };
    expectClose(key.width.in("mm"), b, exact);
    expectClose(key.height.in("mm"), h, exact);
    expectClose(key.seatDepth.in("mm"), t1, exact);
    expectClose(key.hubDepth.in("mm"), t2, exact);
  });
  it("joins its ranges, and leaves a metric key a little clearance above", () => {
    for (const [standard, form] of [
      ["ASME B17.1", "square"],
      ["ASME B17.1", "rectangular"],
      ["ISO 773", undefined],
    ] as const) {
      const rows = standardKeys.filter(
        (key) => key.standard === standard && (form === undefined || key.form === form),
      );
      for (const [i, key] of rows.slice(1).entries()) expect(key.over.si).toBe(rows[i]!.toIncluding.si);
    }
    for (const { height, seatDepth, hubDepth } of standardKeys.filter((k) => k.standard === "ISO 773")) {
      const above = seatDepth.plus(hubDepth).minus(height).in("mm");
      expect(above).toBeGreaterThan(0.15);
      expect(above).toBeLessThan(0.45);
    }
  });
  it("says what it has none for", () => {
    expect(() => standardKey(inch(9), "ASME B17.1")).toThrow(
      /no square key for a shaft of 9 in; it goes from/,
    );
    expect(() => standardKey(inch(0.4), "ASME B17.1", "rectangular")).toThrow(/no rectangular key/);
    expect(() => standardKey(mm(300), "ISO 773")).toThrow(/ISO 773 has no key for a shaft of 300 mm/);
    expect(() => standardKey(mm(30), "BS 46" as never)).toThrow(/"ASME B17\.1" or "ISO 773", got "BS 46"/);
  });
});
