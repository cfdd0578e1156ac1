import { describe, expect, it } from "vitest";
import { babbitt, babbitts } from "../../kernel-helpers/handbook/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const b23 = readReference("astm-b23-white-metal");
const cell = (number: number, column: string): string =>
  b23.rows.find((row) => row[0] === String(number))![b23.columns.indexOf(column)]!;

describe("babbitt(number)", () => {
  it.each(babbitts.map(({ number }) => number))(
    "carries the row of ASTM B23 alloy %i as published",
    (number) => {
      const alloy = babbitt(number);
      const numbers = {
        melting_F: alloy.solidus.in("degF"),
        liquidus_F: alloy.liquidus.in("degF"),
        pour_F: alloy.pouring.in("degF"),
        SG: alloy.density.si / 1000,
        brinell68: alloy.brinell,
        yield68_psi: alloy.yieldCold?.in("psi"),
        yield212_psi: alloy.yieldWarm?.in("psi"),
      };
      for (const [column, value] of Object.entries(numbers)) {
        const printed = cell(number, column);
        if (printed === "") expect(value).toBeUndefined();
        else expectClose(value!, Number(printed), { rel: 1e-9, because: `ASTM B23, ${column}` });
      }
      expect(alloy.tin.join("-")).toBe(cell(number, "Sn"));
      expect(alloy.antimony.join("-")).toBe(cell(number, "Sb"));
    },
  );
  it("stands in the order solidus, liquidus, pouring, so that what is poured is wholly molten", () => {
    for (const { solidus, liquidus, pouring } of babbitts) {
      expect(liquidus.kelvin).toBeGreaterThan(solidus.kelvin);
      expect(pouring.kelvin).toBeGreaterThan(liquidus.kelvin + 50);
    }
  });
  it("has a heat of melting between those of its metals, more with more antimony and copper", () => {
    // Tin alone 59.2 kJ/kg, lead alone 23.0: D. R. Lide, CRC Handbook (from memory).
    expect(babbitt(2).latentHeat.si).toBeGreaterThan(59200);
    expect(babbitt(3).latentHeat.si).toBeGreaterThan(babbitt(2).latentHeat.si);
    const by = (10 * 59.2 + 15 * 163 + 74.5 * 23 + 0.25 * 205) / 99.75;
    expectClose(babbitt(7).latentHeat.si, by * 1000, { rel: 1e-12, because: "the sum by hand" });
  });
  it("refuses a number that is not tabled, with those that are", () => {
    expect(() => babbitt(9)).toThrow("babbitt: must be one of ASTM B23 alloys 1, 2, 3, 4, 7, 8, 15, got 9");
  });
});
