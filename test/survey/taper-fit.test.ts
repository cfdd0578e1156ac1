import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { coverageFactor } from "../../kernel-helpers/statistics/index.js";
import {
  type FitTaperOptions,
  fitTaper,
  profileOf,
  type TaperFit,
} from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";

interface Cone {
  readonly taper: number;
  /** Height of a barrel in the middle, on diameter [in]. */
  readonly barrel?: number;
  readonly noise?: number;
  readonly stationNoise?: number;
  readonly seed?: number;
  readonly stations?: number;
  readonly length?: number;
}

/** Paired readings of a cone, 2 in at station 0, at two angles; both share the error of their station. */
function cone({
  taper,
  barrel = 0,
  noise = 0,
  stationNoise = 0,
  seed = 1,
  stations = 12,
  length = 4.5,
}: Cone): ShaftReading[] {
  const { normal } = seededNoise(seed);
  return Array.from({ length: stations }, (_, i) => {
    const share = i / (stations - 1);
    const station = share * length;
    const at = station + stationNoise * normal();
    const bow = barrel * (1 - (2 * share - 1) ** 2);
    return [0, 90].map((angle) => ({
      station,
      angle,
      diameter: 2 + taper * at + bow + noise * normal(),
    }));
  }).flat();
}

function taperOf(
  readings: readonly ShaftReading[],
  { u = 0.2, stationU = 0, ...options }: FitTaperOptions & { u?: number; stationU?: number } = {},
): TaperFit {
  const profile = profileOf(shaftTable(readings), {
    readingUncertainty: thou(u),
    stationUncertainty: inch(stationU),
  });
  return fitTaper(profile, options);
}

const rounding = { rel: 1e-10, because: "readings without noise; rounding only" };

