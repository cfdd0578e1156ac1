import { describe, expect, it } from "vitest";
import {
  approachAt,
  fitApproach,
  randomGenerator,
  sharedTimeConstant,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const rounding = {
  rel: 1e-7,
  because: "the minimum is flat: 15 digits of the sum of squares fix 7 of the place",
};
const times = [0, 4, 8, 12, 18, 25, 35, 50, 70, 100];
const curve = (end: number, start: number, tau: number) => (t: number) =>
  end + (start - end) * Math.exp(-t / tau);

describe("fitApproach(t, y, options)", () => {
  it.each([
    ["misra1a", 238.94212918, 2.7070075241, 5.5015643181e-4, 7.2668688436e-6, 0.12455138894],
    ["boxbod", 213.80940889, 12.354515176, 0.54723748542, 0.10455993237, 1168.0088766],
  ])("agrees with NIST StRD %s to the digits printed", (name, b1, sd1, b2, sd2, rss) => {
    const { numbers } = readReference(`nist-${name}`);
    const [x, y] = [numbers("x"), numbers("y")];
    const fit = fitApproach(x, y, { start: 0 });
    const printed = {
      rel: 2e-9,
      because: "certified to 11 digits; double precision keeps 9 of a flat minimum",
    };
    expectClose(fit.end, b1, printed);
    expectClose(1 / fit.timeConstant, b2, printed);
    expectClose(fit.residualSumOfSquares, rss, printed);
    expectClose(fit.uEnd, sd1, { rel: 1e-7, because: "slopes at the best fit" });
    expectClose(fit.uTimeConstant / fit.timeConstant ** 2, sd2, {
      rel: 1e-7,
      because: "slopes at the best fit",
    });
    expect(fit.degreesOfFreedom).toBe(y.length - 2);
  });
  it("finds end, start and time constant of exact readings, rising and falling", () => {
    for (const [end, start, tau] of [
      [80, 20, 25],
      [-3, 40, 12],
    ] as const) {
      const fit = fitApproach(times, times.map(curve(end, start, tau)), { u: 0.5 });
      expectClose(fit.end, end, rounding);
      expectClose(fit.start, start, rounding);
      expectClose(fit.timeConstant, tau, rounding);
    }
  });
  it("gives the same with another unit, zero and order of the readings", () => {
    const y = times.map(curve(80, 20, 25)).map((v, i) => v + Math.sin(7 * i));
    const fit = fitApproach(times, y, { u: 0.5 });
    const fahrenheit = fitApproach(
      times,
      y.map((v) => 1.8 * v + 32),
      { u: 0.9 },
    );
    expectClose(fahrenheit.end, 1.8 * fit.end + 32, rounding);
    expectClose(fahrenheit.uEnd, 1.8 * fit.uEnd, {
      rel: 1e-5,
      because: "slopes at a minimum known to 7 digits",
    });
    const seconds = fitApproach(
      times.map((t) => 60 * t),
      y,
      { u: 0.5 },
    );
    expectClose(seconds.timeConstant, 60 * fit.timeConstant, rounding);
    expectClose(fitApproach([...times].reverse(), [...y].reverse(), { u: 0.5 }).end, fit.end, rounding);
  });
  it("covers the true end with its interval in 93 to 97 % of 1 000 seeded runs, though they end on the way", () => {
    const random = randomGenerator(20261125);
    // Read for one time constant and a half: the end is still a quarter of the way off.
    const early = Array.from({ length: 13 }, (_, i) => 3 * i);
    let inside = 0;
    const runs = 1000;
    for (let i = 0; i < runs; i++) {
      const y = early.map((t) => curve(80, 20, 25)(t) + 0.5 * random.normal());
      const { from, to } = fitApproach(early, y, { u: 0.5 }).endInterval;
      if (from <= 80 && 80 <= to) inside++;
    }
    expect(inside / runs).toBeGreaterThan(0.93);
    expect(inside / runs).toBeLessThan(0.97);
  }, 60_000);
  it("narrows the interval as readings come in, and leaves it open where they hardly bend", () => {
    const y = curve(80, 20, 25);
    const noisy = (last: number) => {
      const t = Array.from({ length: last / 2 + 1 }, (_, i) => 2 * i);
      return fitApproach(
        t,
        t.map((v, i) => y(v) + 0.3 * Math.sin(11 * i)),
        { u: 0.5 },
      ).endInterval;
    };
    const widths = [16, 30, 60, 100].map(noisy).map(({ from, to }) => to - from);
    expect([...widths].sort((a, b) => b - a)).toEqual(widths);
    expect(noisy(8).to).toBe(Number.POSITIVE_INFINITY);
  });
  it("weighs a foretold end as one more observation", () => {
    const y = times.map(curve(80, 20, 25));
    const alone = fitApproach(times, y, { u: 0.5 });
    const both = fitApproach(times, y, { u: 0.5, foretold: { end: 82, u: alone.uEnd } });
    // Two equally good: the middle, and √2 better; to first order.
    expectClose(both.end, 81, { rel: 2e-3, because: "the model bends: first order only" });
    expectClose(both.uEnd, alone.uEnd / Math.SQRT2, {
      rel: 0.05,
      because: "the model bends: first order only",
    });
    const firm = fitApproach(times, y, { u: 0.5, foretold: { end: 82, u: 1e-6 } });
    expectClose(firm.end, 82, { rel: 1e-6, because: "a foretold end taken as certain" });
  });
  it("refuses readings that go straight on, bend away, or are too few", () => {
    expect(() =>
      fitApproach(
        times,
        times.map((t) => 20 + t),
        { u: 0.5 },
      ),
    ).toThrow(/no end in sight/);
    expect(() =>
      fitApproach(
        times,
        times.map((t) => 20 + Math.exp(t / 40)),
        { u: 0.5 },
      ),
    ).toThrow(/no end in sight/);
    expect(() => fitApproach([0, 1, 2], [1, 2, 2.5])).toThrow(/at least 4 readings are needed, got 3/);
    expect(() => fitApproach([1, 1, 1, 1], [1, 2, 3, 4])).toThrow(/must span some time/);
    expect(() => fitApproach([0, 1, 2, 3], [5, 5, 5, 5])).toThrow(/tell nothing of a time constant/);
    expect(() => fitApproach(times, times, { foretold: { end: 1, u: 1 } })).toThrow(/needs u/);
    expect(() => fitApproach(times, times, { u: 1, foretold: { end: 1, u: 0 } })).toThrow(
      /uncertainty above 0/,
    );
    expect(() => fitApproach(times, times, { coverage: 1 })).toThrow(/coverage/);
  });
});

describe("approachAt(fit, t)", () => {
  it("gives the curve, with the uncertainty of the start at the start and of the end after a long time", () => {
    const fit = fitApproach(times, times.map(curve(80, 20, 25)), { u: 0.5 });
    expectClose(approachAt(fit, 25).value, 80 - 60 / Math.E, rounding);
    expectClose(approachAt(fit, 0).u, fit.uStart, { rel: 1e-9, because: "same covariance" });
    expectClose(approachAt(fit, 1e5).u, fit.uEnd, { rel: 1e-9, because: "same covariance" });
  });
});

describe("fitApproach(t, y, { alike }) and sharedTimeConstant(stretches)", () => {
  const noisy = (end: number, start: number, tau: number, seed: number, t = times, u = 0.5) => {
    const random = randomGenerator(seed);
    return { t, y: t.map((x) => curve(end, start, tau)(x) + u * random.normal()), u };
  };
  it("finds each end of exact readings that share a time constant", () => {
    const early = [0, 5, 10];
    const fit = fitApproach(early, early.map(curve(60, 30, 25)), {
      u: 0.5,
      alike: [{ t: times, y: times.map(curve(30, 20, 25)), u: 0.5 }],
    });
    expectClose(fit.end, 60, rounding);
    expectClose(fit.start, 30, rounding);
    expectClose(fit.timeConstant, 25, rounding);
    expect(fit.degreesOfFreedom).toBe(3 + times.length - 5);
  });
  it("is the fit of one stretch where the others tell nothing of a time constant", () => {
    const one = noisy(60, 30, 25, 3);
    const alone = fitApproach(one.t, one.y, { u: 0.5 });
    // Readings so rough that they weigh nothing.
    const beside = fitApproach(one.t, one.y, { u: 0.5, alike: [{ ...noisy(30, 20, 25, 4), u: 1e9 }] });
    expectClose(beside.end, alone.end, rounding);
    expectClose(beside.uEnd, alone.uEnd, rounding);
    expectClose(beside.timeConstant, alone.timeConstant, rounding);
    expectClose(beside.endInterval.to, alone.endInterval.to, rounding);
  });
  it("with the same readings twice: the same end, and half the variance of the time constant", () => {
    const one = noisy(60, 30, 25, 5);
    const alone = fitApproach(one.t, one.y, { u: 0.5 });
    const twice = fitApproach(one.t, one.y, { u: 0.5, alike: [one] });
    expectClose(twice.end, alone.end, rounding);
    expectClose(twice.residualSumOfSquares, 2 * alone.residualSumOfSquares, rounding);
    expectClose(twice.uTimeConstant, alone.uTimeConstant / Math.SQRT2, {
      rel: 1e-6,
      because: "slopes at the best fit",
    });
  });
  it("covers the true end in 93 to 97 % of 500 seeded pairs, and narrower than one stretch alone", () => {
    const early = [0, 5, 10, 15, 20, 25];
    let [inside, narrower] = [0, 0];
    for (let seed = 1; seed <= 500; seed++) {
      const now = noisy(60, 30, 25, seed, early);
      const fit = fitApproach(now.t, now.y, { u: 0.5, alike: [noisy(30, 20, 25, 5000 + seed)] });
      if (fit.endInterval.from <= 60 && 60 <= fit.endInterval.to) inside++;
      if (seed > 100) continue;
      let width = Number.POSITIVE_INFINITY;
      try {
        const { endInterval } = fitApproach(now.t, now.y, { u: 0.5 });
        width = endInterval.to - endInterval.from;
      } catch {
        // no end in sight by itself
      }
      if (fit.endInterval.to - fit.endInterval.from < width) narrower++;
    }
    expect(inside / 500).toBeGreaterThan(0.93);
    expect(inside / 500).toBeLessThan(0.97);
    expect(narrower).toBeGreaterThan(90);
  });
  it("refuses a shared time constant in about 5 % of 400 seeded pairs that share one", () => {
    let refused = 0;
    for (let seed = 1; seed <= 400; seed++)
      if (!sharedTimeConstant([noisy(60, 30, 25, seed), noisy(30, 20, 25, 7000 + seed)]).shared) refused++;
    // Three standard deviations of 400 draws at 5 % are 3.3 %.
    expect(refused / 400).toBeGreaterThan(0.017);
    expect(refused / 400).toBeLessThan(0.083);
  });
  it("refuses where one takes twice as long as the other, and where one goes straight on", () => {
    const found = sharedTimeConstant([noisy(60, 30, 25, 1), noisy(60, 20, 50, 2)]);
    expect(found.shared).toBe(false);
    expect(found.degreesOfFreedom).toEqual([1, 2 * times.length - 6]);
    expect(found.f).toBeGreaterThan(found.critical);
    const straight = { t: times, y: times.map((t, i) => 20 + 0.3 * t + (i % 2)), u: 0.5 };
    expect(sharedTimeConstant([noisy(60, 30, 25, 1), straight]).shared).toBe(false);
  });
  it("refuses one stretch, too few readings, and a level outside 0 to 1", () => {
    const one = noisy(60, 30, 25, 1);
    expect(() => sharedTimeConstant([one])).toThrow(/at least two stretches/);
    expect(() =>
      sharedTimeConstant([
        { t: [0, 1, 2], y: [0, 1, 1.5] },
        { t: [0, 1], y: [0, 1] },
      ]),
    ).toThrow(/three readings a stretch and one more are needed, got 3, 2/);
    expect(() => sharedTimeConstant([one, one], { level: 0 })).toThrow(/level/);
    expect(() => fitApproach(one.t, one.y, { alike: [{ t: [0, 1], y: [1, 2] }] })).toThrow(/alike\[0\]/);
  });
});
