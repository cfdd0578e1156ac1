import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type BandPosterior,
  type BandPosteriorOptions,
  bandPosterior,
  partition,
  repeatsTest,
} from "../../kernel-helpers/statistics/index.js";
import { type DivisionRules, type EveryDivision, everyDivision } from "../support/every-division.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const exact = {
  abs: 1e-9,
  because: "the factored covariance of the list loses up to 1e-10 where spreads are 100; else 3e-13 measured",
};

/** Compares every probability with that of the list of all divisions. */
function compare(found: BandPosterior, listed: EveryDivision, at: readonly number[]): void {
  const probability = (holds: (starts: readonly number[]) => boolean): number =>
    sum(listed.divisions.filter(({ starts }) => holds(starts)).map((division) => division.probability));
  expectClose(found.logEvidence, listed.logEvidence, exact);
  found.bandCountProbability.forEach((p, k) => {
    expectClose(
      p,
      probability((starts) => starts.length === k + 1),
      exact,
    );
  });
  for (const gap of found.gaps)
    expectClose(
      gap.probability,
      probability((starts) => starts.includes(gap.before)),
      exact,
    );
  const alike = listed.divisions.filter(({ starts }) => starts.length === found.bands);
  const given = sum(alike.map((division) => division.probability));
  if (given > 1e-6) {
    const most = Math.max(...alike.map((division) => division.probability));
    const starts = [0, ...found.edges.map(({ before }) => before)];
    const own = alike.find((division) => String(division.starts) === String(starts))!;
    expectClose(own.probability, most, { rel: 1e-9, because: "the most probable, or one as probable" });
    found.edges.forEach(({ before, probabilityGivenBands, interval }, i) => {
      const share = (holds: (start: number) => boolean): number =>
        sum(alike.filter((division) => holds(division.starts[i + 1]!)).map((d) => d.probability)) / given;
      const loose = { abs: 1e-8, because: "divided by a probability of 1e-6 or more" };
      expectClose(
        probabilityGivenBands,
        share((start) => start === before),
        loose,
      );
      expectClose(
        interval.probability,
        share((start) => start > interval.after && start <= interval.before),
        loose,
      );
    });
  }
  found.levels.forEach(({ value, standardUncertainty }, i) => {
    const { mean, sd } = listed.level(at[i]!);
    expectClose(value, mean, exact);
    expectClose(standardUncertainty, sd, exact);
  });
}

