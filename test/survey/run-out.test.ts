import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { readRebuildFile } from "../../kernel-helpers/record/rebuild-file.js";
import {
  profileOf,
  type RunOut,
  readTableFile,
  runOut,
  wearBands,
} from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { equalAngles, lengthTable, rad } from "../support/length-table.js";
import { seededNoise } from "../support/seeded-noise.js";
import { shaftTable } from "../support/shaft-table.js";

const rounding = { rel: 1e-8, because: "rounding only" };
const u = { readingUncertainty: thou(0.1) };
const stations = [0, 10, 20, 30, 40, 50, 60];

/** A vector across the shaft [thou] at an angle [deg]. */
type Vector = readonly [number, number];

interface Shaft {
  readonly first?: Vector;
  readonly last?: Vector;
  readonly bow?: Vector;
  /** One-sided wear as half a cosine, deepest at an angle. */
  readonly wear?: { readonly at: readonly number[]; readonly side: Vector };
  readonly noise?: () => number;
  readonly stations?: readonly number[];
  readonly count?: number;
}

/** Readings [thou] of a shaft that is known, each station with a zero of its own. */
function turned(shaft: Shaft): ReturnType<typeof lengthTable> {
  const { first = [0, 0], last = [0, 0], bow = [0, 0], wear, noise = () => 0, count = 8 } = shaft;
  const along = (t: number, [size, angle]: Vector): number => size * Math.cos(t - rad(angle));
  const rows = (shaft.stations ?? stations).flatMap((z) => {
    const share = z / 60;
    return equalAngles(count).map((angle) => {
      const t = rad(angle);
      const worn = wear?.at.includes(z) ? Math.max(0, along(t, wear.side)) : 0;
      const axis =
        (1 - share) * along(t, first) + share * along(t, last) + 4 * share * (1 - share) * along(t, bow);
      return [z, angle, axis - worn + z + noise()];
    });
  });
  return lengthTable("station [in], angle [deg], reading [thou]", rows);
}

/** Wear bands of a shaft worn at some stations, for telling sound from worn. */
function wornAt(at: readonly number[]): ReturnType<typeof wearBands> {
  const rows = stations.flatMap((station) => [
    { station, diameter: at.includes(station) ? 2.43 : 2.4375 },
    { station: station + 1, diameter: at.includes(station) ? 2.43 : 2.4375 },
  ]);
  const profile = profileOf(shaftTable(rows), { readingUncertainty: thou(0.1), stationUncertainty: inch(0) });
  return wearBands(profile, { nominal: inch(2.4375) });
}

