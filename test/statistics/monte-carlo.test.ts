import { describe, expect, it } from "vitest";
import { deltaC, inch, measured, mm, perC, thou } from "../../kernel-helpers/quantity/index.js";
import {
  arcsineAbout,
  asMeasured,
  chiSquareSurvival,
  monteCarlo,
  normalAbout,
  normalCdf,
  rectangularAbout,
  studentTAbout,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";

describe("monteCarlo(f, inputs, options): published examples", () => {
  const unit = rectangularAbout(0, Math.sqrt(3));
  const four = { a: unit, b: unit, c: unit, d: unit };
  const sum = (x: { readonly [N in keyof typeof four]: number }) => x.a + x.b + x.c + x.d;

  // JCGM 101:2008, 9.2.3 and table 3: four rectangular inputs of u = 1: u = 2.00, 95 % ±3.88; GUM ±3.92 (from memory;
  // the exact end is 3.8783).
  it("JCGM 101, 9.2.3: four rectangular inputs give ±3.88, and linear propagation ±3.92", () => {
    const { symmetric, shortest, standardUncertainty, linear } = monteCarlo(sum, four, {
      seed: 9,
      draws: 1_000_000,
    });
    const because = "chance: 0.006 in an end, 0.0014 in u, at a million draws";
    expectClose(standardUncertainty, 2, { abs: 0.006, because });
    expectClose(symmetric.low, -3.8783, { abs: 0.02, because });
    expectClose(symmetric.high, 3.8783, { abs: 0.02, because });
    expectClose(shortest.high - shortest.low, 2 * 3.8783, { abs: 0.03, because });
    expectClose(linear.high, 3.92, { abs: 5e-3, because: "printed to 3 digits" });
  });

  it("says in words that ±3.92 will do to one digit", () => {
    const { linear } = monteCarlo(sum, four, { seed: 9, draws: 200_000, digits: 1 });
    expect(linear.agrees).toBe("yes");
    expect(linear.tolerance).toBe(0.5);
    expect(linear.verdict).toMatch(
      /^Linear propagation will do: the (lower|upper) end .* 0\.5 is allowed\.$/,
    );
  });

  // JCGM 101:2008, 9.2.4 and table 4: three such and one ten times as wide: 95 % about ±17.0, GUM ±19.9 (from memory).
  it("JCGM 101, 9.2.4: with one much wider input they differ, and the verdict is no", () => {
    const inputs = { ...four, d: rectangularAbout(0, 10 * Math.sqrt(3)) };
    const { symmetric, linear } = monteCarlo(sum, inputs, { seed: 10, draws: 500_000 });
    expectClose(symmetric.high, 17, { abs: 0.05, because: "printed to 3 digits; chance 0.01" });
    expectClose(linear.high, 19.9, { abs: 0.05, because: "printed to 3 digits" });
    expect(linear.agrees).toBe("no");
    expect(linear.verdict).toMatch(/^Linear propagation will not do, use the simulated interval/);
  });

  // JCGM 101:2008, 9.5 and tables 10 and 11, gauge block: 838 nm, u 36 nm, shortest 99 % [745, 932] nm; GUM 838, 32,
  // [745, 931] (from memory).
  it("JCGM 101, 9.5: the gauge block", () => {
    const inputs = {
      standard: studentTAbout(50000623, 25, 18),
      difference: studentTAbout(215, 6, 24),
      random: studentTAbout(0, 4, 5),
      systematic: studentTAbout(0, 7, 8),
      expansion: rectangularAbout(11.5e-6, 2e-6),
      mean: normalAbout(-0.1, 0.2),
      swing: arcsineAbout(0, 0.5),
      unlike: rectangularAbout(0, 1e-6, 0.1e-6),
      apart: rectangularAbout(0, 0.05, 0.025),
    };
    const { estimate, standardUncertainty, shortest } = monteCarlo(
      (x) =>
        x.standard +
        x.difference +
        x.random +
        x.systematic -
        x.standard * (x.unlike * (x.mean + x.swing) + x.expansion * x.apart) -
        5e7,
      inputs,
      { seed: 12, draws: 1_000_000, coverage: 0.99 },
    );
    const because = "printed to 1 nm; chance moves an end by 0.3 nm, the shortest interval by more";
    expectClose(estimate, 838, { abs: 0.5, because });
    expectClose(standardUncertainty, 36, { abs: 0.5, because });
    expectClose(shortest.low, 745, { abs: 2, because });
    expectClose(shortest.high, 932, { abs: 2, because });
  });
});

describe("monteCarlo(f, inputs, options): limits and identities", () => {
  it("of a sum of normal inputs, correlated or not, is linear propagation", () => {
    const inputs = { a: measured(10, 3), b: measured(20, 4) };
    for (const r of [-1, -0.5, 0, 1]) {
      const { standardUncertainty, linear } = monteCarlo((x) => x.a + x.b, inputs, {
        seed: 13,
        draws: 200_000,
        correlations: [["a", "b", r]],
        digits: 1,
      });
      const u = Math.sqrt(25 + 24 * r);
      expectClose(linear.standardUncertainty, u, { rel: 1e-9, because: "numerical derivatives" });
      expectClose(standardUncertainty, u, { rel: 0.01, because: "chance: 0.16 % at 200 000 draws" });
      expect(linear.agrees).toBe("yes");
    }
  });

  it("of few readings has the wider spread of Student's t, √(ν/(ν − 2)) times", () => {
    const { standardUncertainty, symmetric, linear } = monteCarlo(
      (x) => x.a,
      { a: measured(0, 1, 6) },
      { seed: 14, draws: 400_000 },
    );
    expectClose(standardUncertainty, Math.sqrt(6 / 4), { rel: 0.015, because: "chance: heavy tails, 0.3 %" });
    // t(95 %, 6) = 2.447, JCGM 100 table G.2; the linear interval has the same factor.
    expectClose(symmetric.high, 2.447, { abs: 0.03, because: "chance: 0.009" });
    expectClose(linear.high, 2.447, { abs: 5e-4, because: "table printed to 4 digits" });
  });

  it("of the square of a normal input about 0 is χ² with one degree of freedom, which no straight line is", () => {
    const { estimate, standardUncertainty, shortest, symmetric, linear } = monteCarlo(
      (x) => x.z ** 2,
      { z: normalAbout(0, 1) },
      { seed: 15, draws: 400_000 },
    );
    const because = "chance at 400 000 draws";
    expectClose(estimate, 1, { abs: 0.012, because });
    expectClose(standardUncertainty, Math.SQRT2, { abs: 0.03, because });
    // χ²(0.95; 1) = 3.841, χ²(0.975; 1) = 5.024.
    expectClose(shortest.low, 0, { abs: 1e-3, because });
    expectClose(shortest.high, 3.841, { abs: 0.06, because });
    expectClose(symmetric.high, 5.024, { abs: 0.08, because });
    expect(linear.standardUncertainty).toBe(0);
    expect(linear.agrees).toBe("no");
  });

  it("keeps units: in through the inputs, out through the result", () => {
    const inputs = {
      length: measured(mm(250), mm(0.01)),
      expansion: rectangularAbout(perC(11.5e-6), perC(1e-6)),
      warmer: deltaC(5),
    };
    const f = (x: {
      length: ReturnType<typeof mm>;
      expansion: ReturnType<typeof perC>;
      warmer: ReturnType<typeof deltaC>;
    }) => x.length.times(x.expansion.times(x.warmer));
    const { estimate, linear, histogram } = monteCarlo(f, inputs, { seed: 16, draws: 5000 });
    expect(estimate.dimension).toBe("length");
    expectClose(estimate.in("mm"), 250 * 11.5e-6 * 5, { rel: 5e-3, because: "chance: 0.07 %" });
    expect(linear.value.in("mm")).toBe(
      f({ length: mm(250), expansion: perC(11.5e-6), warmer: deltaC(5) }).in("mm"),
    );
    expect(histogram.from.si).toBeLessThan(histogram.to.si);
  });

  it("gives the same for the same seed, another for another, and all is frozen", () => {
    const run = (seed: number) => monteCarlo((x) => x.a * 2, { a: measured(1, 0.1) }, { seed, draws: 1000 });
    expect(run(1)).toEqual(run(1));
    expect(run(1).estimate).not.toBe(run(2).estimate);
    const { histogram, linear, shortest } = run(1);
    expect([run(1), histogram, histogram.counts, linear, shortest].every(Object.isFrozen)).toBe(true);
  });

  it("counts the draws in each step of the histogram as the distribution has them", () => {
    const draws = 100_000;
    const { from, to, counts } = monteCarlo((x) => x.a, { a: measured(0, 1) }, { seed: 17, draws }).histogram;
    const step = (to - from) / counts.length;
    // Pearson's χ² over the steps within ±3; the far ones hold too few.
    let [chiSquare, inside] = [0, 0];
    counts.forEach((count, i) => {
      const [low, high] = [from + i * step, from + (i + 1) * step];
      if (low < -3 || high > 3) return;
      const expected = draws * (normalCdf(high) - normalCdf(low));
      chiSquare += (count - expected) ** 2 / expected;
      inside++;
    });
    expect(inside).toBeGreaterThan(40);
    expect(chiSquareSurvival(chiSquare, inside)).toBeGreaterThan(0.001);
  });

  it("says when the draws are too few to tell", () => {
    const unit = rectangularAbout(0, Math.sqrt(3));
    const { linear } = monteCarlo(
      (x) => x.a + x.b + x.c + x.d,
      { a: unit, b: unit, c: unit, d: unit },
      { seed: 18, draws: 1000 },
    );
    expect(linear.agrees).toBe("cannot tell yet");
    expect(linear.verdict).toMatch(
      /cannot be told yet: .* chance moves the end by .* More draws would tell\.$/,
    );
  });
});

describe("monteCarlo(f, inputs, options): what it rejects", () => {
  const inputs = { a: measured(1, 0.1), b: asMeasured(rectangularAbout(2, 1)), c: rectangularAbout(0, 1) };
  const f = (x: { readonly a: number }) => x.a;
  it.each([
    [
      "too few draws",
      () => monteCarlo(f, inputs, { seed: 1, draws: 10 }),
      /monteCarlo: draws must be .* got 10/,
    ],
    ["a seed that is none", () => monteCarlo(f, inputs, { seed: 0.5 }), /seed must be a whole number/],
    [
      "a coverage of 1",
      () => monteCarlo(f, inputs, { seed: 1, coverage: 1 }),
      /monteCarlo: coverage must lie between/,
    ],
    [
      "three digits",
      () => monteCarlo(f, inputs, { seed: 1, digits: 3 as never }),
      /digits must be 1 or 2, got 3/,
    ],
    [
      "exact inputs only",
      () => monteCarlo(f, { a: 1, b: inch(2) }, { seed: 1 }),
      /at least one input must be uncertain, got only exact ones: a, b/,
    ],
    ["a text", () => monteCarlo(f, { a: "1" as never }, { seed: 1 }), /monteCarlo: a must be .* got 1/],
    [
      "correlation of one that is not normal",
      () => monteCarlo(f, inputs, { seed: 1, correlations: [["a", "c", 0.5]] }),
      /must be normal, got c, which is rectangular/,
    ],
    [
      "correlation of a stranger",
      () => monteCarlo(f, inputs, { seed: 1, correlations: [["a", "d", 0.5]] }),
      /monteCarlo: correlation must name two of a, b, c, got a and d/,
    ],
    [
      "a draw without a result",
      () => monteCarlo((x) => Math.log(x.c + 0.99), inputs, { seed: 1 }),
      /monteCarlo: .* finite number in every draw, got NaN for a = .*, c = -0\.99/,
    ],
    [
      "results of two kinds",
      () => monteCarlo((x): never => (x.a > 1.2 ? thou(1) : x.a) as never, inputs, { seed: 1 }),
      /monteCarlo: the function must give values of one kind \(number\), got 1 thou/,
    ],
  ])("%s", (_, act, message) => {
    expect(act).toThrow(message);
  });
});
