import { describe, expect, it } from "vitest";
import {
  compareInstruments,
  type InstrumentComparison,
  readTable,
} from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { lengthTable } from "../support/length-table.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

const compare = (first: readonly number[], second: readonly number[]): InstrumentComparison =>
  compareInstruments(
    lengthTable(
      "old [mm], new [mm]",
      first.map((value, i) => [value, second[i]!]),
    ),
    { first: "old", second: "new" },
  );

describe("compareInstruments(table, options)", () => {
  it("gives the bias, its interval and the limits of agreement of Bland and Altman's example", () => {
    const { numbers } = readReference("bland-altman-pefr");
    // They take large less mini, so mini comes first here.
    const found = compare(numbers("mini"), numbers("large"));
    const { value, standardUncertainty, degreesOfFreedom } = found.bias;
    expectClose(value.in("mm"), -2.1, { abs: 0.05, because: "printed to a decimal" });
    expectClose(found.standardDeviation.in("mm"), 38.8, { abs: 0.05, because: "printed to a decimal" });
    expect(degreesOfFreedom).toBe(16);
    // Published: t = 2.12 with 16 degrees of freedom, -22.0 to 17.8.
    expectClose(value.in("mm") - 2.12 * standardUncertainty.in("mm"), -22.0, {
      abs: 0.1,
      because: "printed steps",
    });
    expectClose(value.in("mm") + 2.12 * standardUncertainty.in("mm"), 17.8, {
      abs: 0.1,
      because: "printed steps",
    });
    const s = found.standardDeviation.in("mm");
    // Published with 2 s instead of 1.96 s: -79.7 to 75.5.
    expectClose(found.limits.low.in("mm") - 0.04 * s, -79.7, { abs: 0.1, because: "1.96 against 2" });
    expectClose(found.limits.high.in("mm") + 0.04 * s, 75.5, { abs: 0.1, because: "1.96 against 2" });
    expect(found.biased).toBe(false);
  });
  it("changes sign with the order, and turns the ratio of spreads over", () => {
    const { numbers } = readReference("bland-altman-pefr");
    const [there, back] = [
      compare(numbers("mini"), numbers("large")),
      compare(numbers("large"), numbers("mini")),
    ];
    expectClose(back.bias.value.si, -there.bias.value.si, { rel: 1e-12, because: "rounding only" });
    expectClose(back.spread!.ratio, 1 / there.spread!.ratio, { rel: 1e-12, because: "rounding only" });
    expectClose(back.spread!.chance, there.spread!.chance, { rel: 1e-9, because: "rounding only" });
  });
  it("has its test of spreads from the slope of difference on sum: the same t", () => {
    const { numbers } = readReference("bland-altman-pefr");
    const [x, y] = [numbers("mini"), numbers("large")];
    const sums = x.map((v, i) => v + y[i]!);
    const differences = x.map((v, i) => y[i]! - v);
    const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
    const sxx = sums.reduce((all, s) => all + (s - mean(sums)) ** 2, 0);
    const slope = sums.reduce((all, s, i) => all + (s - mean(sums)) * differences[i]!, 0) / sxx;
    const rest = differences.map((d, i) => d - mean(differences) - slope * (sums[i]! - mean(sums)));
    const t = slope / Math.sqrt(rest.reduce((all, r) => all + r * r, 0) / 15 / sxx);
    // Two-sided chance of t with 15 degrees of freedom by numerical integration of the density.
    const density = (v: number): number => (1 + (v * v) / 15) ** -8;
    const area = (from: number, to: number): number => {
      const n = 20000;
      const h = (to - from) / n;
      return Array.from({ length: n }, (_, i) => density(from + (i + 0.5) * h) * h).reduce(
        (a, b) => a + b,
        0,
      );
    };
    expectClose(compare(x, y).spread!.chance, area(Math.abs(t), 200) / area(0, 200), {
      rel: 1e-4,
      because: "numerical integration",
    });
  });
  it("calls a bias where there is none in about 5 of 100, and spreads unlike too, seeded", () => {
    const noise = seededNoise(71);
    let [biased, differs] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const truth = Array.from({ length: 12 }, () => 100 + 3 * noise.normal());
      const found = compare(
        truth.map((v) => v + noise.normal()),
        truth.map((v) => v + noise.normal()),
      );
      if (found.biased) biased += 1;
      if (found.spread!.differs) differs += 1;
    }
    // Binomial: 20 ± 3·4.4 of 400.
    for (const count of [biased, differs]) {
      expect(count).toBeGreaterThan(6);
      expect(count).toBeLessThan(34);
    }
  });
  it("finds a bias and a wider hand that are there", () => {
    const noise = seededNoise(72);
    const truth = Array.from({ length: 30 }, (_, i) => 100 + i / 10);
    const found = compare(
      truth.map((v) => v + 0.1 * noise.normal()),
      truth.map((v) => v + 1 + 3 * noise.normal()),
    );
    expect(found.spread!.differs).toBe(true);
    expect(found.text).toMatch(/The readings of new spread more/);
  });
  it("leaves out a place one of them did not read, with a warning", () => {
    const text = "old [mm], new [mm]\n1,2\n2,2.5\n3,4.5\n4,-";
    const table = readTable(new TextEncoder().encode(text), { name: "bench", file: "bench.csv" });
    const found = compareInstruments(table, { first: "old", second: "new" });
    expect(found.count).toBe(3);
    expect(found.warnings.join(" ")).toMatch(/1 row lacks one of the two readings and is left out/);
  });
  it("rejects too few places, one column twice, and differences all alike", () => {
    expect(() => compare([1, 2], [1, 3])).toThrow(
      /at least 3 places read by both ".*" and ".*" are needed, got 2 in .*csv/,
    );
    expect(() => compare([1, 2, 3], [2, 3, 4])).toThrow(
      /differences must scatter to be judged, got 3 all alike/,
    );
    const table = lengthTable("old [mm], new [mm]", [[1, 2]]);
    expect(() => compareInstruments(table, { first: "old", second: "old" })).toThrow(
      /two different columns must be named, got "old" twice/,
    );
    expect(() => compareInstruments(table, { first: "old", second: "mic" })).toThrow(
      /must have one column "mic"/,
    );
  });
});
