import { describe, expect, it } from "vitest";
import { type ForceFitClass, isoFit, standardForceFit } from "../../kernel-helpers/handbook/index.js";
import { inch } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

describe("standardForceFit(nominal, class)", () => {
  const { columns, rows } = readReference("ansi-b41-fn");
  it("gives every published row, the upper end of a step belonging to it", () => {
    for (const row of rows) {
      const of = (name: string) => Number(row[columns.indexOf(name)]);
      const fit = standardForceFit(inch(of("to_in")), row[columns.indexOf("class")] as ForceFitClass);
      const pairs = [
        [fit.low, "interf_min"],
        [fit.high, "interf_max"],
        [fit.hole.lower, "hole_lo"],
        [fit.hole.upper, "hole_hi"],
        [fit.shaft.lower, "shaft_lo"],
        [fit.shaft.upper, "shaft_hi"],
      ] as const;
      for (const [length, name] of pairs)
        expectClose(length.in("thou"), of(name), { rel: 1e-9, abs: 1e-9, because: "ANSI B4.1 as printed" });
    }
  });
  it("lies near the ISO fit it shares its grades with: FN2 is H7/s6", () => {
    const [fn, iso] = [standardForceFit(inch(2.4375), "FN2"), isoFit(inch(2.4375), "H7/s6")];
    expectClose(fn.high.in("thou"), -iso.least.in("thou"), { abs: 0.2, because: "both rounded to 0.1 thou" });
    expectClose(fn.low.in("thou"), -iso.most.in("thou"), { abs: 0.2, because: "both rounded to 0.1 thou" });
  });
  it("refuses what the table has not", () => {
    expect(() => standardForceFit(inch(3.2), "FN2")).toThrow("over 0.95 up to 3.15 in, got 3.2 in");
    expect(() => standardForceFit(inch(2), "FN6" as never)).toThrow("class must be FN1 to FN5, got FN6");
  });
});
