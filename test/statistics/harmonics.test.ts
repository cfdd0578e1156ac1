import { describe, expect, it } from "vitest";
import {
  chiSquareSurvival,
  countDirections,
  fitHarmonics,
  fSurvival,
  harmonicOf,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { equalAngles, rad } from "../support/length-table.js";
import { seededNoise } from "../support/seeded-noise.js";

const rounding = { rel: 1e-10, because: "rounding only" };
const eight = equalAngles(8).map(rad);
const uneven = [3, 40, 95, 120, 170, 222, 260, 301, 344].map(rad);

describe("fitHarmonics(angles, y, options)", () => {
  it("is the discrete Fourier transform for equally spaced angles", () => {
    const noise = seededNoise(3);
    const y = eight.map(() => noise.normal());
    const fit = fitHarmonics(eight, y, { orders: [1, 2, 3], u: 0.5 });
    for (const wave of fit.harmonics) {
      const a = (2 / 8) * eight.reduce((sum, t, i) => sum + y[i]! * Math.cos(wave.order * t), 0);
      const b = (2 / 8) * eight.reduce((sum, t, i) => sum + y[i]! * Math.sin(wave.order * t), 0);
      expectClose(wave.cosine, a, rounding);
      expectClose(wave.sine, b, rounding);
      // u² of a coefficient is 2u²/N.
      expectClose(wave.uAmplitude, 0.5 * Math.sqrt(2 / 8), rounding);
      expectClose(
        wave.uPhase,
        Math.min(Math.PI / wave.order / Math.sqrt(3), 0.25 / wave.amplitude / wave.order),
        rounding,
      );
    }
  });
  it("gives back waves put in, at uneven angles too, with the first crest between 0 and a wave", () => {
    const waves = [
      { order: 1, amplitude: 3, phase: 5.9 },
      { order: 2, amplitude: 0.4, phase: 3.0 },
      { order: 3, amplitude: 0.7, phase: 0.2 },
    ];
    const y = uneven.map((t) =>
      waves.reduce((sum, w) => sum + w.amplitude * Math.cos(w.order * (t - w.phase)), 7),
    );
    const fit = fitHarmonics(uneven, y, { orders: [1, 2, 3], u: 0.1 });
    expectClose(fit.mean, 7, rounding);
    fit.harmonics.forEach((wave, k) => {
      expectClose(wave.amplitude, waves[k]!.amplitude, rounding);
      expectClose(wave.phase, waves[k]!.phase, rounding);
    });
  });
  it("has its chance from chi-square with 2, and from F with 2 and n − p where the scatter judges", () => {
    const noise = seededNoise(5);
    const y = uneven.map((t) => Math.cos(t) + noise.normal());
    const known = fitHarmonics(uneven, y, { orders: [1, 2], u: 1 });
    const seen = fitHarmonics(uneven, y, { orders: [1, 2] });
    known.harmonics.forEach((wave, k) => {
      const squared = (
        { cosine, sine }: { cosine: number; sine: number },
        v: { cosine: number; sine: number; both: number },
      ): number =>
        (cosine ** 2 * v.sine - 2 * cosine * sine * v.both + sine ** 2 * v.cosine) /
        (v.cosine * v.sine - v.both ** 2);
      expectClose(wave.chance, chiSquareSurvival(squared(wave, known.covariances[k]!), 2), rounding);
      const other = seen.harmonics[k]!;
      expectClose(other.chance, fSurvival(squared(other, seen.covariances[k]!) / 2, 2, 4), rounding);
    });
  });
  it("calls noise real in about 5 of 100, seeded", () => {
    const noise = seededNoise(11);
    let real = 0;
    for (let i = 0; i < 400; i++) {
      const fit = fitHarmonics(uneven, uneven.map(noise.normal), { orders: [1, 2, 3] });
      if (fit.harmonics[1]!.chance < 0.05) real += 1;
    }
    // Binomial: 20 ± 3·4.4 of 400.
    expect(real).toBeGreaterThan(6);
    expect(real).toBeLessThan(34);
  });
  it("covers amplitude and phase of a plain wave in about 95 of 100, seeded", () => {
    const noise = seededNoise(12);
    let [amplitude, phase] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const y = uneven.map((t) => 5 * Math.cos(2 * (t - 1)) + 0.5 * noise.normal());
      const [wave] = fitHarmonics(uneven, y, { orders: [2], u: 0.5 }).harmonics;
      if (Math.abs(wave!.amplitude - 5) < 1.96 * wave!.uAmplitude) amplitude += 1;
      if (Math.abs(wave!.phase - 1) < 1.96 * wave!.uPhase) phase += 1;
    }
    // Binomial: 380 ± 3·4.4 of 400.
    for (const covered of [amplitude, phase]) {
      expect(covered).toBeGreaterThan(366);
      expect(covered).toBeLessThan(394);
    }
  });
  it("rejects too few angles, orders that are none, and readings that leave no scatter", () => {
    expect(() => fitHarmonics([0, 1, 0], [1, 2, 3], { orders: [1], u: 1 })).toThrow(
      /fitHarmonics: 3 different angles are needed for 1 orders, got 2/,
    );
    expect(() => fitHarmonics([0, 1, 2], [1, 2, 3], { orders: [1] })).toThrow(
      /at least 4 readings are needed, got 3/,
    );
    for (const order of [0, 1.5, Number.NaN])
      expect(() => fitHarmonics(eight, eight, { orders: [order], u: 1 })).toThrow(/fitHarmonics: orders/);
    expect(() => fitHarmonics(eight, eight, { orders: [2, 2], u: 1 })).toThrow(/each order must stand once/);
    expect(() => fitHarmonics(eight, eight, { orders: [1], u: 0 })).toThrow(
      /u must be greater than 0, got 0/,
    );
  });
});

describe("harmonicOf(order, cosine, sine, covariance, dof)", () => {
  it("says that nothing is known of the phase of a wave of height 0", () => {
    const wave = harmonicOf(2, 0, 0, { cosine: 1, sine: 1, both: 0 }, Number.POSITIVE_INFINITY);
    expect(wave.chance).toBe(1);
    expectClose(wave.uPhase, Math.PI / 2 / Math.sqrt(3), rounding);
  });
});

describe("countDirections(angles)", () => {
  it("counts whole turns apart as one", () => {
    expect(countDirections([0, 2 * Math.PI, Math.PI, -Math.PI, 1])).toBe(3);
  });
});
