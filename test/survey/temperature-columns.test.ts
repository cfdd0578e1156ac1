import { describe, expect, it } from "vitest";
import { quantitiesOf, readTable, TableFaults, temperaturesOf } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { errorOf } from "../support/faults-of.js";

const table = (...lines: string[]) =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name: "run-in", file: "run-in.csv" });

describe("temperaturesOf(table, name)", () => {
  it("reads a column on the scale of its header, each reading as it was written", () => {
    const warm = table("time [min],room [°C],pulley box [degF]", "0,18.5,64", "5,19,-", "10,-,101.3");
    expect(temperaturesOf(warm, "pulley box").map((t) => t?.toString())).toEqual([
      "64 °F",
      undefined,
      "101.3 °F",
    ]);
    expect(temperaturesOf(warm, "room")[0]!.toString()).toBe("18.5 °C");
    expectClose(temperaturesOf(warm, "pulley box")[0]!.kelvin, 290.927777777778, {
      rel: 1e-12,
      because: "64 °F = (64 − 32)·5/9 + 273.15 K",
    });
    expectClose(quantitiesOf(warm, "time", "time")[2]!.in("second"), 600, {
      rel: 1e-12,
      because: "ten minutes",
    });
  });
  it("keeps temperatures and their differences apart", () => {
    const both = table("room [degC],rise [K]", "20,5");
    expect(both.columns.map(({ dimension }) => dimension)).toEqual(["temperature", "temperature difference"]);
    expect(() => temperaturesOf(both, "rise")).toThrow(/must hold temperatures, got temperature differences/);
  });
  it("takes a cell with its own scale only where it is the column's", () => {
    expect(temperaturesOf(table("room [degF]", "65 °F"), "room")[0]!.toString()).toBe("65 °F");
    expect(errorOf("room [degF]\n20 °C").faults.map(({ mend }) => mend)).toEqual([
      "it is on another scale than its column: write 68",
    ]);
  });
  it("names what is no temperature, or below absolute zero", () => {
    expect(() => table("room [degF]", "6S")).toThrow(TableFaults);
    expect(errorOf("room [degC]\n-300").faults.map(({ mend }) => mend)).toEqual([
      "it lies below absolute zero: correct it",
    ]);
    expect(() => table("diameter [degC]", "20")).toThrow(TableFaults);
  });
});