describe("fitTaper(profile)", () => {
  it("gives back the taper on DIAMETER, the half angle and twice that, without noise", () => {
    // 1 in per foot: half angle 2.38594°, included 4.77189° (F. D. Jones' rule; printed angle 4° 46' 19").
    const fit = taperOf(cone({ taper: 1 / 12 }));
    expectClose(fit.taper.value, 1 / 12, rounding);
    expectClose(fit.halfAngle.value.in("degree"), 2.38594, { abs: 6e-6, because: "5 printed decimals" });
    expectClose(fit.includedAngle.value.in("degree"), 4.77189, { abs: 6e-6, because: "5 printed decimals" });
    expectClose(fit.includedAngle.value.in("degree"), 4 + 46 / 60 + 19 / 3600, {
      abs: 0.5 / 3600,
      because: "printed to the second",
    });
    expectClose(fit.smallEnd.diameter.value.in("inch"), 2, rounding);
    expectClose(fit.largeEnd.diameter.value.in("inch"), 2 + 4.5 / 12, rounding);
    expectClose(fit.length.in("inch"), 4.5, rounding);
    expect(fit.readings).toHaveLength(24);
    expect(fit.gross).toEqual([]);
  });

  // Source: angle of a taper per foot on diameter, 2·atan(tpf/24), as printed in taper tables to 5 decimals.
  it.each([
    [0.125, 0.29841],
    [0.25, 0.59681],
    [0.5, 1.19349],
    [0.6, 1.4321],
    [0.625, 1.49174],
    [0.75, 1.78991],
    [1, 2.38594],
    [1.5, 3.57633],
    [3.5, 8.29714],
  ])("has for %s in per foot the half angle %s°", (perFoot, half) => {
    const fit = taperOf(cone({ taper: perFoot / 12 }));
    expectClose(fit.halfAngle.value.in("degree"), half, { abs: 6e-6, because: "5 printed decimals" });
  });

  it("falls with the station: negative taper, small end at the far end", () => {
    const fit = taperOf(cone({ taper: -0.05 }));
    expectClose(fit.taper.value, -0.05, rounding);
    expect(fit.halfAngle.value.si).toBeLessThan(0);
    expectClose(fit.smallEnd.station.in("inch"), 4.5, rounding);
    expect(fit.smallEnd.diameter.value.si).toBeLessThan(fit.largeEnd.diameter.value.si);
  });

  it("is Pearson's line of closest fit where station and diameter are equally uncertain", () => {
    // Source: test/reference/pearson-york.csv. Orthogonal line: slope −0.545561 (K. Pearson, Philosophical Magazine 2
    // (1901) 559, to 4 figures; recomputed to 6). Ordinary least squares of the same points: −0.539577.
    const data = readReference("pearson-york");
    const [x, y] = [data.numbers("x"), data.numbers("y")];
    const profile = profileOf(
      shaftTable(x.map((station, i) => ({ station, diameter: y[i]! + 10 }))), // a diameter is greater than 0
      { readingUncertainty: inch(1), stationUncertainty: inch(1) },
    );
    const printed = { abs: 6e-7, because: "6 printed decimals" };
    expectClose(fitTaper(profile).taper.value, -0.545561, printed);
    expectClose(fitTaper(profile, { method: "least squares" }).taper.value, -0.539577, printed);
  });

  it("covers the true taper with its 95 % interval in 90 to 99 of 100, errors in both, 300 tapers", () => {
    const u = { u: 0.2, stationU: 0.004 };
    const fits = Array.from({ length: 300 }, (_, i) =>
      taperOf(cone({ taper: 0.6 / 12, noise: 0.0002, stationNoise: 0.004, seed: 50 + 11 * i }), u),
    );
    const inside = fits.filter(
      ({ taper: { value, standardUncertainty: s, degreesOfFreedom } }) =>
        Math.abs(value - 0.05) <= coverageFactor(0.95, degreesOfFreedom) * s,
    );
    expect(inside.length / fits.length).toBeGreaterThanOrEqual(0.9);
    expect(inside.length / fits.length).toBeLessThanOrEqual(0.99);
    // A 1 % test for too much scatter: 3 expected.
    const warned = fits.filter(({ warnings }) =>
      warnings.some((text) => text.startsWith("Readings scatter")),
    );
    expect(warned.length).toBeLessThanOrEqual(9);
    expect(fits.filter(({ gross }) => gross.length > 0)).toHaveLength(0);
  });

  it("would be too sure of itself if the station's error were left out", () => {
    const readings = cone({ taper: 0.125, noise: 0.0002, stationNoise: 0.01, seed: 4 });
    const both = taperOf(readings, { stationU: 0.01 });
    const least = taperOf(readings, { stationU: 0.01, method: "least squares" });
    expect(both.noiseRatio).toBeLessThan(1.6);
    expect(least.noiseRatio).toBeGreaterThan(3);
    expect(least.warnings.join()).toMatch(/scatter .* times more than the instrument states/);
    // Twelve stations less two parameters: the scatter alone tells the noise.
    expect(least.taper.degreesOfFreedom).toBe(10);
    // Widened: the same stations without any scatter give the uncertainty as stated.
    const stated = taperOf(cone({ taper: 0.125 }), { method: "least squares" });
    expectClose(
      least.taper.standardUncertainty,
      stated.taper.standardUncertainty * least.noiseRatio,
      rounding,
    );
    expect(stated.taper.degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
  });

  it("has the slope uncertainty of the textbook: u/√Σ(z − z̄)², of station means", () => {
    const fit = taperOf(cone({ taper: 0.05 }), { method: "least squares" });
    const z = Array.from({ length: 12 }, (_, i) => (i / 11) * 4.5 - 2.25);
    const expected = 0.0002 / Math.SQRT2 / Math.sqrt(z.reduce((sum, v) => sum + v * v, 0));
    expectClose(fit.taper.standardUncertainty, expected, { rel: 1e-9, because: "closed form" });
    expectClose(fit.halfAngle.standardUncertainty.si, expected / 2 / (1 + 0.05 ** 2 / 4), {
      rel: 1e-9,
      because: "derivative of atan(C/2)",
    });
  });

  it("lets calibration move the ends and not the taper", () => {
    const profile = profileOf(shaftTable(cone({ taper: 0.05 })), {
      readingUncertainty: thou(0.2),
      stationUncertainty: inch(0),
    });
    const without = fitTaper(profile);
    const withCommon = fitTaper({ ...profile, commonUncertainty: thou(1) });
    expect(withCommon.taper).toEqual(without.taper);
    expectClose(
      withCommon.smallEnd.diameter.standardUncertainty.in("thou"),
      Math.hypot(1, without.smallEnd.diameter.standardUncertainty.in("thou")),
      rounding,
    );
  });

  it("uses only the stretch asked for, ends included", () => {
    const shouldered = [
      ...cone({ taper: 0.05 }),
      { station: 6, angle: 0, diameter: 3 },
      { station: 7, angle: 0, diameter: 3 },
    ];
    const fit = taperOf(shouldered, { to: inch(4.5) });
    expectClose(fit.taper.value, 0.05, rounding);
    expect(fit.readings).toHaveLength(24);
    expect(fit.profile.readings).toHaveLength(26);
  });
});

describe("fitTaper(profile) with gross readings", () => {
  it.each<[string, (d: number) => number, RegExp]>([
    ["ten times too large", (d) => d * 10, /^ten times too large: 2\.\d+ in\?$/],
    ["a turn of the thimble", (d) => d - 0.025, /^one turn of the thimble \(0\.025 in\) short/],
    ["ten thou", (d) => d + 0.01, /^one digit wrong|^$/],
  ])("flags one that is off by %s, on its line, and keeps it in sight", (_, change, likely) => {
    const sound = cone({ taper: 0.05, noise: 0.0001, seed: 6 }).map((r) => ({
      ...r,
      diameter: Number(r.diameter.toFixed(4)),
    }));
    for (const index of [0, 9, 23]) {
      const bad = sound.map((r, i) =>
        i === index ? { ...r, diameter: change(r.diameter), remark: "checked" } : r,
      );
      const fit = taperOf(bad);
      expect(fit.gross.map(({ reading }) => fit.profile.readings[reading]!.line)).toEqual([index + 2]);
      expect(fit.gross[0]!.likely).toMatch(likely);
      expect(fit.readings).toHaveLength(24);
      expectClose(fit.taper.value, 0.05, { abs: 1.2e-4, because: "3 standard uncertainties of the taper" });
    }
  });

  it("flags three of them in one survey", () => {
    const bad = cone({ taper: 0.05, noise: 0.0001, seed: 6 }).map((r, i) =>
      [2, 8, 15].includes(i) ? { ...r, diameter: r.diameter - 0.025 } : r,
    );
    const fit = taperOf(bad);
    expect(fit.gross.map(({ reading }) => fit.profile.readings[reading]!.line)).toEqual([4, 10, 17]);
  });

  it("flags none for taking part in a bow", () => {
    expect(taperOf(cone({ taper: 0.05, barrel: 0.004, noise: 0.0001 })).gross).toEqual([]);
  });

  it("flags none for the error of its station", () => {
    const flagged = Array.from({ length: 100 }, (_, i) =>
      taperOf(
        cone({ taper: 0.125, noise: 0.0001, stationNoise: 0.01, stations: 6, length: 5, seed: 37 * i }),
        { u: 0.1, stationU: 0.01 },
      ),
    ).filter(({ gross }) => gross.length > 0);
    expect(flagged).toHaveLength(0);
  });

  it("flags none on a taper that is out of round throughout", () => {
    const oval = cone({ taper: 0.05, noise: 0.0001 }).map((r) => ({
      ...r,
      diameter: r.diameter + (r.angle === 0 ? 0.002 : -0.002),
    }));
    const fit = taperOf(oval);
    expect(fit.gross).toEqual([]);
    expect(fit.noiseRatio).toBeLessThan(1.5);
  });
});

describe("fitTaper(profile).residualShape", () => {
  const shapeOf = (barrel: number, noise = 0.0001, seed = 3) =>
    taperOf(cone({ taper: 0.05, barrel, noise, seed }), { u: 0.1 }).residualShape;

  it("finds a barrel, on diameter, positive", () => {
    const { shape, bow, text } = shapeOf(0.001);
    expect(shape).toBe("barrel");
    expectClose(bow!.value.in("thou"), 1, { abs: 0.15, because: "3 standard uncertainties" });
    expect(text).toMatch(/^The flanks bow out by \d\.\d+ ± 0\.\d+ thou on diameter in the middle: barrel\.$/);
  });
  it("warns that one taper is not all there is, where the flanks bow, and only there", () => {
    const warnings = (barrel: number): string =>
      taperOf(cone({ taper: 0.05, barrel, noise: 0.0001, seed: 3 }), { u: 0.1 }).warnings.join();
    expect(warnings(0.001)).toMatch(/The flanks are not straight/);
    expect(warnings(0)).not.toMatch(/flanks/);
  });
  it("finds a hollow, negative", () => {
    const { shape, bow, text } = shapeOf(-0.001);
    expect(shape).toBe("hollow");
    expect(bow!.value.si).toBeLessThan(0);
    expect(text).toMatch(/bow in by .*: hollow\.$/);
  });
  it("gives back a bow without noise exactly", () => {
    expectClose(shapeOf(0.002, 0).bow!.value.in("thou"), 2, { rel: 1e-6, because: "rounding of residuals" });
  });
  it("takes a straight taper for straight in 90 to 99 of 100", () => {
    const straight = Array.from({ length: 150 }, (_, i) => shapeOf(0, 0.0001, 70 + 7 * i)).filter(
      ({ shape }) => shape === "straight",
    );
    expect(straight.length / 150).toBeGreaterThanOrEqual(0.9);
    expect(straight.length / 150).toBeLessThanOrEqual(0.99);
  });
  it("finds two tapers that meet, says where and which, and warns", () => {
    const meeting = (change: number, seed: number) =>
      cone({ taper: 0.05, noise: 0.0002, seed }).map((r) => ({
        ...r,
        diameter: r.diameter + change * Math.max(0, r.station - 2.6),
      }));
    const fit = taperOf(meeting(0.01, 5));
    const { shape, kinks, text } = fit.residualShape;
    expect(shape).toBe("kinked");
    expect(kinks!.length).toBe(1);
    const { station, before, behind, offLine } = kinks![0]!;
    const because = "4 standard uncertainties as stated";
    expectClose(station.value.in("inch"), 2.6, { abs: 4 * station.standardUncertainty.in("inch"), because });
    expectClose(before.value, 0.05, { abs: 4 * before.standardUncertainty, because });
    expectClose(behind.value, 0.06, { abs: 4 * behind.standardUncertainty, because });
    expect(offLine.si).toBeLessThan(0);
    expect(text).toMatch(
      /^The flanks have a kink at station 2\.\d+ ± 0\.\d+ in: 0\.(599|60\d)\d* ± 0\.\d+ in per foot before it, 0\.72\d+ ± 0\.\d+ in per foot behind it\. These are two tapers, not one\.$/,
    );
    expect(fit.warnings.join()).toMatch(/because the flanks are not straight.*flanks are kinked/);
    // A band worn parallel: its taper is about 0.
    const worn = taperOf(meeting(-0.05, 8)).residualShape.kinks![0]!;
    expectClose(worn.behind.value, 0, { abs: 4 * worn.behind.standardUncertainty, because });
    // Taken from the stretch of one side alone the flank is straight.
    const side = taperOf(meeting(0.01, 5), { to: inch(2.5) });
    expect(side.residualShape.shape).toBe("straight");
    expectClose(side.taper.value, before.value, { abs: 4 * side.taper.standardUncertainty, because });
  });
  it("seldom takes a straight flank or a bow for kinked", () => {
    const kinked = (barrel: number): number =>
      Array.from({ length: 60 }, (_, i) => shapeOf(barrel, 0.0001, 71 + 5 * i)).filter(
        ({ shape }) => shape === "kinked",
      ).length / 60;
    expect(kinked(0)).toBeLessThanOrEqual(0.05);
    expect(kinked(0.002)).toBeLessThanOrEqual(0.1);
  });
  it("cannot tell from three stations", () => {
    const { residualShape } = taperOf(cone({ taper: 0.05, stations: 3 }));
    expect(residualShape.shape).toBe("cannot tell");
    expect(residualShape.bow).toBeUndefined();
    expect(residualShape.text).toMatch(/cannot be told from 3 stations; at least 4/);
  });
  it("speaks of micrometres where the table is metric", () => {
    const profile = profileOf(shaftTable(cone({ taper: 0.05, barrel: 0.001 }), { unit: "mm" }), {
      readingUncertainty: thou(0.1),
      stationUncertainty: inch(0),
    });
    expect(fitTaper(profile).residualShape.text).toMatch(/bow out by 25\.\d ± \d\.\d µm on diameter/);
  });
});

describe("fitTaper(profile, options) refuses", () => {
  it("fewer than three stations", () => {
    expect(() => taperOf([{ station: 1, diameter: 2 }])).toThrow(
      /at least 3 stations are needed, got one reading only/,
    );
    expect(() => taperOf(cone({ taper: 0.05, stations: 2 }))).toThrow(
      /at least 3 stations are needed, got 2/,
    );
    expect(() => taperOf(cone({ taper: 0.05 }), { from: inch(4) })).toThrow(
      /between 4 in and the last, got 2/,
    );
  });
  it("a stretch that ends before it begins", () => {
    expect(() => taperOf(cone({ taper: 0.05 }), { from: inch(3), to: inch(1) })).toThrow(
      /from must lie before to/,
    );
  });
});
