import { describe, expect, it } from "vitest";
import { isoFit, isoTolerance, isoZone } from "../../kernel-helpers/handbook/index.js";
import { isoDeviations, isoGrades, isoSteps } from "../../kernel-helpers/handbook/iso-tolerance-rows.js";
import { inch, mm } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const limits = (size: number, name: string): readonly [number, number] => {
  const { lower, upper } = isoZone(mm(size), name);
  return [lower, upper].map((d) => Math.round(10 * d.in("micrometre")) / 10) as never;
};
/** Geometric mean of a step; of the first 1 to 3 mm, as the standard says. */
const meanOf = (step: number): number => Math.sqrt((step === 0 ? 1 : isoSteps[step - 1]!) * isoSteps[step]!);

describe("isoTolerance(nominal, grade)", () => {
  const published = readReference("iso-286-it");
  it.each([5, 6, 7, 8, 9, 10, 11])(
    "is the published IT%i in every step, whose end belongs to it",
    (grade) => {
      const [over, to, widths] = ["over_mm", "to_mm", `IT${grade}`].map((name) => published.numbers(name));
      widths!.forEach((width, i) => {
        const bound = { rel: 1e-12, because: "ISO 286-1, table 1, as printed" };
        expectClose(isoTolerance(mm(to![i]!), grade).in("mm"), width, bound);
        expectClose(isoTolerance(mm(over![i]! + 0.01), grade).in("mm"), width, bound);
      });
    },
  );
  // ISO 286-1:1988, annex A: i = 0.45 D^(1/3) + 0.001 D; IT5 7i, then five grades to a factor of ten.
  const factors: Readonly<Record<number, number>> = {
    5: 7,
    6: 10,
    7: 16,
    8: 25,
    9: 40,
    10: 64,
    11: 100,
    12: 160,
    13: 250,
    14: 400,
    15: 640,
    16: 1000,
    17: 1600,
    18: 2500,
  };
  it("follows the formula of its making from IT5 to IT18, to rounding", () => {
    for (const [grade, factor] of Object.entries(factors))
      isoSteps.forEach((end, step) => {
        const d = meanOf(step);
        const width = factor * (0.45 * Math.cbrt(d) + 0.001 * d);
        // The standard rounds to 1 below 100 µm, to 5 or 10 and coarser above, and smooths the series by hand.
        expectClose(isoTolerance(mm(end), Number(grade)).in("micrometre"), width, {
          // The first step was rounded up by as much as a sixth.
          rel: step === 0 ? 0.16 : 0.05,
          abs: 0.6,
          because: "rounded and smoothed as ISO 286-1:1988, table 6, allows",
        });
      });
  });
  it("follows IT1 = 0.8 + 0.020 D, and grows from grade to grade and from step to step", () => {
    isoSteps.forEach((end, step) => {
      expectClose(isoTolerance(mm(end), 1).in("micrometre"), 0.8 + 0.02 * meanOf(step), {
        rel: 0.2,
        abs: 0.5,
        because: "given to half a micrometre and smoothed",
      });
      for (let grade = 2; grade <= 18; grade++)
        expect(isoGrades[grade]![step]!).toBeGreaterThan(isoGrades[grade - 1]![step]!);
      if (step > 0)
        for (let grade = 1; grade <= 18; grade++)
          expect(isoGrades[grade]![step]!).toBeGreaterThanOrEqual(isoGrades[grade]![step - 1]!);
    });
  });
  it("refuses a size or a grade that the table has not", () => {
    expect(() => isoTolerance(mm(501), 7)).toThrow(
      "isoTolerance: nominal must be over 0 up to 500 mm, got 501 mm",
    );
    expect(() => isoTolerance(mm(0), 7)).toThrow("over 0 up to 500 mm");
    expect(() => isoTolerance(mm(60), 19)).toThrow("grade must be 1 to 18, got 19");
  });
});

