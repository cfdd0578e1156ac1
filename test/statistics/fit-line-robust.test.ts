import { describe, expect, it } from "vitest";
import { fitLine, fitLineRobust } from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("fitLineRobust(x, y)", () => {
  // Source: Anscombe (1973), third set: the line of the ten readings that agree is y = 4 + 0.346 x.
  it("names the outlier of Anscombe's third set and returns the line of the others", () => {
    const quartet = readReference("anscombe-quartet");
    const x = quartet.numbers("x123");
    const y = quartet.numbers("y3");
    const found = fitLineRobust(x, y);
    expect(found.outliers.map(({ index }) => index)).toEqual([2]);
    expectClose(found.fit.intercept, 4, { abs: 0.0101, because: "printed as 4; 4.0056 by the data" });
    expectClose(found.fit.slope, 0.346, { abs: 8e-4, because: "printed 0.346; 0.3454 by the data" });
    const others = fitLine(
      x.filter((_, i) => i !== 2),
      y.filter((_, i) => i !== 2),
    );
    expect(found.fit).toEqual(others);
    expectClose(found.outliers[0]!.residual, 12.74 - others.intercept - 13 * others.slope, {
      rel: 1e-12,
      because: "off the line of the others",
    });
    expectClose(found.outliers[0]!.deletionResidual, 1203.54, {
      rel: 5e-6,
      because: "R's rstudent, from memory",
    });
  });

  it("finds 8 wrong readings of 24 at one end, where the ordinary line is bent", () => {
    const noise = seededNoise(4);
    const x = Array.from({ length: 24 }, (_, i) => i);
    const y = x.map((v) => 61.9 + 0.05 * v + 0.002 * noise.normal() + (v >= 16 ? 0.5 + 0.1 * (v - 16) : 0));
    for (const options of [{}, { u: 0.002 }, { u: x.map(() => 1), scaleByScatter: true }]) {
      const found = fitLineRobust(x, y, options);
      expect(found.outliers.map(({ index }) => index)).toEqual([16, 17, 18, 19, 20, 21, 22, 23]);
      expectClose(found.fit.slope, 0.05, { abs: 4 * found.fit.uSlope, because: "4 standard uncertainties" });
      expect(found.settled).toBe(true);
    }
    expect(Math.abs(fitLine(x, y).slope - 0.05)).toBeGreaterThan(0.03);
  });

  it("names an honest reading about as seldom as said, and then is the ordinary line exactly", () => {
    const noise = seededNoise(21);
    const runs = 1500;
    let named = 0;
    let namedKnown = 0;
    for (let run = 0; run < runs; run++) {
      const x = Array.from({ length: 12 }, (_, i) => i + noise.uniform());
      const y = x.map((v) => 1 - 0.3 * v + noise.normal());
      const found = fitLineRobust(x, y, { falseAlarm: 0.05 });
      if (found.outliers.length > 0) named += 1;
      else expect(found.fit).toEqual(fitLine(x, y));
      if (fitLineRobust(x, y, { u: 1, falseAlarm: 0.05 }).outliers.length > 0) namedKnown += 1;
    }
    // Bonferroni: at most the stated chance, but a little more where two readings mask each other.
    for (const share of [named / runs, namedKnown / runs])
      expectClose(share, 0.05, {
        abs: 0.02,
        because: "3.5 standard deviations of 1500 draws; measured 0.05",
      });
  });

  it("does not turn with the order of the readings, nor with units", () => {
    const noise = seededNoise(8);
    const x = Array.from({ length: 15 }, (_, i) => i);
    const y = x.map((v) => v + noise.normal() + (v === 3 || v === 11 ? 15 : 0));
    const found = fitLineRobust(x, y);
    expect(found.outliers.map(({ index }) => index)).toEqual([3, 11]);
    const reversed = fitLineRobust([...x].reverse(), [...y].reverse());
    expect(reversed.outliers.map(({ index }) => 14 - index).reverse()).toEqual([3, 11]);
    const inch = fitLineRobust(
      x.map((v) => v / 25.4),
      y.map((v) => 1e6 + v / 25.4),
    );
    expect(inch.outliers.map(({ index }) => index)).toEqual([3, 11]);
    expectClose(inch.fit.slope, found.fit.slope, { rel: 1e-7, because: "offset 1e6 costs digits" });
  });

  it("copes with readings exactly on a line, ties and repeats, where u is stated", () => {
    const x = [0, 0, 1, 1, 2, 2, 3, 3];
    // The wrong one of two contradictory repeats is put aside, so that fitLine takes the others.
    const found = fitLineRobust(x, [0, 0, 1, 1, 2, 9, 3, 3], { u: 0.01 });
    expect(found.outliers.map(({ index }) => index)).toEqual([5]);
    expect(found.outliers[0]!.chance).toBeLessThan(1e-6);
    expect(fitLineRobust([0, 1, 2, 3, 4], [5, 5, 5, 5, 5], { u: 0.01 }).outliers).toEqual([]);
    expect(fitLineRobust([0, 0, 0, 0, 1], [5, 5, 5.1, 5, 7], { u: 0.05 }).fit.points).toBeGreaterThan(3);
    expect([found, found.kept, found.outliers, found.outliers[0]].every(Object.isFrozen)).toBe(true);
  });

  it("names no reading for one step of rounding: without u exact readings are refused", () => {
    // Read to 0.1: three are off the line of the others by one step, as honest rounding has it.
    const x = [0, 1, 2, 3, 4, 5, 6, 7];
    const y = [0, 0.1, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8];
    expect(() => fitLineRobust(x, y)).toThrow(
      /fitLineRobust: the readings must scatter about the line for their uncertainty to be learnt from it, got 5 that lie on it .* give u, .* step\/√12/,
    );
    expect(fitLineRobust(x, y, { u: 0.1 / Math.sqrt(12) }).outliers).toEqual([]);
  });

  // Source: NIST StRD, NoInt1 (certified slope of the line through the origin), one wrong reading added to it.
  it("through a point: finds the certified slope of NoInt1 although a wrong reading is added, and names that", () => {
    const noInt1 = readReference("nist-noint1");
    const x = [...noInt1.numbers("x"), 66, 70.5];
    const y = [...noInt1.numbers("y"), 200, 90];
    const found = fitLineRobust(x, y, { through: { x: 0, y: 0 } });
    expect(found.outliers.map(({ index }) => index)).toEqual([11, 12]);
    expectClose(found.fit.slope, 2.07438016528926, { rel: 1e-13, because: "certified to 15 digits" });
    expectClose(found.fit.uSlope, 0.0165289256198347, { rel: 1e-13, because: "certified to 15 digits" });
    expect(found.fit.through).toEqual({ x: 0, y: 0 });
    // Without wrong readings it is the ordinary line through the point.
    const clean = fitLineRobust(x.slice(0, 11), y.slice(0, 11), { through: { x: 0, y: 0 } });
    expect(clean.outliers).toEqual([]);
    expect(clean.fit).toEqual(fitLine(x.slice(0, 11), y.slice(0, 11), { through: { x: 0, y: 0 } }));
  });

  it("through a point: is the free line with the point as a reading of great weight", () => {
    const noise = seededNoise(12);
    const point = { x: -2, y: 7 };
    const x = Array.from({ length: 14 }, (_, i) => i + noise.uniform());
    const y = x.map((v, i) => 7 + 0.4 * (v + 2) + 0.05 * noise.normal() + (i === 4 || i === 9 ? 3 : 0));
    const found = fitLineRobust(x, y, { u: 0.05, through: point });
    const heavy = fitLineRobust([...x, point.x], [...y, point.y], { u: [...x.map(() => 0.05), 1e-7] });
    expect(found.outliers.map(({ index }) => index)).toEqual([4, 9]);
    expect(heavy.outliers.map(({ index }) => index)).toEqual([4, 9]);
    expectClose(found.fit.slope, heavy.fit.slope, { rel: 1e-9, because: "weight 2.5e11 to 1" });
    expectClose(found.fit.uSlope, heavy.fit.uSlope, { rel: 1e-9, because: "weight 2.5e11 to 1" });
    expectClose(found.outliers[0]!.deletionResidual, heavy.outliers[0]!.deletionResidual, {
      rel: 1e-7,
      because: "weight 2.5e11 to 1",
    });
    // A reading at the point itself says nothing of the slope, but may be wrong.
    const at = fitLineRobust([...x, -2, -2], [...y, 7.05, 9], { u: 0.05, through: point });
    expect(at.outliers.map(({ index }) => index)).toEqual([4, 9, 15]);
  });

  it("through a point: names an honest reading about as seldom as said", () => {
    const noise = seededNoise(22);
    const runs = 1500;
    let named = 0;
    for (let run = 0; run < runs; run++) {
      const x = Array.from({ length: 12 }, (_, i) => 1 + i + noise.uniform());
      const y = x.map((v) => -0.3 * v + noise.normal());
      if (fitLineRobust(x, y, { falseAlarm: 0.05, through: { x: 0, y: 0 } }).outliers.length > 0) named += 1;
    }
    expectClose(named / runs, 0.05, { abs: 0.02, because: "3.5 standard deviations of 1500 draws" });
  });

  it("rejects what it cannot judge", () => {
    const five = [0, 1, 2, 3, 4];
    expect(() => fitLineRobust([0, 1, 2, 3], [0, 1, 2, 3])).toThrow(/x needs at least 5 values, got 4/);
    expect(() => fitLineRobust(five, five, { falseAlarm: 0 })).toThrow(/falseAlarm must lie between 0 and 1/);
    expect(() => fitLineRobust([1, 1, 1, 1, 1], five)).toThrow(/at least two different values/);
    expect(() => fitLineRobust(five, five, { u: 0 })).toThrow(/u must be greater than 0, got 0/);
    expect(() => fitLineRobust([1, 1, 1, 1, 1], five, { through: { x: 1, y: 0 } })).toThrow(
      "fitLineRobust: some x must differ from through.x, got 1 for all of them",
    );
    expect(() => fitLineRobust(five, five, { through: { x: Number.NaN, y: 0 } })).toThrow(
      /through.x must be a finite number/,
    );
    const many = Array.from({ length: 2001 }, (_, i) => i);
    expect(() => fitLineRobust(many, many)).toThrow(
      /at most 2000 readings can be compared pair by pair, got 2001/,
    );
  });
});
