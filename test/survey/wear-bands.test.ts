import { describe, expect, it } from "vitest";
import { inch, type Length, thou } from "../../kernel-helpers/quantity/index.js";
import { coverageFactor } from "../../kernel-helpers/statistics/index.js";
import { type Profile, profileOf, type WearBands, wearBands } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";
import { stationsOf, syntheticShaft, type TrueBand } from "../support/synthetic-shaft.js";

const nominal = inch(2.4375);
const exactly = { rel: 1e-12, because: "readings without noise; rounding only" };
const asIs = { readingUncertainty: thou(0.15), stationUncertainty: inch(0.02) };

/** Whole inches come back as such: 12 and not 11.999999999999998. */
function inches(length: Length): number {
  return Number(length.in("inch").toPrecision(12));
}

function profile(readings: readonly ShaftReading[], u = 0.15): Profile {
  return profileOf(shaftTable(readings), { ...asIs, readingUncertainty: thou(u) });
}

const box: readonly TrueBand[] = [
  { to: 8, diameter: 2.4375 },
  { to: 16, diameter: 2.4335 },
  { to: 26, diameter: 2.4375 },
];

describe("wearBands(profile, { nominal }) of a shaft whose shape is known", () => {
  it("finds flat bands exactly where there is no noise", () => {
    const { bands, edges, noiseRatio } = wearBands(
      profile(syntheticShaft({ bands: box, noise: 0, seed: 1 })),
      {
        nominal,
      },
    );
    expect(bands.map(({ shape, state }) => [shape, state])).toEqual([
      ["flat", "as made"],
      ["flat", "worn"],
      ["flat", "as made"],
    ]);
    expectClose(bands[1]!.depth!.value.in("thou"), 4, {
      rel: 1e-9,
      because: "difference of rounded numbers",
    });
    expect(bands.map(({ from, to }) => [inches(from), inches(to)])).toEqual([
      [1, 8],
      [9, 16],
      [17, 26],
    ]);
    expect(bands[1]!.stationCount).toBe(8);
    expect(bands[1]!.readingCount).toBe(16);
    expect(noiseRatio).toBeLessThan(1e-9);
    // Midway, u = half the gap / √3 (GUM 4.3.7).
    expect(edges.map(({ after, before }) => [inches(after), inches(before)])).toEqual([
      [8, 9],
      [16, 17],
    ]);
    expectClose(edges[0]!.position.value.in("inch"), 8.5, exactly);
    expectClose(edges[0]!.position.standardUncertainty.in("inch"), 0.5 / Math.sqrt(3), exactly);
  });

  it("finds a sloping band with its slope on diameter", () => {
    const bands: TrueBand[] = [
      { to: 6, diameter: 2.4375 },
      { to: 16, diameter: 2.432, slope: 0.0004 },
      { to: 22, diameter: 2.4375 },
    ];
    const found = wearBands(profile(syntheticShaft({ bands, noise: 0, seed: 1 })), { nominal }).bands;
    expect(found.map(({ shape }) => shape)).toEqual(["flat", "sloping", "flat"]);
    expectClose(found[1]!.slope.value, 0.0004, { rel: 1e-9, because: "difference of rounded numbers" });
    expectClose(found[1]!.diameter.value.in("inch"), 2.432, exactly);
    expectClose(found[1]!.diameterAtTo.minus(found[1]!.diameterAtFrom).in("thou"), 0.0004 * 9 * 1000, {
      rel: 1e-9,
      because: "slope times the 9 in between first and last station",
    });
    expect(found[0]!.slope.value).toBe(0);
  });

  it("finds one band on a shaft of one diameter", () => {
    const found = wearBands(
      profile(syntheticShaft({ bands: [{ to: 40, diameter: 2.4375 }], noise: 0.00015, seed: 3 })),
      { nominal },
    );
    expect(found.bands).toHaveLength(1);
    expect(found.edges).toEqual([]);
    expect(found.gross).toEqual([]);
  });

  it("gives a flat band u = u(reading)/√readings, joined with the common uncertainty", () => {
    const readings = syntheticShaft({ bands: box, noise: 0, seed: 1 });
    const alone = wearBands(profile(readings)).bands[1]!.diameter;
    expectClose(alone.standardUncertainty.in("thou"), 0.15 / Math.sqrt(16), {
      rel: 1e-9,
      because: "8 stations of 2 readings with equal noise",
    });
    expect(alone.degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    const common = { ...profile(readings), commonUncertainty: thou(0.1) };
    expectClose(
      wearBands(common).bands[1]!.diameter.standardUncertainty.in("thou"),
      Math.hypot(0.15 / 4, 0.1),
      { rel: 1e-9, because: "GUM 5.1.2" },
    );
  });

  it("judges worn, as made and over size by the expanded uncertainty, and not without a nominal", () => {
    const stateAt = (diameter: number, options = {}): string =>
      wearBands(profile(syntheticShaft({ bands: [{ to: 8, diameter }], noise: 0, seed: 1 })), {
        nominal,
        ...options,
      }).bands[0]!.state;
    const expanded = (1.959964 * 0.00015) / 4; // 16 readings
    expect(stateAt(2.4375 - 1.01 * expanded)).toBe("worn");
    expect(stateAt(2.4375 - 0.99 * expanded)).toBe("as made");
    expect(stateAt(2.4375 + 0.99 * expanded)).toBe("as made");
    expect(stateAt(2.4375 + 1.01 * expanded)).toBe("over size");
    expect(stateAt(2.4365, { wornBeyond: thou(0.9) })).toBe("worn");
    expect(stateAt(2.4365, { wornBeyond: thou(1.1) })).toBe("as made");
    expect(stateAt(2.4365, { nominal: undefined })).toBe("not judged");
  });

  it("keeps depth on diameter: a groove 1 thou deep all round is 2 thou", () => {
    const bands = [{ to: 8, diameter: 2.4375 - 2 * 0.001 }];
    const { depth } = wearBands(profile(syntheticShaft({ bands, noise: 0, seed: 1 })), { nominal }).bands[0]!;
    expectClose(depth!.value.in("thou"), 2, { rel: 1e-9, because: "difference of rounded numbers" });
  });

  it("returns frozen data and leaves the profile as it was", () => {
    const p = profile(syntheticShaft({ bands: box, noise: 0.00015, seed: 5 }));
    const before = JSON.stringify(p);
    const found = wearBands(p, { nominal, limit: inch(2.43) });
    expect(JSON.stringify(p)).toBe(before);
    expect(found.profile).toBe(p);
    expect(found.limit!.in("inch")).toBe(2.43);
    for (const part of [found, found.bands, found.bands[0], found.edges, found.gross, found.warnings])
      expect(Object.isFrozen(part)).toBe(true);
  });
});

describe("wearBands(profile) of a journal worn on one side", () => {
  const oneSided: readonly TrueBand[] = [
    { to: 8, diameter: 2.4375 },
    { to: 16, diameter: 2.434, offsets: [0.002, -0.002] },
    { to: 26, diameter: 2.4375 },
  ];
  const readings = syntheticShaft({ bands: oneSided, noise: 0.00015, seed: 11 });

  it("calls no reading gross, and gives the ovality and the worn side", () => {
    const { bands, gross, noiseRatio } = wearBands(profile(readings), { nominal });
    expect(gross).toEqual([]);
    expect(bands).toHaveLength(3);
    expectClose(bands[1]!.ovality!.in("thou"), 4, { abs: 0.25, because: "8 stations, noise 0.15 thou" });
    expect(bands[1]!.smallestAngle!.in("degree")).toBe(90);
    expect(bands[1]!.smallest.angle!.in("degree")).toBe(90);
    expectClose(bands[1]!.smallest.diameter.in("inch"), 2.432, { abs: 0.0005, because: "the worn side" });
    // Ovality is not noise.
    expect(noiseRatio).toBeLessThan(1.4);
    for (const round of [bands[0]!, bands[2]!]) expect(round.smallestAngle).toBeUndefined();
  });

  it("still finds a gross reading there, and fills the station as its neighbours are", () => {
    const bad = readings.map((r) =>
      r.station === 12 && r.angle === 0 ? { ...r, diameter: r.diameter - 0.005 } : r,
    );
    const found = wearBands(profile(bad), { nominal });
    expect(found.gross).toHaveLength(1);
    expect(inches(found.profile.readings[found.gross[0]!.reading]!.station)).toBe(12);
    expect(found.bands).toHaveLength(3);
    const station = found.profile.stations[11]!;
    expectClose(station.mean.in("inch"), 2.434, {
      abs: 0.0006,
      because: "filled, not 2.432 as the other angle alone would say",
    });
    expect(station.readings).toHaveLength(2);
    expect(found.warnings.join()).toMatch(/At station 12 in, one angle is missing or gross; there/);
  });

  it("does the same where an angle was not read at all", () => {
    const missing = readings.filter((r) => !(r.station === 12 && r.angle === 90));
    const found = wearBands(profile(missing), { nominal });
    expect(found.bands).toHaveLength(3);
    expect(found.gross).toEqual([]);
    expectClose(found.profile.stations[11]!.mean.in("inch"), 2.434, { abs: 0.0006, because: "filled" });
  });
});

describe("wearBands(profile) of many shafts drawn at random", () => {
  // Flat and sloping bands, one of them worn on one side; noise as stated. 200 shafts, seeds 1 to 200.
  const bands: readonly TrueBand[] = [
    { to: 8, diameter: 2.4374 },
    { to: 16, diameter: 2.4341, offsets: [0.0012, -0.0012] },
    { to: 24, diameter: 2.4376 },
    { to: 34, diameter: 2.431, slope: -0.0003 },
    { to: 40, diameter: 2.4372 },
  ];
  const u = 0.00015;
  const edges = stationsOf(bands).map((stations) => stations[0]);
  const runs = Array.from({ length: 200 }, (_, i) => {
    const readings = syntheticShaft({ bands, noise: u, seed: 1000 + 17 * i });
    return wearBands(profile(readings), { nominal });
  });
  const right = runs.filter(
    (run) => JSON.stringify(run.bands.map(({ from }) => inches(from))) === JSON.stringify(edges),
  );

  it("finds the true bands in at least 98 of 100", () => {
    expect(right.length).toBeGreaterThanOrEqual(196); // measured: 200
  });

  it("covers the true depth with its 95 % interval in 90 to 99 of 100, band by band", () => {
    for (let k = 0; k < bands.length; k++) {
      const inside = right.filter((run) => {
        const { value, standardUncertainty, degreesOfFreedom } = run.bands[k]!.depth!;
        const truth = 2.4375 - bands[k]!.diameter;
        return (
          Math.abs(value.in("inch") - truth) <=
          coverageFactor(0.95, degreesOfFreedom) * standardUncertainty.in("inch")
        );
      });
      const share = inside.length / right.length;
      expect(share, `band ${k + 1}`).toBeGreaterThanOrEqual(0.9);
      expect(share, `band ${k + 1}`).toBeLessThanOrEqual(0.99);
    }
  });

  it("covers the true slope with its 95 % interval in 90 to 99 of 100", () => {
    const sloping = right.filter((run) => run.bands[3]!.shape === "sloping");
    const inside = sloping.filter((run) => {
      const { value, standardUncertainty, degreesOfFreedom } = run.bands[3]!.slope;
      return Math.abs(value + 0.0003) <= coverageFactor(0.95, degreesOfFreedom) * standardUncertainty;
    });
    expect(sloping).toHaveLength(right.length);
    expect(inside.length / sloping.length).toBeGreaterThanOrEqual(0.9);
    expect(inside.length / sloping.length).toBeLessThanOrEqual(0.99);
  });

  it("calls no honest reading gross and no honest noise too large, but in a few", () => {
    expect(runs.filter(({ gross }) => gross.length > 0)).toHaveLength(0);
    const warned = runs.filter((run) => run.warnings.some((text) => text.startsWith("Readings scatter")));
    expect(warned.length).toBeLessThanOrEqual(6); // a 1 % test: 2 expected of 200
  });

  it("names the worn side of the one-sided band and of no other", () => {
    const named = (k: number): number =>
      right.filter((run) => run.bands[k]!.smallestAngle !== undefined).length / right.length;
    expect(named(1)).toBe(1);
    for (const k of [0, 2, 3, 4]) expect(named(k)).toBeLessThanOrEqual(0.04); // a 1 % test
  });
});

describe("wearBands(profile) of a shaft of one diameter", () => {
  it("invents a band in at most 2 of 100 surveys of 30 stations", () => {
    const split = Array.from({ length: 100 }, (_, i) =>
      wearBands(
        profile(syntheticShaft({ bands: [{ to: 30, diameter: 2.4375 }], noise: 0.00015, seed: 9 + 13 * i })),
      ),
    ).filter(({ bands }) => bands.length > 1);
    expect(split.length).toBeLessThanOrEqual(2);
  });
});

describe("wearBands(profile) where readings scatter more than stated", () => {
  const runs: WearBands[] = Array.from({ length: 60 }, (_, i) =>
    wearBands(profile(syntheticShaft({ bands: box, noise: 0.0005, seed: 400 + 31 * i }), 0.15), { nominal }),
  );
  it("says so in words of the trade and finds no false bands", () => {
    for (const run of runs)
      expect(run.warnings.join()).toMatch(/scatter \d(\.\d)? times more than the instrument states: a rough/);
    expect(runs.filter(({ bands }) => bands.length === 3).length).toBeGreaterThanOrEqual(56);
  });
  it("does so where they scatter but twice as much, and calls none gross", () => {
    const twice = Array.from({ length: 60 }, (_, i) =>
      wearBands(profile(syntheticShaft({ bands: box, noise: 0.0003, seed: 400 + 31 * i }), 0.15)),
    );
    expect(twice.filter(({ bands }) => bands.length === 3).length).toBeGreaterThanOrEqual(58);
    expect(twice.filter(({ gross }) => gross.length > 0)).toHaveLength(0);
  });
  it("widens the uncertainties by it, with degrees of freedom, so that they cover", () => {
    const right = runs.filter(({ bands }) => bands.length === 3);
    let plain = 0;
    const inside = right.filter((run) => {
      const { value, standardUncertainty, degreesOfFreedom } = run.bands[1]!.depth!;
      expect(degreesOfFreedom).toBe(run.degreesOfFreedom);
      const alone = (run.noiseRatio * 0.00015) / Math.sqrt(run.bands[1]!.readingCount);
      expectClose(standardUncertainty.in("inch"), alone, {
        rel: 0.1,
        because: "no common uncertainty: widened u, and what a reading in doubt adds to it",
      });
      plain += Math.abs(standardUncertainty.in("inch") / alone - 1) < 1e-9 ? 1 : 0;
      return (
        Math.abs(value.in("inch") - 0.004) <=
        coverageFactor(0.95, degreesOfFreedom) * standardUncertainty.in("inch")
      );
    });
    expect(plain / right.length).toBeGreaterThan(0.75); // in most no reading of the band is in doubt
    expect(inside.length / right.length).toBeGreaterThanOrEqual(0.87); // 95 % of 60, less 2.8 standard deviations
  });
});

describe("wearBands(profile) of a short survey, two readings at each of 13 stations", () => {
  /** Bands of two to four stations each: most neighbours lie in different bands. */
  const short: readonly (readonly [readonly number[], number, number])[] = [
    [[1, 5], 2.4375, 0],
    [[7, 10, 13], 2.434, 0],
    [[15, 30, 45, 57], 2.4374, 0],
    [[61, 65], 2.4352, 0],
    [[69, 72], 2.4375, 0],
  ];
  const surveyed = (shaft: typeof short, noise: number, seed: number): WearBands => {
    const { normal } = seededNoise(seed);
    const readings = shaft.flatMap(([stations, diameter, slope]) =>
      stations.flatMap((station) =>
        [0, 90].map((angle) => ({
          station,
          angle,
          diameter: diameter + slope * (station - stations[0]!) + noise * normal(),
        })),
      ),
    );
    return wearBands(profile(readings), { nominal, wornBeyond: thou(1) });
  };

  it("does not take steps between neighbours for noise: all five bands in nearly every survey", () => {
    const runs = Array.from({ length: 60 }, (_, i) => surveyed(short, 0.00015, 900 + 17 * i));
    expect(runs.filter(({ bands }) => bands.length === 5).length).toBeGreaterThanOrEqual(58);
  });
  it("finds a slope over three stations, where each is the mean of two readings", () => {
    const sloping = short.map((band, k) => (k === 1 ? ([[7, 10, 13], 2.4338, 0.00012] as const) : band));
    const runs = Array.from({ length: 60 }, (_, i) => surveyed(sloping, 0.0001, 300 + 13 * i));
    const found = runs.filter(({ bands }) => bands.length === 5 && bands[1]!.shape === "sloping");
    expect(found.length).toBeGreaterThanOrEqual(40);
    for (const { bands } of runs) expect(bands[1]!.state).toBe("worn");
  });
  it("does not divide noise twice the stated into bands: one band in nine of ten unworn surveys", () => {
    const unworn = short.map(([stations]) => [stations, 2.4375, 0] as const);
    const runs = Array.from({ length: 100 }, (_, i) => surveyed(unworn, 0.0003, 40 + 7 * i));
    expect(runs.filter(({ bands }) => bands.length === 1).length).toBeGreaterThanOrEqual(88);
  });
});

describe("wearBands(profile, options) refuses what it cannot answer", () => {
  const few = (n: number): Profile =>
    profile(Array.from({ length: n }, (_, i) => ({ station: 1 + i, diameter: 2.4375 })));
  it("says that one reading is one reading", () => {
    expect(() => wearBands(few(1))).toThrow(/at least 3 stations .* are needed, got one reading only/);
  });
  it("says how many stations there are", () => {
    expect(() => wearBands(few(2))).toThrow(/wearBands: at least 3 stations .* got 2 with 2 readings/);
  });
  it("accepts three", () => {
    expect(wearBands(few(3)).bands).toHaveLength(1);
  });
  it("rejects options outside their bounds", () => {
    expect(() => wearBands(few(5), { minimumStations: 1 })).toThrow(/minimumStations must be .* got 1/);
    expect(() => wearBands(few(5), { wornBeyond: thou(-1) })).toThrow(/wornBeyond must be 0 or more/);
    expect(() => wearBands(few(5), { penalty: 0 })).toThrow(/penalty must be greater than 0/);
  });
});