describe("isoZone(nominal, name)", () => {
  // Shigley & Nisbett, Mechanical Engineering Design, 9th edition, examples 7-7 and 7-8 (from memory).
  it("gives the limits of the textbook's loose running fit, 34 mm H11/c11", () => {
    expect(limits(34, "H11")).toEqual([0, 160]);
    expect(limits(34, "c11")).toEqual([-280, -120]);
  });
  it("gives those of the medium drive fit on 2 in, H7/s6, to the ten-thousandth it is printed to", () => {
    const shaft = isoZone(inch(2), "s6");
    const bound = {
      abs: 0.00011,
      because: "printed from inch tables rounded to 0.0001 in, two of them added",
    };
    expectClose(shaft.smallest.in("inch"), 2.0017, { ...bound, abs: 0.0005 });
    expectClose(isoZone(inch(2), "H7").largest.in("inch"), 2.001, { abs: 0.0002, because: bound.because });
  });
  // ISO 286-2, limits of holes and shafts, as printed in every shop table (from memory).
  it.each([
    [60, "f7", -60, -30],
    [60, "g6", -29, -10],
    [60, "h6", -19, 0],
    [60, "k6", 2, 21],
    [60, "m6", 11, 30],
    [60, "n6", 20, 39],
    [60, "p6", 32, 51],
    [60, "r6", 41, 60],
    [60, "s6", 53, 72],
    [60, "JS7", -15, 15],
    [60, "K7", -21, 9],
    [60, "M7", -30, 0],
    [60, "N7", -39, -9],
    [60, "P7", -51, -21],
    [60, "F8", 30, 76],
    [40, "K7", -18, 7],
    [40, "N7", -33, -8],
    [40, "P7", -42, -17],
    [40, "N9", -62, 0],
    [300, "M6", -41, -9],
    [60, "k9", 0, 74],
  ] as const)("%i mm %s lies from %i to %i µm", (size, name, low, high) => {
    expect(limits(size, name)).toEqual([low, high]);
  });
  // ISO 286-1:1988, annex A: deviations by formula.
  const formulas: Readonly<Record<string, (d: number, step: number) => number>> = {
    d: (d) => 16 * d ** 0.44,
    e: (d) => 11 * d ** 0.41,
    f: (d) => 5.5 * d ** 0.41,
    g: (d) => 2.5 * d ** 0.34,
    m: (_, step) => isoGrades[7]![step]! - isoGrades[6]![step]!,
    n: (d) => 5 * d ** 0.34,
  };
  it.each(Object.keys(formulas))("holds %s to the formula it was made by", (letter) => {
    isoDeviations[letter as "d"].forEach(([, deviation], step) => {
      // The first step was smoothed by hand, by 2 µm.
      expectClose(deviation, formulas[letter]!(meanOf(step), step), {
        rel: 0.06,
        abs: step === 0 ? 2 : 1,
        because: "rounded to the micrometre and smoothed",
      });
    });
  });
  it.each(["a", "b", "c", "r", "s"] as const)("holds %s, given by finer steps, to its formula", (letter) => {
    const rows = isoDeviations[letter];
    rows.forEach(([end, deviation], i) => {
      const d = Math.sqrt(end * (i === 0 ? 1 : rows[i - 1]![0]));
      const step = isoSteps.findIndex((to) => end <= to);
      const p = isoDeviations.p[step]![1];
      const s = d <= 50 ? isoGrades[8]![step]! + 1 : isoGrades[7]![step]! + 0.4 * d;
      const by = {
        a: d <= 120 ? 265 + 1.3 * d : 3.5 * d,
        b: d <= 160 ? 140 + 0.85 * d : 1.8 * d,
        c: d <= 40 ? 52 * d ** 0.2 : 95 + 0.8 * d,
        r: Math.sqrt(p * s),
        s,
      }[letter];
      expectClose(deviation, by, {
        rel: letter === "c" && d <= 40 ? 0.14 : 0.06,
        abs: 2.5,
        because: "rounded to 10 µm (a to c) or smoothed",
      });
    });
  });
  it("keeps a hole's zone opposite its shaft's", () => {
    for (const letter of ["d", "e", "f", "g", "h"])
      for (const size of [2, 24, 90, 260]) {
        const [low, high] = limits(size, `${letter}8`);
        expect(limits(size, `${letter.toUpperCase()}8`).map((v) => v + 0)).toEqual([-high + 0, -low + 0]);
      }
  });
  it("refuses what is no zone", () => {
    expect(() => isoZone(mm(60), "7h")).toThrow('e.g. "h7", got "7h"');
    expect(() => isoZone(mm(60), "q7")).toThrow('got "q7"');
    expect(() => isoZone(mm(60), "Js7")).toThrow('got "Js7"');
    expect(() => isoZone(mm(60), "K9")).toThrow("K is given up to grade 8 only, got K9");
    expect(() => isoZone(mm(0.5), "a11")).toThrow("a is not used below 1 mm");
  });
});

describe("isoFit(nominal, name)", () => {
  it("joins hole and shaft: clearance, transition, interference", () => {
    const of = (name: string) => {
      const { least, most, type } = isoFit(mm(60), name);
      return [Math.round(least.in("micrometre")), Math.round(most.in("micrometre")), type];
    };
    expect(of("H7/h6")).toEqual([0, 49, "clearance"]);
    expect(of("H7/k6")).toEqual([-21, 28, "transition"]);
    expect(of("H7/s6")).toEqual([-72, -23, "interference"]);
  });
  it("gives the same interference for the fit turned round by the delta rule: H7/p6 and P7/h6", () => {
    for (const size of [5, 24, 60, 90, 300]) {
      const [a, b] = [isoFit(mm(size), "H7/p6"), isoFit(mm(size), "P7/h6")];
      expectClose(a.least.si, b.least.si, { rel: 1e-9, because: "what the delta is for" });
      expectClose(a.most.si, b.most.si, { rel: 1e-9, abs: 1e-12, because: "what the delta is for" });
    }
  });
  it("refuses a pair the wrong way round", () => {
    expect(() => isoFit(mm(60), "h6/H7")).toThrow("the hole's capital stands first");
    expect(() => isoFit(mm(60), "H7")).toThrow('must be a hole and a shaft, e.g. "H7/f7", got "H7"');
  });
});
