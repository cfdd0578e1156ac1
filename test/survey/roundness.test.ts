import { describe, expect, it } from "vitest";
import { degree, inch, thou } from "../../kernel-helpers/quantity/index.js";
import { type Roundness, roundnessOf, type SetUp, veeFactor } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { equalAngles, lengthTable, rad } from "../support/length-table.js";
import { seededNoise } from "../support/seeded-noise.js";

const rounding = { rel: 1e-9, because: "rounding only" };
const centres: SetUp = { held: "between centres" };
const vee = (included: number): SetUp => ({ held: "in a vee block", included: degree(included) });

/** Readings [thou] round one section, at so many angles. */
function section(count: number, radius: (t: number) => number): ReturnType<typeof lengthTable> {
  return lengthTable(
    "angle [deg], reading [thou]",
    equalAngles(count).map((a) => [a, radius(rad(a))]),
  );
}

const lobes = ({ lobes: found }: Roundness, count: number): Roundness["lobes"][number] =>
  found.find((lobe) => lobe.count === count)!;

describe("veeFactor(order, vee)", () => {
  // ISO 4292:1985, summit setting, 90°, sizes from memory: 1, 2, 0.4, 2, 1, -, 2.4, -, 1 for 2 to 10 undulations.
  it("has the published sizes for 90°", () => {
    const sizes = [2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => Math.abs(veeFactor(n, degree(90))));
    [1, 2, 0.414, 2, 1, 0, 2.414, 0, 1].forEach((size, i) => {
      expectClose(sizes[i]!, size, { rel: 1e-3, abs: 1e-12, because: "three digits" });
    });
  });
  it("is blind to an off-centre surface in any vee, and to two lobes in one of 60°", () => {
    for (const angle of [30, 60, 90, 120])
      expectClose(veeFactor(1, degree(angle)), 0, { abs: 1e-12, because: "rounding" });
    expectClose(veeFactor(2, degree(60)), 0, { abs: 1e-12, because: "rounding" });
    expectClose(veeFactor(3, degree(60)), 3, rounding);
  });
  it("is what a drawn shaft does that is turned in a drawn vee", () => {
    // A shaft of radius 1 with lobes of 1e-5, laid into the vee by its support function, read on the bisector.
    const height = 1e-5;
    for (const [included, n] of [
      [90, 3],
      [90, 4],
      [60, 5],
      [120, 3],
    ] as const) {
      const reading = (turned: number): number => {
        const radius = (t: number): number => 1 + height * Math.cos(n * (t - turned));
        // Largest r(t)·cos(t − normal) near the normal: how far the shaft reaches towards a face.
        const reachTo = (normal: number): number => {
          let most = 0;
          for (let i = -400; i <= 400; i++) {
            const t = normal + i * 1e-6 * n;
            most = Math.max(most, radius(t) * Math.cos(t - normal));
          }
          return most;
        };
        const down = Math.PI / 2 + rad(included) / 2; // from the indicator, which points down from 0
        const [left, right] = [reachTo(down), reachTo(-down)];
        // Faces at distance 1 from the nominal centre: c·e = 1 − reach on each side.
        const up = (2 - left - right) / (2 * Math.cos(down));
        return up + radius(0);
      };
      const turns = Array.from({ length: 24 }, (_, k) => (2 * Math.PI * k) / 24);
      const wave = turns.reduce((sum, t) => sum + reading(t) * Math.cos(n * t), 0) / 12;
      expectClose(wave / height, veeFactor(n, degree(included)), {
        rel: 2e-3,
        abs: 1e-3,
        because: "the drawn shaft is not of first order only",
      });
    }
  });
  it("rejects no order and no vee", () => {
    expect(() => veeFactor(0, degree(90))).toThrow(
      /veeFactor: order must be a whole number of at least 1, got 0/,
    );
    expect(() => veeFactor(2, degree(180))).toThrow(/veeFactor: vee must lie between 0 and 180°/);
  });
});

