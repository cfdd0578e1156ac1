import { describe, expect, it } from "vitest";
import {
  coverageFactor,
  fitLine,
  fitLineOrthogonal,
  inverseInterval,
  inverseLine,
  type LineFit,
  predictInterval,
  predictLine,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

const iso = readReference("iso28037-ex1-equal-weights");
const calibration = fitLine(iso.numbers("x"), iso.numbers("y"), { u: 0.5 });
const norris = readReference("nist-norris");
const ozone = fitLine(norris.numbers("x"), norris.numbers("y"));

describe("predictInterval(fit, x, { of })", () => {
  it("is the line ± t u for the line, and wider by one reading for a reading", () => {
    const x = 400;
    const { value, standardUncertainty } = predictLine(ozone, x);
    const t = coverageFactor(0.95, 34);
    const line = predictInterval(ozone, x, { of: "line" });
    expect([line.value, line.degreesOfFreedom]).toEqual([value, 34]);
    expectClose(line.high - value, t * standardUncertainty, {
      rel: 1e-9,
      because: "difference of near numbers",
    });
    const reading = predictInterval(ozone, x, { of: "reading" });
    // NIST's certified residual standard deviation of Norris, 0.884796396144373.
    expectClose(reading.standardUncertainty, Math.hypot(standardUncertainty, 0.884796396144373), {
      rel: 1e-13,
      because: "certified to 15 digits",
    });
    expectClose(value - reading.low, t * reading.standardUncertainty, {
      rel: 1e-9,
      because: "by its definition",
    });
  });
  it("at the middle of n readings is s √(1 + 1/n) wide", () => {
    const { centre, residualStandardDeviation, points } = ozone;
    const { standardUncertainty } = predictInterval(ozone, centre.x, { of: "reading" });
    expectClose(standardUncertainty, residualStandardDeviation! * Math.sqrt(1 + 1 / points), {
      rel: 1e-13,
      because: "textbook",
    });
  });
  it("uses the normal factor where u is known, and Welch-Satterthwaite where only the reading's is", () => {
    const known = predictInterval(calibration, 3, { of: "reading", uReading: 0.5 });
    expect(known.degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    expectClose(known.high - known.value, 1.959963984540054 * known.standardUncertainty, {
      rel: 1e-12,
      because: "normal",
    });
    const half = predictInterval(ozone, ozone.centre.x, { of: "reading", uReading: ozone.uCentre });
    expectClose(half.degreesOfFreedom, 4 * 34, { rel: 1e-12, because: "two equal parts, one of them known" });
  });
  it("demands the reading's uncertainty where the fit does not say it", () => {
    expect(() => predictInterval(calibration, 3, { of: "reading" })).toThrow(
      "predictInterval: uReading must be given where readings have uncertainties of their own or known beforehand, got none",
    );
    expect(() => predictInterval(ozone, 3, { of: "reading", uReading: -1 })).toThrow(
      /uReading must be 0 or greater/,
    );
    expect(() => predictInterval(ozone, 3, { of: "line", coverage: 95 })).toThrow(
      /coverage must lie between/,
    );
    expect(() => predictInterval(ozone, Number.NaN, { of: "line" })).toThrow(/x must be a finite number/);
    expect(
      predictInterval(fitLineOrthogonal([0, 1, 2], [0, 1, 2.1]), 1, { of: "reading" }).value,
    ).toBeGreaterThan(1);
  });
});

describe("inverseInterval(fit, y, { of })", () => {
  // Source: ISO/TS 28037:2010, clause 11.1 example: y 10.5, u 0.5 gives x 4.913, u 0.322.
  it("has the printed value and uncertainty of ISO/TS 28037, and nearly their interval", () => {
    const found = inverseInterval(calibration, 10.5, { of: "reading", uReading: 0.5 });
    expectClose(found.value, 4.913, { abs: 5.01e-4, because: "3 printed decimals" });
    expectClose(found.standardUncertainty, 0.322, { abs: 5.01e-4, because: "3 printed decimals" });
    const first = 1.96 * 0.322;
    expectClose(found.high - found.value, first, {
      rel: 0.06,
      because: "first order against exact: up to 5 % apart",
    });
    expectClose(found.value - found.low, first, {
      rel: 0.06,
      because: "first order against exact: up to 5 % apart",
    });
    // Longer on the far side: away from the middle of the readings the line is known less well.
    expect(found.high - found.value).toBeGreaterThan(found.value - found.low);
  });
  it("ends where the interval of the reading ends: the same statement read the other way", () => {
    for (const of of ["line", "reading"] as const) {
      for (const y of [4, 7.9, 13]) {
        const given = { of, uReading: 0.5 };
        const { low, high, value } = inverseInterval(calibration, y, given);
        const because = "Fieller's interval is the set of x that do not contradict y";
        expectClose(predictInterval(calibration, low, given).high, y, { rel: 1e-12, because });
        expectClose(predictInterval(calibration, high, given).low, y, { rel: 1e-12, because });
        expect(low).toBeLessThan(value);
        expect(high).toBeGreaterThan(value);
      }
    }
    const turned: LineFit = fitLine(
      iso.numbers("x"),
      iso.numbers("y").map((v) => -v),
      { u: 0.5 },
    );
    const down = inverseInterval(turned, -10.5, { of: "line" });
    const up = inverseInterval(calibration, 10.5, { of: "line" });
    for (const end of ["low", "high", "value"] as const)
      expectClose(down[end], up[end], { rel: 1e-13, because: "mirrored in y" });
  });
  it("goes to the first-order interval when uncertainties are small", () => {
    const fine = fitLine(iso.numbers("x"), iso.numbers("y"), { u: 1e-6 });
    const { value, standardUncertainty } = inverseLine(fine, 10.5);
    const { high } = inverseInterval(fine, 10.5, { of: "line" });
    expectClose(high - value, 1.959963984540054 * standardUncertainty, { rel: 1e-5, because: "small u" });
  });
  it("refuses a slope that cannot be told from 0", () => {
    const flat = fitLine([0, 1, 2, 3], [1, 1.2, 0.9, 1.1]);
    expect(() => inverseInterval(flat, 1, { of: "line" })).toThrow(
      /inverseInterval: the slope must differ from 0 by more than 4\.30 of its standard uncertainty/,
    );
    expect(() => inverseInterval(calibration, Number.NaN, { of: "line" })).toThrow(
      /y must be a finite number/,
    );
  });
});

describe("both intervals", () => {
  it("cover as stated, scatter learnt from 7 readings: 2000 seeded lines", () => {
    const { normal, uniform } = seededNoise(31);
    const x = [0, 1, 2, 3, 5, 8, 9];
    const inside = { line: 0, reading: 0, inverse: 0 };
    for (let run = 0; run < 2000; run++) {
      const truth = (v: number): number => 3 + 2 * v;
      const fit = fitLine(
        x,
        x.map((v) => truth(v) + normal()),
      );
      const at = 10 * uniform();
      const line = predictInterval(fit, at, { of: "line" });
      if (truth(at) >= line.low && truth(at) <= line.high) inside.line += 1;
      const next = truth(at) + normal();
      const reading = predictInterval(fit, at, { of: "reading" });
      if (next >= reading.low && next <= reading.high) inside.reading += 1;
      const place = inverseInterval(fit, next, { of: "reading" });
      if (at >= place.low && at <= place.high) inside.inverse += 1;
    }
    for (const count of Object.values(inside))
      expectClose(count / 2000, 0.95, { abs: 0.0171, because: "3.5 standard deviations of 2000 draws" });
  });
});