describe("runOut(table, options)", () => {
  it("splits centre offset and bend of a shaft that is known, on radius", () => {
    const found = runOut(turned({ first: [1.2, 30], last: [0.7, 200], bow: [2.5, 110] }), u);
    expectClose(found.offset!.first.distance.value.in("thou"), 1.2, rounding);
    expectClose(found.offset!.first.direction.value.in("degree"), 30, rounding);
    expectClose(found.offset!.last.distance.value.in("thou"), 0.7, rounding);
    expectClose(found.offset!.last.direction.value.in("degree"), 200, rounding);
    expectClose(found.bend!.distance.value.in("thou"), 2.5, rounding);
    expectClose(found.bend!.direction.value.in("degree"), 110, rounding);
    expect(found.stations.every(({ lowSide }) => lowSide === undefined)).toBe(true);
    expect(found.warnings).toEqual([]);
  });
  it("has a TIR of twice the eccentricity, which the angles read nearly reach", () => {
    const found = runOut(turned({ first: [1, 45], last: [1, 45] }), u);
    for (const { tir, centre } of found.stations) {
      expectClose(centre.distance.value.in("thou"), 1, rounding);
      expectClose(tir.in("thou"), 2, rounding);
    }
    expect(found.bend!.real).toBe(false);
  });
  it("finds the axis from sound stations and the worn side against it, twice the off-centre distance", () => {
    const at = [20, 30];
    const table = turned({
      first: [1.2, 30],
      last: [0.7, 200],
      bow: [2.5, 110],
      wear: { at, side: [4, 75] },
      count: 16,
    });
    const found = runOut(table, { ...u, wear: wornAt(at) });
    expectClose(found.bend!.distance.value.in("thou"), 2.5, rounding);
    const low = found.stations.filter(({ lower }) => lower !== undefined);
    expect(low.map(({ station }) => Math.round(station.in("inch")))).toEqual(at);
    for (const { lower, lowSide } of low) {
      // Half a cosine has odd waves of order 1 only (Fourier): opposite sides differ by its whole depth.
      expectClose(lower!.value.in("thou"), 4, { rel: 1e-6, because: "16 angles sample a half cosine" });
      expectClose(lowSide!.value.in("degree"), 75, { rel: 1e-2, because: "16 angles sample a half cosine" });
    }
    expect(found.wornLeftOut).toBe(true);
  });
  it("says that wear pulls the axis towards itself where the worn bands are not known", () => {
    const found = runOut(turned({ wear: { at: [20, 30], side: [4, 75] } }), u);
    expect(found.warnings.join(" ")).toMatch(
      /farther from a bowed axis .*give \{ wear \} to leave worn bands out/,
    );
    expect(found.bend!.distance.degreesOfFreedom).toBe(8);
  });
  it("takes the bow as none at the centre holes where these are given", () => {
    const all = turned({
      first: [1.2, 30],
      last: [0.7, 200],
      bow: [2.5, 110],
      stations: [10, 20, 30, 40, 50],
    });
    const found = runOut(all, { ...u, centres: [inch(0), inch(60)] });
    expectClose(found.bend!.distance.value.in("thou"), 2.5, rounding);
    expectClose(found.offset!.first.distance.value.in("thou"), 1.2, rounding);
    expect(() => runOut(all, { ...u, centres: [inch(20), inch(60)] })).toThrow(
      /centre holes must lie at or beyond the stations read/,
    );
  });
  it("covers bend and its direction in about 95 of 100 shafts, and calls a straight one bent in about 1, seeded", () => {
    const noise = seededNoise(41);
    let [height, direction, bent] = [0, 0, 0];
    const within = (
      m: { value: { si: number }; standardUncertainty: { si: number } },
      truth: number,
    ): boolean => Math.abs(m.value.si - truth) < 1.96 * m.standardUncertainty.si;
    for (let i = 0; i < 250; i++) {
      const shaft = { first: [1, 30], last: [1, 90], noise: () => 0.1 * noise.normal() } as const;
      const { bend } = runOut(turned({ ...shaft, bow: [1, 110] }), u);
      if (within(bend!.distance, thou(1).si)) height += 1;
      if (within(bend!.direction, rad(110))) direction += 1;
      if (runOut(turned(shaft), u).bend!.real) bent += 1;
    }
    // Binomial: 237.5 ± 3·3.4 of 250; 2.5 ± 3·1.6.
    for (const covered of [height, direction]) {
      expect(covered).toBeGreaterThan(226);
      expect(covered).toBeLessThan(249);
    }
    expect(bent).toBeLessThan(9);
  });
  it("says what too few stations cannot tell", () => {
    const two = runOut(turned({ stations: [0, 60], first: [1, 0] }), u);
    expect(two.bend).toBeUndefined();
    expect(two.warnings.join(" ")).toMatch(/Two stations do not show a bend/);
    const one = runOut(turned({ stations: [0], first: [1, 0] }), u);
    expect(one.offset).toBeUndefined();
    expect(one.warnings.join(" ")).toMatch(/One station does not tell offset from bend/);
    expect(runOut(turned({ stations: [0, 30, 60] }), u).warnings.join(" ")).toMatch(
      /nothing to check them by/,
    );
  });
  it("rejects a table without stations or angles", () => {
    const bare = lengthTable(
      "angle [deg], reading [thou]",
      equalAngles(4).map((a) => [a, 0]),
    );
    expect(() => runOut(bare, u)).toThrow(/runOut: bench must have a column "station"/);
    expect(() => runOut(lengthTable("station [in], reading [thou]", [[1, 0]]), u)).toThrow(
      /every reading must have an angle, got none on line 2/,
    );
  });
  it("uses worn stations for the axis where no sound ones are read, and says so", () => {
    const wear = wornAt([0, 10, 20]);
    const none = { ...wear, bands: wear.bands.map((band) => ({ ...band, state: "worn" as const })) };
    const found = runOut(turned({}), { ...u, wear: none });
    const plain = runOut(turned({}), u);
    expect(found.wornLeftOut).toBe(false);
    expect(found.stations).toEqual(plain.stations);
    expect(found.warnings.join()).toMatch(
      /Only 0 of \d+ stations lie on bands as made: worn ones had to serve/,
    );
    expect(plain.warnings.join()).not.toMatch(/bands as made/);
  });
});

describe("runOut on the demo", () => {
  const folder = join(__dirname, "..", "..", "worksheets", "demo");
  const { instruments, parts, angles } = readRebuildFile(join(folder, "rebuild.json"));
  const read = (name: string): ReturnType<typeof readTableFile> =>
    readTableFile(join(folder, "tables", `${name}.csv`), { instruments, parts });
  const wear = wearBands(profileOf(read("shaft-survey")), { nominal: inch(2.4375), wornBeyond: thou(1) });
  const found: RunOut = runOut(read("run-out"), { wear, centres: [inch(0), inch(74.5)] });
  // What the invented readings were made from: the truth to be found again.
  const near = (value: number, truth: number, standard: number): boolean =>
    Math.abs(value - truth) < 3 * standard;
  it("finds the offset, the bend and the worn side that the invented readings were made from", () => {
    const is = (
      at: { distance: { value: { in(u: "thou"): number }; standardUncertainty: { in(u: "thou"): number } } },
      truth: number,
    ): boolean => near(at.distance.value.in("thou"), truth, at.distance.standardUncertainty.in("thou"));
    expect(is(found.offset!.first, 1.2)).toBe(true);
    expect(is(found.offset!.last, 0.6)).toBe(true);
    expect(is(found.bend!, 2.5)).toBe(true);
    expectClose(found.bend!.direction.value.in("degree"), 250, { abs: 10, because: "U of the direction" });
    const seventh = found.stations.find(({ station }) => Math.abs(station.in("inch") - 7) < 1e-6)!;
    expect(near(seventh.lower!.value.in("thou"), 3.4, seventh.lower!.standardUncertainty.in("thou"))).toBe(
      true,
    );
    expectClose(seventh.lowSide!.value.in("degree"), 90, { abs: 12, because: "U of the direction" });
    expect(angles["load direction"]!.in("degree")).toBe(90);
  });
});
