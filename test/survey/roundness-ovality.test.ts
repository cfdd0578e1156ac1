import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { ovalityOf, type Profile, profileOf } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { rad } from "../support/length-table.js";
import { seededNoise } from "../support/seeded-noise.js";
import { shaftTable } from "../support/shaft-table.js";

const rounding = { rel: 1e-6, because: "a diameter of inches holds thousandths to 1e-10" };

/** A shaft oval by `oval` thou on diameter, largest at `at` degrees, each station of another mean size. */
function ovalShaft(
  angles: readonly number[],
  oval: number,
  at: number,
  stations: readonly number[] = [5],
  noise: () => number = () => 0,
): Profile {
  const rows = stations.flatMap((station) =>
    angles.map((angle) => ({
      station,
      angle,
      diameter: 2.4 + station / 1000 + (oval / 2000) * Math.cos(2 * rad(angle - at)) + noise() / 1000,
    })),
  );
  return profileOf(shaftTable(rows), { readingUncertainty: thou(0.2), stationUncertainty: inch(0) });
}

describe("ovalityOf(profile, from, to)", () => {
  it("gives back ovality on diameter and its directions from three angles or more", () => {
    for (const angles of [
      [0, 60, 120],
      [0, 45, 90, 135],
      [10, 40, 100, 170, 200],
    ]) {
      const found = ovalityOf(ovalShaft(angles, 3, 70), inch(5));
      expect(found.bound).toBe("measured");
      expectClose(found.ovality.value.in("thou"), 3, rounding);
      expectClose(found.largestAt!.value.in("degree"), 70, rounding);
      expectClose(found.smallestAt!.value.in("degree"), 160, rounding);
    }
  });
  it("has u(ovality) = 2u √(2/N) for N equally spaced diameters, and 1/√S of it from S stations", () => {
    const one = ovalityOf(ovalShaft([0, 45, 90, 135], 3, 0), inch(5));
    expectClose(one.ovality.standardUncertainty.in("thou"), 2 * 0.2 * Math.sqrt(2 / 4), rounding);
    const four = ovalityOf(ovalShaft([0, 45, 90, 135], 3, 0, [5, 6, 7, 8]), inch(5), inch(8));
    expectClose(four.ovality.standardUncertainty.in("thou"), 0.2 * Math.sqrt(2 / 4), rounding);
    expect(four.stationCount).toBe(4);
  });
  it("takes no part of a change of size from station to station for ovality", () => {
    const found = ovalityOf(ovalShaft([0, 60, 120], 3, 20, [5, 50, 500]), inch(5), inch(500));
    expectClose(found.ovality.value.in("thou"), 3, rounding);
  });
  it("gives a lower bound from two angles, equal to the ovality only where they lie on it", () => {
    const on = ovalityOf(ovalShaft([0, 90], 3, 0), inch(5));
    expect(on.bound).toBe("at least");
    expectClose(on.ovality.value.in("thou"), 3, rounding);
    expect(on.largestAt).toBeUndefined();
    expect(on.text).toMatch(/at least .* two directions give a lower bound/);
    for (const at of [10, 30, 44, 80]) {
      const off = ovalityOf(ovalShaft([0, 90], 3, at), inch(5)).ovality.value.in("thou");
      expectClose(off, 3 * Math.abs(Math.cos(2 * rad(at))), rounding);
    }
    // 60° apart: |d| / sin 60° is the ovality where the two lie evenly about 45° off its axes.
    expectClose(ovalityOf(ovalShaft([0, 60], 3, 75), inch(5)).ovality.value.in("thou"), 3, rounding);
  });
  it("reads opposite angles as one diameter", () => {
    expect(ovalityOf(ovalShaft([0, 90, 180, 270], 3, 0), inch(5)).angleCount).toBe(2);
  });
  it("calls a round shaft oval in about 5 of 100 surveys, seeded, and names no direction else", () => {
    for (const [seed, angles] of [
      [31, [0, 60, 120]],
      [32, [0, 90]],
    ] as const) {
      const noise = seededNoise(seed);
      let real = 0;
      for (let i = 0; i < 300; i++) {
        const found = ovalityOf(
          ovalShaft(angles, 0, 0, [5, 6], () => 0.2 * noise.normal()),
          inch(5),
          inch(6),
        );
        if (found.real) real += 1;
        else expect(found.largestAt).toBeUndefined();
      }
      // Binomial: 15 ± 3·3.8 of 300.
      expect(real).toBeGreaterThan(3);
      expect(real).toBeLessThan(27);
    }
  });
  it("widens its uncertainty where the shape is no oval", () => {
    const noise = seededNoise(33);
    const found = ovalityOf(
      ovalShaft([0, 30, 60, 90, 120, 150], 3, 0, [5, 6], () => 2 * noise.normal()),
      inch(5),
      inch(6),
    );
    expect(found.warnings.join(" ")).toMatch(/scatter .* times more than the instrument states/);
    expect(found.ovality.degreesOfFreedom).toBe(8);
    expect(found.ovality.standardUncertainty.in("thou")).toBeGreaterThan(0.4);
  });
  it("rejects one direction, pairs that see one part only, and a stretch the wrong way round", () => {
    expect(() => ovalityOf(ovalShaft([0], 3, 0), inch(5))).toThrow(
      /at least one station read at two different directions/,
    );
    expect(() => ovalityOf(ovalShaft([0, 90], 3, 0), inch(6), inch(5))).toThrow(
      /from must not lie behind to/,
    );
    const pairs = profileOf(
      shaftTable([
        { station: 1, angle: 0, diameter: 2.4 },
        { station: 1, angle: 90, diameter: 2.4 },
        { station: 2, angle: 10, diameter: 2.4 },
        { station: 2, angle: 80, diameter: 2.4 },
      ]),
      { readingUncertainty: thou(0.2), stationUncertainty: inch(0) },
    );
    expect(() => ovalityOf(pairs, inch(1), inch(2))).toThrow(/pairs that all see the same part of it/);
  });
});
