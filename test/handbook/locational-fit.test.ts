import { describe, expect, it } from "vitest";
import {
  isoFit,
  type LocationalFitClass,
  type RunningFitClass,
  standardLocationalFit,
  standardRunningFit,
  standardRunningLimits,
} from "../../kernel-helpers/handbook/index.js";
import { inch, mm } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

describe("standardLocationalFit(nominal, class)", () => {
  const { columns, rows } = readReference("ansi-b41-locational");
  it("gives every published clearance and interference, the upper end of a step belonging to it", () => {
    expect(rows.length).toBeGreaterThan(40);
    for (const row of rows) {
      const of = (name: string) => Number(row[columns.indexOf(name)]);
      const fit = standardLocationalFit(
        inch(of("to_in")),
        row[columns.indexOf("class")] as LocationalFitClass,
      );
      for (const [length, name] of [
        [fit.least, "least"],
        [fit.most, "most"],
      ] as const)
        expectClose(length.in("thou"), of(name), {
          rel: 1e-9,
          abs: 1e-9,
          because: "ANSI B4.1 as printed",
        });
    }
  });
  it("lies near the ISO fit it shares its letters with", () => {
    for (const [of, iso] of [
      ["LC2", "H7/h6"],
      ["LC5", "H7/g6"],
      ["LT3", "H7/k6"],
      ["LT5", "H7/n6"],
      ["LN2", "H7/p6"],
      ["LN3", "H7/r6"],
    ] as const) {
      const [ours, other] = [standardLocationalFit(inch(2.4375), of), isoFit(inch(2.4375), iso)];
      for (const end of ["least", "most"] as const)
        expectClose(ours[end].in("thou"), other[end].in("thou"), {
          abs: 0.25,
          because: "other size steps, both rounded to 0.1 thou",
        });
    }
  });
  it("shares hole grades and shaft g with the running fits: LC5 lies tighter than RC3, which has f", () => {
    const [lc, rc] = [standardLocationalFit(inch(2), "LC5"), standardRunningFit(inch(2), "RC3")];
    expectClose(rc.low.minus(lc.least).in("thou"), 0.8, { rel: 1e-6, because: "f − g = 1.2 − 0.4" });
    expectClose(rc.high.minus(lc.most).in("thou"), 0.8, { rel: 1e-6, because: "f − g = 1.2 − 0.4" });
  });
  it("has clearance for LC, interference for LN, and either for LT", () => {
    for (const size of [0.5, 1, 1.5, 2.4375, 4]) {
      for (const n of [1, 2, 3, 4, 5, 6, 7, 8, 9] as const)
        expect(standardLocationalFit(inch(size), `LC${n}`).least.si).toBeGreaterThanOrEqual(0);
      for (const n of [1, 2, 3] as const)
        expect(standardLocationalFit(inch(size), `LN${n}`).most.si).toBeLessThanOrEqual(1e-12);
      for (const n of [1, 2, 3, 4, 5, 6] as const) {
        const { least, most } = standardLocationalFit(inch(size), `LT${n}`);
        expect([least.si < 0, most.si > 0]).toEqual([true, true]);
      }
    }
  });
  it("gives an inch and a metric shop the same limits", () => {
    const [a, b] = [inch(2), mm(50.8)].map((size) => standardLocationalFit(size, "LT3"));
    expectClose(a!.most.si, b!.most.si, { rel: 1e-12, because: "the same size" });
    expect(b!.most.writtenIn).toBe("micrometre");
  });
  it("refuses what the tables have not", () => {
    expect(() => standardLocationalFit(inch(5), "LC1")).toThrow("over 0.40 up to 4.73 in, got 5 in");
    expect(() => standardLocationalFit(inch(2), "LC10" as never)).toThrow(/LN1 to LN3 .*got LC10/);
  });
});

describe("standardRunningLimits(nominal, class)", () => {
  const { columns, rows } = readReference("ansi-b41-rc-clearance");
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9])(
    "leaves between hole and shaft of RC%i the clearance printed in the table",
    (n) => {
      expect(rows.length).toBeGreaterThan(4);
      const of = `RC${n}` as RunningFitClass;
      for (const row of rows) {
        const fit = standardRunningLimits(inch(Number(row[1])), of);
        for (const [length, end] of [
          [fit.least, "min"],
          [fit.most, "max"],
        ] as const)
          expectClose(length.in("thou"), Number(row[columns.indexOf(`${of}_${end}`)]), {
            rel: 1e-9,
            because: "ANSI B4.1 as printed: the limits come from grades, not from these columns",
          });
        expectClose(fit.hole.upper.minus(fit.shaft.lower).si, fit.most.si, {
          rel: 1e-9,
          because: "hole less shaft",
        });
      }
    },
  );
  it("refuses a size or a class that is not in the table", () => {
    expect(() => standardRunningLimits(inch(5), "RC5")).toThrow("over 0.40 up to 4.73 in, got 5 in");
    expect(() => standardRunningLimits(inch(2), "RC10" as "RC1")).toThrow("RC1 to RC9, got RC10");
    expect(() => standardLocationalFit(inch(2), "LC10" as "LC1")).toThrow("LC10 and LC11 are not held");
  });
});
