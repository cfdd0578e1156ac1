import { describe, expect, it } from "vitest";
import { inch, mm, thou } from "../../kernel-helpers/quantity/index.js";
import { profileOf, wearBands } from "../../kernel-helpers/survey/index.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";
import { syntheticShaft, type TrueBand } from "../support/synthetic-shaft.js";

const u = { readingUncertainty: thou(0.15), stationUncertainty: inch(0.02) };
const bands: readonly TrueBand[] = [
  { to: 8, diameter: 2.4375 },
  { to: 18, diameter: 2.4336, offsets: [0.001, -0.001] },
  { to: 30, diameter: 2.4375 },
];
const sound = syntheticShaft({ bands, noise: 0.0001, seed: 21 }).map((r) => ({
  ...r,
  diameter: Math.round(r.diameter * 1e4) / 1e4,
}));

/** The sound readings with some replaced; a reading stands on the line of its place, header on line 1. */
function spoilt(change: Readonly<Record<number, (diameter: number) => number>>): ShaftReading[] {
  return sound.map((r, i) =>
    change[i] === undefined ? r : { ...r, diameter: change[i](r.diameter), remark: "checked" },
  );
}

describe("wearBands(profile) with a gross reading", () => {
  it.each<[string, number, (d: number) => number, RegExp]>([
    ["ten times too large", 10, (d) => d * 10, /^ten times too large: 2\.43\d\d in\?$/],
    ["ten times too small", 10, (d) => d / 10, /^ten times too small: 2\.43\d\d in\?$/],
    [
      "a turn of the thimble short",
      7,
      (d) => d - 0.025,
      /^one turn of the thimble \(0\.025 in\) short: 2\.43/,
    ],
    [
      "a turn of the thimble over",
      40,
      (d) => d + 0.025,
      /^one turn of the thimble \(0\.025 in\) over: 2\.43/,
    ],
    ["two turns short", 25, (d) => d - 0.05, /^two turns of the thimble/],
    ["a hundred thou over", 50, (d) => d + 0.1, /^one digit wrong: 2\.43\d\d in\?$/],
    ["digits swapped", 45, (d) => (d > 2.43 ? 2.4735 : d), /^two digits swapped: 2\.4375 in\?$/],
    ["nothing evident", 52, (d) => d - 0.0077, /^$/],
    ["at the very first station", 0, (d) => d - 0.025, /^one turn/],
    ["at the very last station", 59, (d) => d + 0.1, /^one digit/],
    ["at the edge of a band", 16, (d) => d + 0.025, /^one turn/],
  ])("flags it on its line, keeps it in sight and names the slip: %s", (_, index, change, likely) => {
    const profile = profileOf(shaftTable(spoilt({ [index]: change })), u);
    const found = wearBands(profile, { nominal: inch(2.4375) });
    expect(found.gross).toHaveLength(1);
    const [{ reading, likely: slip, residualInU, residual }] = found.gross as [(typeof found.gross)[0]];
    expect(profile.readings[reading]!.line).toBe(index + 2);
    expect(slip).toMatch(likely);
    expect(Math.abs(residualInU)).toBeGreaterThan(6);
    expect(Math.sign(residual.si)).toBe(Math.sign(change(2.435) - 2.435));
    // Kept in the profile, without weight in the bands.
    expect(found.profile.readings).toHaveLength(60);
    expect(found.bands.map(({ stationCount }) => stationCount)).toEqual([8, 10, 12]);
    expect(found.bands.reduce((sum, { readingCount }) => sum + readingCount, 0)).toBe(59);
    for (const { smallest } of found.bands) expect(smallest.diameter.in("inch")).toBeGreaterThan(2.432);
  });

  it("flags several at once, two of them side by side at one angle", () => {
    const profile = profileOf(
      shaftTable(spoilt({ 3: (d) => d - 0.025, 22: (d) => d * 10, 44: (d) => d + 0.1, 46: (d) => d - 0.05 })),
      u,
    );
    const found = wearBands(profile, { nominal: inch(2.4375) });
    expect(found.gross.map(({ reading }) => profile.readings[reading]!.line)).toEqual([5, 24, 46, 48]);
    expect(found.bands).toHaveLength(3);
  });

  it("takes a station off at every angle for a groove or a wrong station, and says so", () => {
    const both = wearBands(profileOf(shaftTable(spoilt({ 46: (d) => d - 0.01, 47: (d) => d - 0.01 })), u), {
      nominal: inch(2.4375),
    });
    expect(both.gross).toHaveLength(2);
    expect(both.warnings.join()).toMatch(
      /At station 24 in, all 2 readings stand off their neighbours alike: a narrow groove/,
    );
  });

  it("keeps a band of two stations that bear each other out", () => {
    const found = wearBands(
      profileOf(
        shaftTable(
          spoilt({ 44: (d) => d - 0.004, 45: (d) => d - 0.004, 46: (d) => d - 0.004, 47: (d) => d - 0.004 }),
        ),
        u,
      ),
      { nominal: inch(2.4375) },
    );
    expect(found.gross).toEqual([]);
    expect(found.bands.map(({ stationCount }) => stationCount)).toEqual([8, 10, 4, 2, 6]);
    expect(found.bands[3]!.state).toBe("worn");
  });

  it("finds one in a survey at a single angle", () => {
    const one = sound
      .filter(({ angle }) => angle === 0)
      .map(({ station, diameter }) => ({ station, diameter }));
    const bad = one.map((r, i) => (i === 20 ? { ...r, diameter: r.diameter - 0.025 } : r));
    const profile = profileOf(shaftTable(bad), u);
    const found = wearBands(profile, { nominal: inch(2.4375) });
    expect(found.gross.map(({ reading }) => profile.readings[reading]!.line)).toEqual([22]);
    expect(found.bands.map(({ stationCount }) => stationCount)).toEqual([8, 10, 11]);
    expect(found.bands.every(({ ovality }) => ovality === undefined)).toBe(true);
  });

  it("knows the turn of a metric thimble", () => {
    const metric = Array.from({ length: 12 }, (_, i) => ({
      station: i + 1,
      diameter: (i === 5 ? 60.5 : i % 2 === 0 ? 60 : 60.01) / 25.4,
    }));
    const profile = profileOf(shaftTable(metric, { unit: "mm", decimals: 2 }), {
      readingUncertainty: mm(0.005),
      stationUncertainty: mm(0.5),
    });
    expect(wearBands(profile).gross.map(({ likely }) => likely)).toEqual([
      "one turn of the thimble (0.5 mm) over: 60.00 mm?",
    ]);
  });
});

describe("wearBands(profile) of readings at changing angles", () => {
  it("says that it cannot judge single readings", () => {
    const spiral = Array.from({ length: 12 }, (_, i) => ({
      station: i + 1,
      angle: (i * 50) % 180,
      diameter: 2.4375,
    }));
    expect(wearBands(profileOf(shaftTable(spiral), u)).warnings.join()).toMatch(
      /No angle is read at half of the stations or more/,
    );
  });
});