describe("roundnessOf(table, options)", () => {
  const u = { readingUncertainty: thou(0.05) };
  it("splits eccentricity, oval and three lobes between centres, on radius", () => {
    const table = section(
      12,
      (t) =>
        2 * Math.cos(t - rad(40)) + 0.5 * Math.cos(2 * (t - rad(70))) + 0.3 * Math.cos(3 * (t - rad(20))),
    );
    const found = roundnessOf(table, { setUp: centres, ...u });
    expectClose(found.eccentricity!.value.in("thou"), 2, rounding);
    expectClose(found.direction!.value.in("degree"), 40, rounding);
    expectClose(lobes(found, 2).height!.value.in("thou"), 1, rounding);
    expectClose(lobes(found, 2).crestAt!.value.in("degree"), 70, rounding);
    expectClose(lobes(found, 3).height!.value.in("thou"), 0.6, rounding);
    expect(found.lobes.filter(({ real }) => real).map(({ count }) => count)).toEqual([2, 3]);
  });
  it("has a TIR of twice the eccentricity for a round shaft off centre, and no deviation", () => {
    const found = roundnessOf(
      section(8, (t) => 1.5 * Math.cos(t)),
      { setUp: centres, ...u },
    );
    expectClose(found.tir.in("thou"), 2 * found.eccentricity!.value.in("thou"), rounding);
    expectClose(found.deviation.value.in("thou"), 0, { abs: 1e-9, because: "rounding" });
  });
  it("gives the roundness of the shaft, not of the readings, in a vee block", () => {
    // 3 lobes of 0.4 valley to crest at 10°, 2 of 0.2 at 50°: what a vee of 90° makes of them.
    const seen = (t: number): number =>
      veeFactor(3, degree(90)) * 0.2 * Math.cos(3 * (t - rad(10))) +
      veeFactor(2, degree(90)) * 0.1 * Math.cos(2 * (t - rad(50))) +
      veeFactor(4, degree(90)) * 0.15 * Math.cos(4 * (t - rad(5)));
    const found = roundnessOf(section(16, seen), { setUp: vee(90), ...u, highest: 5 });
    expectClose(lobes(found, 3).height!.value.in("thou"), 0.4, rounding);
    expectClose(lobes(found, 2).height!.value.in("thou"), 0.2, rounding);
    expectClose(lobes(found, 4).height!.value.in("thou"), 0.3, rounding);
    expectClose(lobes(found, 4).crestAt!.value.in("degree"), 5, rounding);
    expect(found.deviationIs).toBe("at least");
    expect(found.eccentricity).toBeUndefined();
    expect(found.text).toMatch(/at least .* on radius .* from the lobes that a vee of 90° shows/);
  });
  it("refuses lobes that the vee does not show, and names them", () => {
    const found = roundnessOf(
      section(24, (t) => Math.cos(3 * t)),
      { setUp: vee(60), ...u, highest: 6 },
    );
    expect(lobes(found, 2).height).toBeUndefined();
    expect(lobes(found, 2).real).toBe(false);
    expect(found.warnings.join(" ")).toMatch(
      /does not show 2, 4 or 5 lobes: the shaft may have them and read round/,
    );
  });
  it("covers the eccentricity in about 95 of 100 noisy sections, seeded", () => {
    const noise = seededNoise(21);
    let covered = 0;
    for (let i = 0; i < 300; i++) {
      const table = section(8, (t) => 2 * Math.cos(t - 1) + 0.1 * noise.normal());
      const { eccentricity } = roundnessOf(table, { setUp: centres, readingUncertainty: thou(0.1) });
      if (Math.abs(eccentricity!.value.in("thou") - 2) < 1.96 * eccentricity!.standardUncertainty.in("thou"))
        covered += 1;
    }
    // Binomial: 285 ± 3·3.8 of 300.
    expect(covered).toBeGreaterThan(273);
    expect(covered).toBeLessThan(297);
  });
  it("calls lobes of a round shaft real in at most about 5 of 100 sections, seeded", () => {
    const noise = seededNoise(22);
    let real = 0;
    for (let i = 0; i < 300; i++) {
      const table = section(12, () => 0.1 * noise.normal());
      const found = roundnessOf(table, { setUp: centres, readingUncertainty: thou(0.1) });
      if (found.lobes.some((lobe) => lobe.real)) real += 1;
    }
    // Binomial: 15 ± 3·3.8 of 300.
    expect(real).toBeLessThan(27);
    expect(real).toBeGreaterThan(3);
  });
  it("warns where one place was read twice and does not agree", () => {
    const rows = [...equalAngles(8), 360].map((a) => [a, a === 360 ? 0.5 : 0]);
    const table = lengthTable("angle [deg], reading [thou]", rows);
    expect(roundnessOf(table, { setUp: centres, ...u }).warnings.join(" ")).toMatch(
      /Lines 2 and 10 read one place and differ by more than the indicator explains/,
    );
  });
  it("demands the set-up, one station, enough angles and a reading's uncertainty", () => {
    const table = section(8, Math.cos);
    expect(() => roundnessOf(table, { setUp: undefined as unknown as SetUp, ...u })).toThrow(
      /roundnessOf: setUp must say how the shaft was held/,
    );
    expect(() => roundnessOf(table, { setUp: { held: "in a vee block" } as SetUp, ...u })).toThrow(
      /a vee block needs its included angle, for a reading in it is no change of radius/,
    );
    expect(() => roundnessOf(table, { setUp: centres })).toThrow(
      /how good a reading is must be known, got no instrument for "reading"/,
    );
    expect(() => roundnessOf(table, { setUp: centres, ...u, highest: 4 })).toThrow(
      /highest must be a whole number from 1 to 3 for 8 angles, got 4/,
    );
    expect(() =>
      roundnessOf(
        lengthTable("angle [deg], reading [thou]", [
          [0, 1],
          [90, 2],
        ]),
        { setUp: centres, ...u },
      ),
    ).toThrow(/at least 3 different angles are needed at each station, got 2/);
    const two = lengthTable(
      "station [in], angle [deg], reading [thou]",
      [1, 2].flatMap((z) => equalAngles(4).map((a) => [z, a, 0])),
    );
    expect(() => roundnessOf(two, { setUp: centres, ...u })).toThrow(
      /one station must be chosen with \{ station \}, got 1 in, 2 in/,
    );
    expect(() => roundnessOf(two, { setUp: centres, ...u, station: inch(3) })).toThrow(
      /no reading was taken at 3 in/,
    );
  });
});
