import { describe, expect, it } from "vitest";
import { degree, inch, thou } from "../../kernel-helpers/quantity/index.js";
import { profileOf, type RunOut, runOut, wearBands, wornSide } from "../../kernel-helpers/survey/index.js";
import { equalAngles, lengthTable, rad } from "../support/length-table.js";
import { shaftTable } from "../support/shaft-table.js";

/** A straight shaft worn on one side by 4 thou at station 30, at an angle [deg]. */
function wornTo(side: number, wear: ReturnType<typeof bands>): RunOut {
  const rows = [0, 10, 20, 30, 40, 50].flatMap((z) =>
    equalAngles(8).map((a) => [z, a, z === 30 ? -Math.max(0, 4 * Math.cos(rad(a - side))) : 0]),
  );
  const table = lengthTable("station [in], angle [deg], reading [thou]", rows);
  return runOut(table, { readingUncertainty: thou(0.1), wear });
}

/** Diameters of a shaft worn from 25 to 35 in, by 4 thou at the angle given and by none across. */
function bands(smallest: 0 | 90): ReturnType<typeof wearBands> {
  const rows = [0, 5, 10, 15, 20, 26, 28, 30, 32, 34, 40, 45, 50].flatMap((station) =>
    [0, 90].map((angle) => ({
      station,
      angle,
      diameter: station > 25 && station < 35 && angle === smallest ? 2.4335 : 2.4375,
    })),
  );
  const profile = profileOf(shaftTable(rows), { readingUncertainty: thou(0.1), stationUncertainty: inch(0) });
  return wearBands(profile, { nominal: inch(2.4375) });
}

describe("wornSide(runOut, options)", () => {
  const worn = wornTo(100, bands(90));
  it("names the side, and agrees with a load within 45° of it", () => {
    const found = wornSide(worn, { loadDirection: degree(90) });
    expect(found.agrees).toBe("yes");
    expect(found.places).toHaveLength(1);
    expect(found.places[0]!.text).toMatch(
      /At 30 in the shaft is lower at 100 ± \d+° .* on radius .* they agree/,
    );
    expect(found.text).toMatch(
      /worn on the side to which the load presses it.*A load that stands still while the shaft turns wears the shaft evenly/,
    );
  });
  it("disagrees with a load from the opposite side, which diameters could not tell", () => {
    expect(wornSide(worn, { loadDirection: degree(270) }).agrees).toBe("no");
    expect(wornSide(bands(90), { loadDirection: degree(270) }).agrees).toBe("cannot tell yet");
  });
  it("cannot tell where the bound lies within the uncertainty of the side", () => {
    expect(wornSide(worn, { loadDirection: degree(90), within: degree(10) }).agrees).toBe("cannot tell yet");
  });
  it("names the next reading where it cannot tell, with how many of them will decide", () => {
    const { direction } = worn.stations[3]!.offAxis!;
    const side = worn.stations[3]!.lowSide!;
    const expanded = (1.959964 * (direction.standardUncertainty.si * 180)) / Math.PI;
    const off = (side.value.si * 180) / Math.PI - 90;
    // Half of U is missing: four times the readings; the bound itself is missed by nothing.
    const short = wornSide(worn, { loadDirection: degree(90), within: degree(off + 0.501 * expanded) });
    expect(short.text).toMatch(
      /Next: read the indicator round the shaft at 30 in about 4 times over; if the low side/,
    );
    const tight = wornSide(worn, { loadDirection: degree(90), within: degree(off + 0.001 * expanded) });
    expect(tight.text).toMatch(/lies so near the bound of .* that only a better indicator/);
    expect(wornSide(worn, { loadDirection: degree(90) }).text).not.toMatch(/Next|again/);
  });
  it("counts the angle across whole turns", () => {
    const found = wornSide(wornTo(350, bands(0)), { loadDirection: degree(10) });
    expect(found.agrees).toBe("yes");
  });
  it("compares nothing without a load direction, and says so", () => {
    const found = wornSide(worn);
    expect(found.agrees).toBe("cannot tell yet");
    expect(found.text).toMatch(/No load direction is given/);
  });
});

describe("wornSide(wear, options)", () => {
  it("says that diameters do not tell which of two opposite sides is worn", () => {
    const found = wornSide(bands(90), { loadDirection: degree(90) });
    expect(found.agrees).toBe("cannot tell yet");
    expect(found.places[0]!.side).toBeUndefined();
    expect(found.places[0]!.text).toMatch(
      /metal is missing at 90° or at 270° or both; diameters cannot tell which, indicator readings between centres can/,
    );
  });
  it("disagrees with a load that lies across both", () => {
    const found = wornSide(bands(90), { loadDirection: degree(0) });
    expect(found.agrees).toBe("no");
    expect(found.places[0]!.text).toMatch(/The load lies 90° across from both: they do not agree/);
  });
  it("rejects a bound that would pass everything, and other results", () => {
    expect(() => wornSide(bands(90), { within: degree(90) })).toThrow(
      /wornSide: within must be an angle over 0 and below 90°/,
    );
    const other = { kind: "profile" } as unknown as RunOut;
    expect(() => wornSide(other)).toThrow(/evidence must be wear bands or run-out, got profile/);
  });
});
