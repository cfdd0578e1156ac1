import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { profileOf, type WearBands, wearBands } from "../../kernel-helpers/survey/index.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";
import { syntheticShaft, type TrueBand } from "../support/synthetic-shaft.js";

const asIs = { readingUncertainty: thou(0.15), stationUncertainty: inch(0.02) };

function found(rows: readonly ShaftReading[], options = {}): WearBands {
  return wearBands(profileOf(shaftTable(rows), asIs), { edgeProbability: false, ...options });
}

function doubtIn({ warnings }: WearBands): string | undefined {
  return warnings.find((warning) => warning.startsWith("A second division"));
}

function edgesOf({ edges }: WearBands): string {
  return edges.map(({ after, before }) => `${after}-${before}`).join(" ");
}

/** Three bands, the middle one worn. */
function worn(depth: number, stations: number, slope = 0): TrueBand[] {
  const third = Math.floor(stations / 3);
  return [
    { to: third, diameter: 2.4375 },
    { to: 2 * third, diameter: 2.4375 - depth, slope },
    { to: stations, diameter: 2.4375 },
  ];
}

/** A worn band of so many stations in a row of 30. */
function narrow(width: number, depth = 0.005): ShaftReading[] {
  const bands = [
    { to: 12, diameter: 2.4375 },
    { to: 12 + width, diameter: 2.4375 - depth },
    { to: 30, diameter: 2.4375 },
  ];
  return syntheticShaft({ bands, noise: 0.00015, seed: 4 });
}

describe("the second opinion on wear bands", () => {
  it("says nothing where all readings are honest: no false word in 120 surveys", () => {
    for (let seed = 1; seed <= 40; seed++)
      for (const bands of [worn(0.001, 26), worn(0.0005, 26), worn(0.002, 40, 0.0002)])
        expect(doubtIn(found(syntheticShaft({ bands, noise: 0.00015, seed })))).toBeUndefined();
  });

  it("is seldom needed for one wrong reading: it moves an edge unnoticed in fewer than 1 survey in 10", () => {
    let unnoticed = 0;
    for (let seed = 1; seed <= 120; seed++) {
      const rows = syntheticShaft({ bands: worn(0.001, 60), noise: 0.00015, seed });
      const at = 2 * (17 + (seed % 5)) + (seed % 2);
      const off = seed % 3 === 0 ? 0.001 : -0.001;
      const wrong = rows.map((row, i) => (i === at ? { ...row, diameter: row.diameter + off } : row));
      const bands = found(wrong);
      if (bands.gross.length > 0 || edgesOf(bands) === edgesOf(found(rows))) continue;
      if (bands.doubtful!.length === 0 && doubtIn(bands) === undefined) unnoticed += 1;
    }
    // 0.001 in is 6.7 times the noise; beside an edge it looks like the next band.
    expect(unnoticed).toBeLessThan(12);
  });

  it("tells of a band that rests on two stations and names its edges, not of one of three", () => {
    expect(found(narrow(2)).bands).toHaveLength(3);
    expect(doubtIn(found(narrow(2)))).toBe(
      "A second division, in which no station counts for more than 3.3 uncertainties, finds no edge between 12 in and 13 in nor between 14 in and 15 in: one or two stations carry the difference. Read there again.",
    );
    for (const depth of [0.001, 0.005, 0.1]) {
      expect(found(narrow(3, depth)).bands).toHaveLength(3);
      expect(doubtIn(found(narrow(3, depth)))).toBeUndefined();
    }
  });

  it("uses the noise that the bands were found with: rough readings raise no doubt of their own", () => {
    for (let seed = 1; seed <= 20; seed++)
      expect(
        doubtIn(found(syntheticShaft({ bands: worn(0.003, 30), noise: 0.00045, seed }))),
      ).toBeUndefined();
  });

  it("is the same in any unit and not asked of more than 2000 stations", () => {
    const mm = wearBands(profileOf(shaftTable(narrow(2), { unit: "mm" }), asIs), { edgeProbability: false });
    expect(doubtIn(mm)).toMatch(/finds no edge between 304\.8 mm and 330\.2 mm nor between/);
    const long = [
      { to: 1000, diameter: 2.4375 },
      { to: 1002, diameter: 2.4325 },
      { to: 2001, diameter: 2.4375 },
    ];
    expect(doubtIn(found(syntheticShaft({ bands: long, noise: 0.00015, seed: 1 })))).toBeUndefined();
  });
});
