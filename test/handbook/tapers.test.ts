import { describe, expect, it } from "vitest";
import {
  brownSharpeRows,
  brownSharpeTapers,
  jarnoTaper,
  morseRows,
  morseTapers,
  standardTapers,
} from "../../kernel-helpers/handbook/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

describe("morseRows", () => {
  // Source: test/reference/tapers-morse.csv, header there.
  const printed = readReference("tapers-morse");
  it("hold the printed table digit by digit", () => {
    expect(morseRows.map(({ number }) => number)).toEqual(printed.numbers("no"));
    expect(morseRows.map(({ largeEnd }) => largeEnd)).toEqual(printed.numbers("A_large_in"));
    expect(morseRows.map(({ smallEnd }) => smallEnd)).toEqual(printed.numbers("D_small_in"));
    expect(morseRows.map(({ length }) => length)).toEqual(printed.numbers("length_in"));
    expect(morseRows.map(({ taperPerFoot }) => taperPerFoot)).toEqual(printed.numbers("tpf_handbook"));
  });
  it("have the ratio 1:x that ISO 296 prints", () => {
    printed.numbers("ratio_1_in").forEach((ratio, i) => {
      expectClose(1 / morseTapers[i]!.taper, ratio, { rel: 4e-5, because: "the ratio has 5 printed digits" });
    });
  });
  it("have the printed half angle, so the taper is on diameter", () => {
    printed.numbers("half_angle_deg_seen").forEach((angle, i) => {
      const half = (Math.atan(morseTapers[i]!.taper / 2) * 180) / Math.PI;
      expectClose(half, angle, { abs: 6e-5, because: "4 printed decimals" });
    });
  });
});

describe("brownSharpeRows", () => {
  // Source: test/reference/tapers-brown-sharpe.csv, header there.
  const printed = readReference("tapers-brown-sharpe");
  it("hold the printed table digit by digit", () => {
    expect(brownSharpeRows.map(({ number }) => number)).toEqual(printed.numbers("no"));
    expect(brownSharpeRows.map(({ largeEnd }) => largeEnd)).toEqual(printed.numbers("large_in"));
    expect(brownSharpeRows.map(({ smallEnd }) => smallEnd)).toEqual(printed.numbers("small_in"));
    expect(brownSharpeRows.map(({ length }) => length)).toEqual(printed.numbers("length_in"));
    expect(brownSharpeRows.map(({ taperPerFoot }) => taperPerFoot)).toEqual(printed.numbers("tpf"));
  });
  it("have the printed half angle", () => {
    printed.numbers("half_angle_deg").forEach((angle, i) => {
      const half = (Math.atan(brownSharpeTapers[i]!.taper / 2) * 180) / Math.PI;
      expectClose(half, angle, { abs: 1.6e-4, because: "tpf and angle are each rounded to 4 decimals" });
    });
  });
});

describe("standardTapers", () => {
  it("agree with their own ends and length", () => {
    for (const { name, taper, largeEnd, smallEnd, length } of standardTapers) {
      if (largeEnd === undefined) continue;
      const fromEnds = largeEnd.minus(smallEnd!).over(length!);
      const rounding = name === "Brown & Sharpe 1" ? 8e-3 : 6e-3;
      expectClose(fromEnds, taper, {
        rel: name.startsWith("Morse") ? 2e-5 : rounding,
        because: "Morse: 5 digits; Brown & Sharpe lengths are rounded to 0.01 in",
      });
    }
  });
  it("have each name once, each with a source", () => {
    expect(new Set(standardTapers.map(({ name }) => name)).size).toBe(standardTapers.length);
    for (const { source } of standardTapers) expect(source.length).toBeGreaterThan(10);
  });
  it("know the ratios by their names", () => {
    const taper = (name: string): number => standardTapers.find((t) => t.name === name)!.taper;
    expect(taper("1:12")).toBe(taper("1 in per foot"));
    expect(taper("1:16")).toBe(taper("3/4 in per foot"));
    // Source: ISO 7388, 7:24 = 3 1/2 in per foot.
    expectClose(taper("7:24") * 12, 3.5, { rel: 1e-15, because: "exact but for rounding" });
  });
});

describe("jarnoTaper(number)", () => {
  // Source: Machinery's Handbook, Jarno taper number 8: 1.000, 0.800, 4.000 in; 0.600 in per foot.
  it("gives the printed ends of number 8", () => {
    const eight = jarnoTaper(8);
    expect(eight.largeEnd!.in("inch")).toBe(1);
    expect(eight.smallEnd!.in("inch")).toBe(0.8);
    expect(eight.length!.in("inch")).toBe(4);
  });
  it("has 0.6 in per foot for every number", () => {
    for (let n = 2; n <= 20; n++) {
      const { largeEnd, smallEnd, length, taper } = jarnoTaper(n);
      expectClose(largeEnd!.minus(smallEnd!).over(length!), taper, { rel: 1e-13, because: "rounding only" });
    }
  });
  it("rejects a number the series does not have", () => {
    expect(() => jarnoTaper(1)).toThrow(/jarnoTaper: number must be a whole number from 2 to 20, got 1/);
    expect(() => jarnoTaper(2.5)).toThrow(/got 2\.5/);
  });
});
