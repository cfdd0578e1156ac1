import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Mass } from "../../kernel-helpers/quantity/index.js";
import { openRebuild } from "../../kernel-helpers/record/index.js";
import { readWithLimits } from "../../kernel-helpers/record/read-with-limits.js";
import { expectClose } from "../support/expect-close.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const rebuildWith = (more: object): ReturnType<typeof openRebuild> => {
  const json = { schema: 1, title: "Shaft", units: "inch", ...more };
  const folder = temporaryFolder({ "rebuild.json": JSON.stringify(json) });
  return openRebuild({ folder: join(folder), sheet: "01-intake" });
};

describe("a quantity with its limits", () => {
  it.each([
    ["180 ± 10 lb", "180 lb", 10],
    ["180 lb ± 10 lb", "180 lb", 10],
    ["180 +- 10 lb", "180 lb", 10],
    ["180 +/- 8 oz", "180 oz", 0.5],
    ["180 lb ± 8 oz", "180 lb", 0.5],
  ])("%s is read", (text, value, limits) => {
    const found = readWithLimits(text);
    expect(found.value).toBe(value);
    expectClose((found.limits as Mass).in("pound"), limits, {
      rel: 1e-12,
      because: "unit factors are exact",
    });
  });
  it("reads fractions of both, and leaves a text without ± alone", () => {
    expect(readWithLimits("2 7/16 ± 1/32 in").value).toBe("2 7/16 in");
    expect(readWithLimits("1e-3 in")).toEqual({ value: "1e-3 in" });
  });
  it.each([
    ["± 10 lb", /a value and one ±/],
    ["180 lb ±", /a value and one ±/],
    ["180 ± 0 lb", /must be above 0/],
    ["180 lb ± 10 in", /of one kind/],
    ["65 ± 2 °F", /limits of a temperature/],
    ["180 ± 10", /has no unit/],
  ])("refuses %s", (text, message) => {
    expect(() => readWithLimits(text)).toThrow(message);
  });
  it("is a measured value with u = a/√3, and its middle for a sheet that asks for the quantity", () => {
    const rebuild = rebuildWith({
      quantities: { mass: "180 ± 10 lb" },
      dimensions: { gap: "0.060 in ± 0.003 in" },
    });
    const mass = rebuild.measured("mass", "mass");
    const exact = { rel: 1e-12, because: "identity; rounding only" };
    expectClose(mass.standardUncertainty.in("pound"), 10 / Math.sqrt(3), exact);
    expect(rebuild.quantity("mass", "mass").in("pound")).toBe(180);
    expectClose(rebuild.measured("gap", "length").standardUncertainty.in("thou"), 3 / Math.sqrt(3), exact);
  });
  it("is refused where none is given, with what to write", () => {
    const rebuild = rebuildWith({ quantities: { mass: "180 lb" } });
    expect(() => rebuild.measured("mass", "mass")).toThrow(/without limits, 180 lb; write how far/);
    expect(() => rebuild.measured("weight", "mass")).toThrow(/gives no "weight"/);
    expect(() => rebuild.measured("mass", "force")).toThrow(/is a mass, but a force was expected/);
  });
  it("is among the faults of the file where it cannot be read", () => {
    expect(() => rebuildWith({ quantities: { mass: "180 lb ± 10 in" } })).toThrow(
      /quantities.mass: .*of one kind/,
    );
  });
});
