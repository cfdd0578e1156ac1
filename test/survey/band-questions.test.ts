import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import {
  asMadeDiameter,
  asMadeIfLeft,
  bandAt,
  deepestBand,
  smallestBand,
} from "../../kernel-helpers/survey/band-questions.js";
import { profileOf, wearBands } from "../../kernel-helpers/survey/index.js";
import { meanBetween } from "../../kernel-helpers/survey/mean-between.js";
import { expectClose } from "../support/expect-close.js";
import { shaftTable } from "../support/shaft-table.js";
import { syntheticShaft } from "../support/synthetic-shaft.js";

const noise = 0.0001;
const readings = syntheticShaft({
  noise,
  seed: 7,
  bands: [
    { to: 8, diameter: 2.4373 },
    { to: 16, diameter: 2.434 },
    { to: 24, diameter: 2.4373 },
    { to: 30, diameter: 2.4355 },
    { to: 40, diameter: 2.4373 },
  ],
});
const uncertainties = { readingUncertainty: inch(noise), stationUncertainty: inch(0.02) };
const profile = profileOf(shaftTable(readings), uncertainties);
const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: inch(0.001) });

describe("deepestBand(wear)", () => {
  it("is the worn band with the largest depth", () => {
    const deepest = deepestBand(wear);
    expect([deepest.from.in("inch"), deepest.to.in("inch")]).toEqual([9, 16]);
  });
  it("says so when nothing is worn, or nothing was judged", () => {
    expect(() => deepestBand(wearBands(profile, { nominal: inch(2.4375), wornBeyond: inch(0.1) }))).toThrow(
      /none of the 5 bands is judged worn$/,
    );
    expect(() => deepestBand(wearBands(profile))).toThrow(/no nominal diameter was given/);
  });
});

describe("asMadeDiameter(wear)", () => {
  it("finds the made diameter within its uncertainty", () => {
    const made = asMadeDiameter(wear);
    expectClose(made.value.in("inch"), 2.4373, { abs: 3 * noise * 0.14, because: "3 u of 52 readings" });
  });
  it("knows it better than any single band, as 1/√Σ(1/u²)", () => {
    const weights = wear.bands
      .filter(({ state }) => state === "as made")
      .map(({ diameter }) => 1 / diameter.standardUncertainty.si ** 2);
    const expected = 1 / Math.sqrt(weights.reduce((a, b) => a + b, 0));
    expect(wear.profile.commonUncertainty.si).toBe(0);
    expectClose(asMadeDiameter(wear).standardUncertainty.si, expected, { rel: 1e-9, because: "identity" });
  });
  it("never knows it better than what all readings share", () => {
    const shared = { ...wear, profile: { ...wear.profile, commonUncertainty: thou(1) } };
    const bands = wear.bands.map((band) => ({
      ...band,
      diameter: {
        ...band.diameter,
        standardUncertainty: inch(Math.hypot(band.diameter.standardUncertainty.in("inch"), 0.001)),
      },
    }));
    const u = asMadeDiameter({ ...shared, bands }).standardUncertainty.in("thou");
    expect(u).toBeGreaterThan(1);
    expectClose(u, 1, { rel: 1e-3, because: "0.014 thou of scatter beside 1 thou in common" });
  });
  it("says so when no band is left as made", () => {
    expect(() => asMadeDiameter(wearBands(profile, { nominal: inch(2.45) }))).toThrow(/none of the 5 bands/);
  });
});

describe("smallestBand(wear)", () => {
  it("is the deepest where one is worn, else the smallest, so that every survey has one", () => {
    expect(smallestBand(wear)).toBe(deepestBand(wear));
    const unjudged = wearBands(profile);
    const least = Math.min(...unjudged.bands.map(({ diameter }) => diameter.value.si));
    expect(smallestBand(unjudged).diameter.value.si).toBe(least);
  });
});

describe("asMadeIfLeft(wear)", () => {
  it("is the diameter as made, and undefined where no band is left so", () => {
    expect(asMadeIfLeft(wear)).toEqual(asMadeDiameter(wear));
    expect(asMadeIfLeft(wearBands(profile, { nominal: inch(2.45) }))).toBeUndefined();
  });
});

describe("bandAt(wear, station)", () => {
  it("is the band a station lies in, and none between bands or off the shaft", () => {
    expect(bandAt(wear, inch(12))?.number).toBe(2);
    expect(bandAt(wear, inch(8.5))).toBeUndefined();
    expect(bandAt(wear, inch(99))).toBeUndefined();
  });
});

describe("meanBetween(profile, from, to)", () => {
  it("is the plain mean with s/√n, n − 1, of all readings there", () => {
    // By hand: 1, 2, 3, 4 thou above 2 in have mean 2.5, s² = 5/3, u = √(5/3)/2 = 0.6455 thou.
    const four = [1, 2, 3, 4].map((excess, i) => ({ station: i + 1, diameter: 2 + excess / 1000 }));
    const mean = meanBetween(profileOf(shaftTable(four), uncertainties), inch(1), inch(4));
    expectClose(mean.value.in("inch"), 2.0025, { rel: 1e-12, because: "exact by hand" });
    expectClose(mean.standardUncertainty.in("thou"), Math.sqrt(5 / 3) / 2, { rel: 1e-9, because: "by hand" });
    expect(mean.degreesOfFreedom).toBe(3);
  });
  it("agrees with the band's own fit where nothing was misread", () => {
    const band = deepestBand(wear);
    const mean = meanBetween(profile, band.from, band.to);
    expectClose(mean.value.si, band.diameter.value.si, { rel: 1e-12, because: "equal weights" });
  });
  it("needs two readings", () => {
    expect(() => meanBetween(profile, inch(8.2), inch(8.8))).toThrow(/at least two readings .* got 0/);
  });
});
