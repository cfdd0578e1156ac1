import { describe, expect, it } from "vitest";
import {
  boltGrade,
  boltGradeRows,
  heatColourAt,
  heatColours,
  nutFactorOf,
  nutFactors,
  threadFriction,
  threadFrictions,
} from "../../kernel-helpers/handbook/index.js";
import { degF, inch } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

describe("boltGradeRows", () => {
  // Source: test/reference/bolt-grades.csv, header there.
  const printed = readReference("bolt-grades");
  it("hold the printed table digit by digit", () => {
    expect(boltGradeRows.map((row) => row.grade)).toEqual(printed.rows.map(([grade]) => grade));
    expect(boltGradeRows.map((row) => row.sizes)).toEqual(printed.rows.map(([, sizes]) => sizes));
    expect(boltGradeRows.map((row) => row.proof ?? Number.NaN)).toEqual(printed.numbers("proof_ksi"));
    expect(boltGradeRows.map((row) => row.yield)).toEqual(printed.numbers("yield_ksi"));
    expect(boltGradeRows.map((row) => row.tensile)).toEqual(printed.numbers("tensile_ksi"));
  });
  it("stand in the order proof, yield, tensile", () => {
    for (const { proof, yield: y, tensile } of boltGradeRows) {
      if (proof !== undefined) expect(proof).toBeLessThan(y);
      expect(y).toBeLessThan(tensile);
    }
  });
});

describe("boltGrade(grade, size)", () => {
  // Source: SAE J429 as in the table: grade 5 to 1 in 85/92/120, above 74/81/105.
  it("falls with size where the standard does", () => {
    expect(boltGrade("SAE 5", inch(1)).yield.in("ksi")).toBe(92);
    expect(boltGrade("sae 5", inch(1.25)).yield.in("ksi")).toBe(81);
    expect(boltGrade("ASTM A193 B7", inch(2)).proof).toBeUndefined();
  });
  it("rejects a grade it does not have and a size outside the table", () => {
    expect(() => boltGrade("SAE 9", inch(1))).toThrow(/boltGrade: grade must be one of SAE 1, .*got "SAE 9"/);
    expect(() => boltGrade("SAE 8", inch(2))).toThrow(/SAE 8 is tabulated for 1\/4-1-1\/2 in, got 2 in/);
    expect(() => boltGrade("SAE 2", inch(0.8))).toThrow(/got 0\.8 in/);
  });
});

describe("nutFactorOf(state)", () => {
  // Source: Shigley 9th ed. table 8-15.
  it("holds the published figures within its ranges", () => {
    for (const [state, factor] of [
      ["black, dry", 0.3],
      ["zinc plated", 0.2],
      ["lubricated", 0.18],
      ["cadmium plated", 0.16],
      ["anti-seize", 0.12],
    ] as const)
      expect(nutFactorOf(state)).toMatchObject({ published: factor });
    for (const { low, high, published } of nutFactors) {
      expect(low).toBeLessThan(published ?? high);
      expect(high).toBeGreaterThan(published ?? low);
    }
  });
  // Source: Shigley 9th ed. tables 8-13 (from memory) and 8-14: preloads in kN of bolts tightened to 90 N·m.
  it("covers the scatter of published preloads: two standard deviations on either side", () => {
    const unlubricated = [
      23.6, 27.6, 28.0, 29.4, 30.3, 30.7, 32.9, 33.8, 33.8, 33.8, 34.7, 35.6, 35.6, 37.4, 37.8, 37.8, 39.2,
      40.0, 40.5, 42.7,
    ];
    const lubricated = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
    const { low, high, published } = nutFactorOf("zinc plated");
    const share = (high - low) / 2 / published!;
    for (const [loads, mean, deviation] of [
      [unlubricated, 34.3, 4.91],
      [lubricated, 34.18, 2.88],
    ] as const) {
      const m = loads.reduce((sum, one) => sum + one, 0) / loads.length;
      const s = Math.sqrt(loads.reduce((sum, one) => sum + (one - m) ** 2, 0) / (loads.length - 1));
      expectClose(m, mean, { rel: 2e-3, because: "printed to 3 digits" });
      expectClose(s, deviation, { rel: 2e-3, because: "printed to 3 digits" });
      expect(share).toBeGreaterThan((2 * s) / m);
    }
  });
  it("rejects a state it does not know", () => {
    expect(() => nutFactorOf("painted")).toThrow(/nutFactorOf: state must be one of "black, dry"/);
  });
});

describe("threadFriction(surface)", () => {
  it("gives ranges that grow from anti-seize to rust, both ends with a reason", () => {
    expect(threadFrictions.map(({ surface }) => surface)).toEqual(["anti-seize", "oiled", "dry", "rusted"]);
    threadFrictions.forEach(({ low, high, because }, i) => {
      expect(low).toBeLessThan(high);
      expect(because).toMatch(/, to /);
      const better = threadFrictions[i - 1];
      if (better !== undefined) expect(low > better.low && high > better.high).toBe(true);
    });
  });
  // Source: Shigley 9th ed. example 8-3: f = 0.15 goes with the nut factor 0.2 of plain bolts.
  it("holds the 0.15 of plain bolts between oiled and dry", () => {
    expect(threadFriction("oiled").high).toBeGreaterThan(0.15);
    expect(threadFriction("dry").low).toBeLessThan(0.15);
  });
  it("rejects a state it does not know", () => {
    expect(() => threadFriction("painted" as "dry")).toThrow(
      /threadFriction: surface must be one of anti-seize, oiled, dry, rusted, got painted/,
    );
  });
});

describe("heatColourAt(temperature)", () => {
  // Source: test/reference/temper-heat-colours.csv, header there.
  const printed = readReference("temper-heat-colours");
  it("holds the printed list digit by digit", () => {
    expect(heatColours.map(({ kind, colour }) => [kind, colour])).toEqual(
      printed.rows.map(([kind, colour]) => [kind, colour]),
    );
    expect(
      heatColours.map(({ degreesFahrenheit, upTo }) => `${degreesFahrenheit}${upTo ? `-${upTo}` : ""}`),
    ).toEqual(printed.rows.map((row) => row[2]));
  });
  it("gives the last colour passed, and none below the first", () => {
    printed.rows.forEach((row) => {
      const at = Number(row[2]!.split("-")[0]);
      expect(heatColourAt(degF(at + 1))!.colour).toBe(row[1]);
    });
    expect(heatColourAt(degF(420))).toBeUndefined();
  });
});