describe("bandPosterior(positions, values, { u, … })", () => {
  it("is the sum over every division there is, for shapes, weights, ties, priors and few readings of all kinds", () => {
    const reading = fc.record({
      gap: fc.integer({ min: 0, max: 3 }),
      y: fc.integer({ min: -8, max: 8 }),
      u: fc.constantFrom(0.5, 1, 2),
    });
    const shapes = fc.constantFrom<readonly ("flat" | "sloping")[]>(
      ["flat"],
      ["sloping"],
      ["flat", "sloping"],
    );
    let compared = 0;
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 3, maxLength: 10 }),
        fc.record({
          shapes,
          minimumPoints: fc.integer({ min: 1, max: 3 }),
          minimumSlopingPoints: fc.integer({ min: 3, max: 5 }),
          bandCountPrior: fc.constantFrom([1, 1, 1, 1, 1], [0.5, 0.25, 0.125], [0, 1, 3, 0, 1]),
          edgePrior: fc.constantFrom("gaps" as const, "length" as const),
          levelCentre: fc.constantFrom(0, 3),
          levelSpread: fc.constantFrom(1, 10, 100),
          slopeSpread: fc.constantFrom(0.1, 10),
        }),
        fc.integer({ min: 1, max: 5 }),
        (rows, rules: DivisionRules, bands) => {
          let place = 0;
          const x = rows.map((row) => {
            place += row.gap;
            return place;
          });
          const y = rows.map((row) => row.y);
          const u = rows.map((row) => row.u);
          fc.pre(!repeatsTest(x, y, u).contradictory); // refused: with no limit nothing decides
          const at = [x[0]!, x[0]! + 0.3 * (place - x[0]!), x[0]! + 0.81 * (place - x[0]!), place];
          const listed = everyDivision(x, y, u, rules);
          const options = { ...rules, u, at, maximumBands: 5, grossProbability: 0 };
          if (Number.isNaN(listed.divisions[0]?.probability ?? Number.NaN)) {
            expect(() => bandPosterior(x, y, options)).toThrow(/positions must allow a division/);
            return;
          }
          compared += 1;
          const found = bandPosterior(x, y, options);
          compare(found, listed, at);
          if ((found.bandCountProbability[bands - 1] ?? 0) > 0)
            compare(bandPosterior(x, y, { ...options, bands }), listed, at);
        },
      ),
      { seed: 52, numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(120);
  });

  // Source: Nile, Cobb (1978); interval by Zeileis et al. (2003) CSDA 44, 109-123: test/reference/nile.csv.
  it("puts the change of the Nile after 1898, in an interval within the published 1895 to 1902", () => {
    const nile = readReference("nile");
    const noise = Math.sqrt(1597457 / 98); // residual standard deviation of the published two means
    const found = bandPosterior(nile.numbers("year"), nile.numbers("flow"), { u: noise, shapes: ["flat"] });
    expect(found.bandCount).toBe(2);
    expect(found.gross).toEqual([]);
    const [edge] = found.edges;
    expect([edge!.low, edge!.high]).toEqual([1898, 1899]);
    const mostProbable = [...found.gaps].sort((a, b) => b.probability - a.probability)[0]!;
    expect(mostProbable.low).toBe(1898);
    // The published one is a confidence interval by another method (asymptotic, bootstrapped law of the estimate);
    // ours is a credible interval with u taken as known. They need not agree to the year: ours may not be wider.
    const { low, high, probability } = edge!.interval;
    expect(low).toBeGreaterThanOrEqual(1895);
    expect(high).toBeLessThanOrEqual(1902);
    expect(low).toBeLessThan(1898);
    expect(high).toBeGreaterThan(1899);
    expect(probability).toBeGreaterThanOrEqual(0.95);
  });

  it("places an edge anywhere in its gap alike: middle, width/√12, and 2.5 % of the width off either end", () => {
    const x = [0, 1, 2, 3, 7, 8, 9, 10];
    const y = [5, 5, 5, 5, 9, 9, 9, 9];
    const { position, interval } = bandPosterior(x, y, { u: 0.01, shapes: ["flat"] }).edges[0]!;
    expect([interval.low, interval.high]).toEqual([3, 7]);
    const sure = { rel: 1e-9, because: "no other gap holds it with more than 1e-12" };
    expectClose(position.value, 5, sure);
    expectClose(position.standardUncertainty, 4 / Math.sqrt(12), sure);
    expectClose(position.low, 3.1, sure);
    expectClose(position.high, 6.9, sure);
    const turned = bandPosterior(x.map((v) => 100 - v).reverse(), [...y].reverse(), {
      u: 0.01,
      shapes: ["flat"],
    }).edges[0]!.position;
    expectClose(turned.low, 100 - position.high, sure);
  });

  it("is sure of the truth when the noise is small, and of one band when nothing changes", () => {
    const x = Array.from({ length: 30 }, (_, i) => i);
    const truth = x.map((v) => (v < 10 ? 5 : v < 18 ? 1 + 0.1 * v : 5));
    const noise = seededNoise(2);
    const small = bandPosterior(
      x,
      truth.map((v) => v + 1e-4 * noise.normal()),
      { u: 1e-4 },
    );
    expect(small.bandCount).toBe(3);
    expect(small.edges.map(({ low, high }) => [low, high])).toEqual([
      [9, 10],
      [17, 18],
    ]);
    for (const { probability, interval, low, high } of small.edges) {
      expect(probability).toBeGreaterThan(1 - 1e-12);
      expect([interval.low, interval.high]).toEqual([low, high]);
    }
    expect(small.segments.map(({ flatProbability }) => Math.round(flatProbability))).toEqual([1, 0, 1]);
    const level = bandPosterior(x, new Array(30).fill(7), { u: 0.1 });
    expect(level.bandCount).toBe(1);
    expect(level.bandCountProbability[0]).toBeGreaterThan(0.98);
    expect(level.edges).toEqual([]);
  });

  it("turns with the readings, and changes nothing but units under shift and scale", () => {
    const noise = seededNoise(6);
    const x = Array.from({ length: 60 }, (_, i) => i + 0.4 * noise.uniform());
    const y = x.map((v) => (v > 20 && v < 33 ? 3 : 0) + noise.normal());
    const p = bandPosterior(x, y, { u: 1, bands: 3, at: [21, 40] });
    const same = (q: BandPosterior, gap: (i: number) => number): void => {
      const because = "the same sum over divisions, by other rounding";
      q.bandCountProbability.forEach((v, k) => {
        expectClose(v, p.bandCountProbability[k]!, { abs: 1e-9, because });
      });
      q.gaps.forEach(({ probability }, i) => {
        expectClose(probability, p.gaps[gap(i)]!.probability, { abs: 1e-9, because });
      });
    };
    const mirrored = bandPosterior(x.map((v) => -v).reverse(), [...y].reverse(), {
      u: 1,
      bands: 3,
      at: [-40, -21],
    });
    same(mirrored, (i) => p.gaps.length - 1 - i);
    expect(mirrored.edges.map(({ interval }) => [-interval.high, -interval.low]).reverse()).toEqual(
      p.edges.map(({ interval }) => [interval.low, interval.high]),
    );
    for (const [i, level] of mirrored.levels.entries()) {
      expectClose(level.value, p.levels[1 - i]!.value, { abs: 1e-9, because: "mirrored" });
      expectClose(level.standardUncertainty, p.levels[1 - i]!.standardUncertainty, {
        rel: 1e-9,
        because: "mirrored",
      });
    }
    const far = bandPosterior(
      x.map((v) => 25.4 * v + 1e4),
      y.map((v) => 1e-3 * v + 60),
      { u: 1e-3, bands: 3 },
    );
    same(far, (i) => i);
    expectClose(far.prior.levelSpread, 1e-3 * p.prior.levelSpread, { rel: 1e-9, because: "units" });
    expectClose(far.prior.slopeSpread, (1e-3 / 25.4) * p.prior.slopeSpread, { rel: 1e-9, because: "units" });
  });

  it("covers as often as it says: surveys drawn from the prior itself", () => {
    const n = 18;
    const x = Array.from({ length: n }, (_, i) => i);
    const prior = [0.3, 0.3, 0.25, 0.15];
    const beliefs = { levelCentre: 0, levelSpread: 6, slopeSpread: 1, edgePrior: "gaps" as const };
    const options = { ...beliefs, bandCountPrior: prior, maximumBands: 4 };
    const noise = seededNoise(77);
    const within = seededNoise(78);
    const pick = (weights: readonly number[]): number => {
      let left = noise.uniform() * sum(weights);
      return Math.max(
        0,
        weights.findIndex((w) => {
          left -= w;
          return left <= 0;
        }),
      );
    };
    const counted = { interval: tally(), position: tally(), mode: tally(), flat: tally() };
    const byShare = Array.from({ length: 5 }, tally);
    let squares = 0;
    let fourth = 0;
    const surveys = 600;
    for (let run = 0; run < surveys; run++) {
      const bands = 1 + pick(prior);
      let starts: number[];
      do {
        const cuts = new Set<number>();
        while (cuts.size < bands - 1) cuts.add(1 + Math.floor(noise.uniform() * (n - 1)));
        starts = [0, ...[...cuts].sort((a, b) => a - b)];
      } while (starts.some((s, k) => (starts[k + 1] ?? n) - s < 2));
      const truth: number[] = [];
      const flat = starts.map((s, k) => {
        const t = starts[k + 1] ?? n;
        const isFlat = t - s < 4 || noise.uniform() < 0.5;
        const height = beliefs.levelSpread * noise.normal();
        const slope = isFlat ? 0 : beliefs.slopeSpread * noise.normal();
        for (let i = s; i < t; i++) truth.push(height + slope * (i - (s + t - 1) / 2));
        return isFlat;
      });
      const y = truth.map((v) => v + noise.normal());
      const found = bandPosterior(x, y, {
        ...options,
        u: 1,
        grossProbability: 0,
        bands,
        at: [7],
      });
      found.edges.forEach(({ interval, position: { low, high } }, i) => {
        const start = starts[i + 1]!;
        const edge = start - 1 + within.uniform(); // anywhere in its gap
        count(counted.position, 0.95, low <= edge && edge <= high);
        count(counted.interval, interval.probability, start > interval.after && start <= interval.before);
      });
      count(counted.mode, Math.max(...found.bandCountProbability), found.bandCount === bands);
      for (const { before, probability } of found.gaps) {
        const part = [0.02, 0.2, 0.8, 0.98].filter((limit) => probability > limit).length;
        count(byShare[part]!, probability, starts.includes(before));
      }
      if (String(found.segments.map(({ from }) => from)) === String(starts))
        found.segments.forEach(({ from, to, flatProbability }, i) => {
          if (to - from >= 3) count(counted.flat, flatProbability, flat[i]!);
        });
      const z2 = ((truth[7]! - found.levels[0]!.value) / found.levels[0]!.standardUncertainty) ** 2;
      squares += z2 / surveys;
      fourth += z2 ** 2 / surveys;
    }
    expect(counted.interval.trials).toBeGreaterThan(500);
    expect(counted.interval.expected / counted.interval.trials).toBeGreaterThanOrEqual(0.95);
    for (const one of [counted.interval, counted.position, counted.mode, ...byShare])
      expectCalibrated(one, 3.5);
    // Given that the most probable division is the true one, which the flat share does not depend on.
    expectCalibrated(counted.flat, 3.5);
    expectClose(squares, 1, {
      abs: 3.5 * Math.sqrt((fourth - squares ** 2) / surveys),
      because: "3.5 standard deviations of the mean square of truth less level over its sd",
    });
  });

  it("gives gross readings no weight, lists them, and then says what it says without them", () => {
    const noise = seededNoise(9);
    const x = Array.from({ length: 40 }, (_, i) => i);
    const y = x.map((v) => (v < 17 ? 0 : 8) + noise.normal());
    const wrong = y.map((v, i) => (i === 25 ? 10 * v + 500 : v));
    const prior = { levelCentre: 4, levelSpread: 10, slopeSpread: 1 };
    const found = bandPosterior(x, wrong, { u: 1, ...prior });
    expect(found.gross).toEqual([25]);
    const without = (v: readonly number[]): number[] => v.filter((_, i) => i !== 25);
    const clean = bandPosterior(without(x), without(y), { u: 1, ...prior });
    const { grossProbability, grossRange } = found.prior;
    expectClose(found.prior.grossRange, 2 * (Math.max(...wrong) - Math.min(...wrong)), {
      rel: 1e-12,
      because: "the default",
    });
    expectClose(found.logEvidence, clean.logEvidence + Math.log(grossProbability / grossRange), {
      abs: 0.01,
      because: "one reading more, gross; what else might be gross has another range there",
    });
    expect(found.doubtful.find(({ index }) => index === 25)!.probability).toBeGreaterThan(1 - 1e-9);
    expect(found.edges.map(({ after, before }) => [after, before])).toEqual([[16, 17]]);
    expect(found.gaps.find(({ after }) => after === 24)!.before).toBe(26);
  });

  it("agrees with partition on a clear survey, ties and uneven steps included", () => {
    const noise = seededNoise(12);
    const x = Array.from({ length: 80 }, (_, i) => Math.floor(i / 2) + (i > 50 ? 3 : 0));
    const y = x.map((v) => (v < 11 ? 0 : v < 30 ? -9 : 2) + noise.normal());
    const found = bandPosterior(x, y, { u: 1, maximumBands: 6 });
    const parts = partition(x, y, { u: 1 });
    expect(found.edges.map(({ after, before }) => ({ after, before }))).toEqual(
      parts.edges.map(({ after, before }) => ({ after, before })),
    );
    for (const { low, high } of found.gaps) expect(high).toBeGreaterThan(low);
    expect(found.gaps).toHaveLength(new Set(x).size - 1);
  });

  it("keeps its digits where chi-square is huge, and where bands are many", () => {
    const x = Array.from({ length: 200 }, (_, i) => i);
    const y = x.map((v) => (Math.floor(v / 4) % 2) * 1e6 + (v % 2));
    const found = bandPosterior(x, y, { u: 1, shapes: ["flat"], maximumBands: 80 });
    expect(found.bandCount).toBe(50);
    expectClose(sum(found.bandCountProbability), 1, { abs: 1e-12, because: "probabilities" });
    for (const { probability } of found.edges)
      expectClose(probability, 1, { abs: 1e-9, because: "steps of 1e6 standard uncertainties" });
    expect(Number.isFinite(found.logEvidence)).toBe(true);
  });

  it("leaves its inputs alone and gives a frozen result", () => {
    const x = Object.freeze([0, 1, 2, 3, 4, 5]);
    const found = bandPosterior(x, Object.freeze([1, 1, 1, 5, 5, 5]), { u: 0.1, shapes: ["flat"], at: [1] });
    expect(found.bandCount).toBe(2);
    const parts = [found.gaps, found.gaps[0], found.edges, found.edges[0], found.edges[0]!.interval];
    const others = [found, found.segments, found.levels, found.prior, found.bandCountProbability];
    expect([...parts, ...others].every(Object.isFrozen)).toBe(true);
  });

  it("describes no edges for a number of bands that is out of the question", () => {
    const x = [0, 1, 2, 3, 4, 5];
    const tooMany = bandPosterior(x, [1, 1, 1, 5, 5, 5], { u: 0.1, bands: 4 });
    expect([tooMany.bands, tooMany.bandCount]).toEqual([4, 2]);
    expect([tooMany.edges, tooMany.segments]).toEqual([[], []]);
    expect(tooMany.bandCountProbability[3]).toBe(0);
  });

  it("rejects what it cannot weigh", () => {
    const rejects = (options: Partial<BandPosteriorOptions>, message: RegExp, x = [0, 1, 2, 3]): void => {
      expect(() => bandPosterior(x, [1, 1, 2, 2], { u: 1, ...options })).toThrow(message);
    };
    rejects({ u: 0 }, /bandPosterior: u must be greater than 0, got 0/);
    rejects({}, /positions must ascend, got 1 at index 2 after 3/, [0, 3, 1, 4]);
    rejects({}, /equally long, got 3 and 4/, [0, 1, 2]);
    rejects({ maximumBands: 0 }, /maximumBands must be a whole number from 1 to 200, got 0/);
    rejects({ bands: 21 }, /bands must be a whole number from 1 to 20, got 21/);
    rejects({ bandCountPrior: [0, 0] }, /bandCountPrior must hold values of 0 or more, one of them above 0/);
    rejects({ bandCountPrior: [0, 0, 1] }, /positions must allow a division into a number of bands/);
    rejects({ bandCountPrior: [1, 1], maximumBands: 1 }, /bandCountPrior may have one value a number/);
    rejects({ levelSpread: 0 }, /levelSpread must be greater than 0, got 0/);
    rejects({ slopeSpread: Number.NaN }, /slopeSpread must be a finite number, got NaN/);
    rejects({ coverage: 1 }, /coverage must lie between 0 and 1, got 1/);
    rejects({ at: [3.5] }, /at must lie within the readings that count, 0 to 3, got 3.5/);
    rejects({ shapes: [] }, /shapes needs at least one shape/);
    rejects({ grossProbability: 0.5 }, /grossProbability must be from 0 to less than 0.5/);
    const many = Array.from({ length: 5001 }, (_, i) => i);
    expect(() => bandPosterior(many, many, { u: 1 })).toThrow(
      /at most 5000 readings can be weighed, got 5001/,
    );
  });
});

/** What was said, and what came true. */
interface Tally {
  trials: number;
  expected: number;
  variance: number;
  seen: number;
}

function tally(): Tally {
  return { trials: 0, expected: 0, variance: 0, seen: 0 };
}

function count(into: Tally, probability: number, happened: boolean): void {
  into.trials += 1;
  into.expected += probability;
  into.variance += probability * (1 - probability);
  into.seen += happened ? 1 : 0;
}

function expectCalibrated({ expected, variance, seen }: Tally, deviations: number): void {
  expectClose(seen, expected, {
    abs: deviations * Math.sqrt(variance),
    because: `${deviations} standard deviations of the number that comes true`,
  });
}
