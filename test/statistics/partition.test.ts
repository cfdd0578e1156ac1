import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  evaluateSegment,
  fitLine,
  leastSquares,
  type Partition,
  partition,
  repeatsTest,
} from "../../kernel-helpers/statistics/index.js";
import { expectClose } from "../support/expect-close.js";
import { plainPartition } from "../support/plain-partition.js";
import { readReference } from "../support/read-reference.js";
import { seededNoise } from "../support/seeded-noise.js";

const u = 2e-6;

/** Diameter readings [m]: 61.9 mm, two worn bands, one of them narrow, noise of 2 µm. */
function shaft(n: number, seed: number): { x: number[]; y: number[] } {
  const noise = seededNoise(seed);
  const x = Array.from({ length: n }, (_, i) => 0.01 + i * 0.5e-3);
  const y = x.map((_, i) => {
    const at = i / n;
    const wear = at < 0.3 ? 0 : at < 0.35 ? 30e-6 : at < 0.6 ? 0 : at < 0.8 ? 12e-6 : 0;
    return 61.9e-3 - wear + u * noise.normal();
  });
  return { x, y };
}

const ends = (p: Partition): number[] => p.segments.map((s) => s.to);

/** Least criterion over every division of the readings, each segment fitted by leastSquares. */
function bruteForce(
  x: readonly number[],
  y: readonly number[],
  us: readonly number[],
  rules: {
    penalty: number;
    shapes: readonly ("flat" | "sloping")[];
    minimumPoints: number;
    minimumSlopingPoints: number;
  },
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 2 ** (x.length - 1); mask++) {
    const cuts = [0];
    for (let i = 1; i < x.length; i++) if (mask & (1 << (i - 1))) cuts.push(i);
    if (cuts.some((c) => c > 0 && x[c] === x[c - 1])) continue;
    let total = 0;
    cuts.forEach((from, k) => {
      const to = cuts[k + 1] ?? x.length;
      const part = (v: readonly number[]): number[] => v.slice(from, to);
      const weights = part(us).map((v) => 1 / v ** 2);
      let best = Number.POSITIVE_INFINITY;
      if (rules.shapes.includes("flat") && to - from >= rules.minimumPoints) {
        const fit = leastSquares(
          part(x).map(() => [1]),
          part(y),
          { weights, knownUncertainty: true },
        );
        best = fit.residualSumOfSquares + 2 * rules.penalty;
      }
      const positions = new Set(part(x)).size;
      if (
        rules.shapes.includes("sloping") &&
        to - from >= Math.max(rules.minimumSlopingPoints, rules.minimumPoints) &&
        positions >= 3
      ) {
        const fit = leastSquares(
          part(x).map((v) => [1, v]),
          part(y),
          { weights, knownUncertainty: true },
        );
        best = Math.min(best, fit.residualSumOfSquares + 3 * rules.penalty);
      }
      total += best;
    });
    least = Math.min(least, total);
  }
  return least;
}

describe("partition(positions, values, { u })", () => {
  // Source: Nile, Cobb (1978) Biometrika 65; RSS and means as in Zeileis et al. (2003) CSDA 44, 109-123.
  it("finds the published change of the Nile after 1898, with its means and sums of squares", () => {
    const nile = readReference("nile");
    const years = nile.numbers("year");
    const flow = nile.numbers("flow");
    const noise = Math.sqrt(1597457 / 98);
    const p = partition(years, flow, { u: noise, shapes: ["flat"] });
    expect(ends(p)).toEqual([27, 99]);
    expect(p.edges).toEqual([{ after: 27, before: 28, low: 1898, high: 1899 }]);
    expectClose(p.segments[0]!.level, 1097.75, { rel: 1e-14, because: "exact to the printed digits" });
    expectClose(p.segments[1]!.level, 849.972, { abs: 5.01e-4, because: "3 printed decimals" });
    expectClose(p.totalChiSquare * noise ** 2, 1597457, { abs: 0.501, because: "printed to the unit" });
    const one = partition(years, flow, { u: noise, shapes: ["flat"], penalty: 1000 });
    expectClose(one.totalChiSquare * noise ** 2, 2835157, { abs: 0.501, because: "printed to the unit" });
    expect(one.segments.length).toBe(1);
    expectClose(p.noiseRatio!, 1, { rel: 1e-5, because: "u was taken from the same residuals" });
    expect(p.gross).toEqual([]);
  });

  it("is least over every division there is, for shapes, weights, ties and fewest readings of all kinds", () => {
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
        fc.array(reading, { minLength: 3, maxLength: 9 }),
        shapes,
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 3, max: 5 }),
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (rows, allowed, minimumPoints, minimumSlopingPoints, penalty) => {
          let at = 0;
          const x = rows.map((row) => {
            at += row.gap;
            return at;
          });
          const y = rows.map((row) => row.y);
          const us = rows.map((row) => row.u);
          fc.pre(!repeatsTest(x, y, us).contradictory); // refused: with no limit nothing decides
          const least = bruteForce(x, y, us, {
            penalty,
            shapes: allowed,
            minimumPoints,
            minimumSlopingPoints,
          });
          const find = (): Partition =>
            partition(x, y, {
              u: us,
              shapes: allowed,
              minimumPoints,
              minimumSlopingPoints,
              penalty,
              grossErrorLimit: Number.POSITIVE_INFINITY,
            });
          if (least === Number.POSITIVE_INFINITY) {
            expect(find).toThrow(/positions must allow at least one segment/);
          } else {
            compared += 1;
            expectClose(find().criterion, least, { rel: 1e-9, because: "the same least, up to rounding" });
          }
        },
      ),
      { seed: 51, numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(200);
  });

  it("is least where readings are many: as good as the plain search of every start", () => {
    for (const n of [63, 64, 65, 500, 1500]) {
      const noise = seededNoise(n);
      const x = Array.from({ length: n }, (_, i) => i + 0.3 * noise.uniform());
      const us = x.map(() => 0.5 + noise.uniform());
      const bends = [
        (i: number): number => us[i]! * noise.normal(),
        (i: number): number => us[i]! * noise.normal() + (Math.floor((12 * i) / n) % 2) * 3,
        (i: number): number => us[i]! * noise.normal() + 20 * Math.sin((6 * i) / n),
        (i: number): number => 3 * us[i]! * noise.normal(),
      ];
      for (const bend of bends) {
        const y = x.map((_, i) => bend(i));
        const p = partition(x, y, { u: us, grossErrorLimit: Number.POSITIVE_INFINITY });
        const plain = plainPartition(x, y, us, {
          penalty: p.penalty,
          flat: true,
          sloping: true,
          minimumPoints: 2,
          minimumSlopingPoints: 4,
        });
        expectClose(p.criterion, plain.criterion, {
          rel: 1e-8,
          because: "the running sums of the plain search cancel; largest difference measured 1.3e-9",
        });
        expect(ends(p)).toEqual(plain.segments.map((s) => s.to));
      }
    }
  });

  it("finds wear bands and gives each level its uncertainty", () => {
    const { x, y } = shaft(400, 1);
    const p = partition(x, y, { u, shapes: ["flat"] });
    expect(ends(p)).toEqual([119, 139, 239, 319, 399]);
    const band = p.segments[1]!;
    expectClose(band.level, 61.87e-3, { abs: 4 * band.uLevel, because: "4 standard uncertainties" });
    expectClose(band.uLevel, u / Math.sqrt(20), { rel: 1e-12, because: "mean of 20 readings" });
    expectClose(p.noiseRatio!, 1, { abs: 0.15, because: "395 degrees of freedom: 4 times 1/√790" });
  });

  it("tells a taper from the parallel part, with the line and uncertainty of fitLine", () => {
    const noise = seededNoise(3);
    const x = Array.from({ length: 60 }, (_, i) => i * 2e-3);
    const y = x.map((v, i) => (i < 40 ? 61.9e-3 - v / 16 : 55e-3) + u * noise.normal());
    const p = partition(x, y, { u });
    expect(p.segments.map((s) => [s.shape, s.from, s.to])).toEqual([
      ["sloping", 0, 39],
      ["flat", 40, 59],
    ]);
    const taper = p.segments[0]!;
    const line = fitLine(x.slice(0, 40), y.slice(0, 40), { u });
    const because = "the same line by another path";
    expectClose(taper.slope, line.slope, { rel: 1e-11, because });
    expectClose(taper.uSlope, line.uSlope, { rel: 1e-11, because });
    expectClose(taper.intercept, line.intercept, { rel: 1e-12, because });
    expectClose(taper.chiSquare, line.chiSquare!, { rel: 1e-8, because });
    expect(taper.degreesOfFreedom).toBe(38);
    const at = evaluateSegment(taper, 0);
    expectClose(at.value, line.intercept, { rel: 1e-12, because });
    expectClose(at.standardUncertainty, line.uIntercept, { rel: 1e-11, because });
  });

  it("changes nothing but units under shift and scale, at large offsets too", () => {
    const { x, y } = shaft(300, 4);
    const p = partition(x, y, { u });
    const inch = partition(
      x.map((v) => v / 0.0254),
      y.map((v) => v / 0.0254),
      { u: u / 0.0254 },
    );
    expect(ends(inch)).toEqual(ends(p));
    expectClose(inch.criterion, p.criterion, { rel: 1e-9, because: "chi-square has no unit" });
    expectClose(inch.segments[1]!.level * 0.0254, p.segments[1]!.level, { rel: 1e-14, because: "units" });
    const far = partition(
      x.map((v) => v * 1000 + 1e6),
      y.map((v) => v * 1e6 + 1e6),
      { u: u * 1e6 },
    );
    expect(ends(far)).toEqual(ends(p));
    expectClose(far.totalChiSquare, p.totalChiSquare, {
      rel: 1e-8,
      because: "1e6 leaves 10 digits of a micrometre",
    });
  });

  it("turns with the readings: mirrored positions give mirrored segments", () => {
    const { x, y } = shaft(300, 6);
    const p = partition(x, y, { u });
    const mirrored = partition(x.map((v) => -v).reverse(), [...y].reverse(), { u });
    expect(mirrored.segments.map((s) => 299 - s.from).reverse()).toEqual(ends(p));
    expectClose(mirrored.criterion, p.criterion, { rel: 1e-9, because: "the same divisions" });
  });

  it("puts no edge between readings of equal position", () => {
    const x = [0, 0, 1, 1, 2, 2, 3, 3];
    const y = [0, 0, 0, 9, 9, 9, 9, 9];
    const p = partition(x, y, { u: 1, shapes: ["flat"], grossErrorLimit: Number.POSITIVE_INFINITY });
    for (const edge of p.edges) expect(edge.high).toBeGreaterThan(edge.low);
    expect([1, 3]).toContain(p.edges[0]!.after);
  });

  it("says by its noise ratio when the readings scatter more than stated", () => {
    const noise = seededNoise(8);
    const x = Array.from({ length: 200 }, (_, i) => i);
    const y = x.map(() => 3 * noise.normal());
    const p = partition(x, y, { u: 1, penalty: 100, grossErrorLimit: Number.POSITIVE_INFINITY });
    expectClose(p.noiseRatio!, 3, { abs: 0.6, because: "4 times 3/√400" });
  });

  it("leaves its inputs alone and gives a frozen result", () => {
    const x = Object.freeze([0, 1, 2, 3, 4, 5]);
    const p = partition(x, Object.freeze([1, 1, 1, 5, 5, 5]), { u: 0.1 });
    expect([p, p.segments, p.segments[0], p.edges, p.gross, p.residuals].every(Object.isFrozen)).toBe(true);
    expect(p.edges[0]!.high).toBe(3);
    expect(p.kind).toBe("partition");
  });

  it("rejects what it cannot divide", () => {
    expect(() => partition([0, 2, 1], [1, 1, 1], { u: 1 })).toThrow(
      "partition: positions must ascend, got 1 at index 2 after 2",
    );
    expect(() => partition([0, 1], [1, Number.NaN], { u: 1 })).toThrow(
      "partition: values[1] must be a finite number, got NaN",
    );
    expect(() => partition([0, 1], [1, 2, 3], { u: 1 })).toThrow(
      /positions and values must be equally long, got 2 and 3/,
    );
    expect(() => partition([0], [1], { u: 1 })).toThrow(
      "partition: positions needs at least 2 values, got 1",
    );
    expect(() => partition([0, 1], [1, 2], { u: 0 })).toThrow("partition: u must be greater than 0, got 0");
    expect(() => partition([0, 1], [1, 2], { u: [1, -1] })).toThrow(
      "partition: u[1] must be greater than 0, got -1",
    );
    expect(() => partition([0, 1], [1, 2], { u: 1, penalty: 0 })).toThrow(
      /penalty must be greater than 0, got 0/,
    );
    expect(() => partition([0, 1], [1, 2], { u: 1, minimumPoints: 1.5 })).toThrow(
      /minimumPoints must be a whole number/,
    );
    expect(() => partition([0, 1], [1, 2], { u: 1, minimumSlopingPoints: 2 })).toThrow(
      /minimumSlopingPoints must be a whole number of at least 3, got 2/,
    );
    expect(() => partition([0, 1], [1, 2], { u: 1, grossErrorLimit: 0 })).toThrow(
      /grossErrorLimit must be greater than 0/,
    );
    expect(() => partition([0, 1], [1, 2], { u: 1, shapes: [] })).toThrow(/shapes needs at least one shape/);
    expect(() => partition([0, 0, 1, 1], [1, 2, 3, 4], { u: 1, shapes: ["sloping"] })).toThrow(
      /positions must allow at least one segment/,
    );
  });
});

describe("partition: gross errors", () => {
  it("lists a reading ten times too large, and finds the bands as if it were not there", () => {
    const { x, y } = shaft(400, 1);
    for (const at of [0, 1, 60, 119, 120, 130, 139, 140, 398, 399]) {
      const wrong = y.map((v, i) => (i === at ? 10 * v : v));
      const p = partition(x, wrong, { u });
      expect(p.gross.map((g) => g.index)).toEqual([at]);
      const without = partition(
        x.filter((_, i) => i !== at),
        y.filter((_, i) => i !== at),
        { u, penalty: p.penalty },
      );
      expectClose(p.totalChiSquare, without.totalChiSquare, { rel: 1e-8, because: "no weight at all" });
      expect(p.segments.length).toBe(5);
      expectClose(p.gross[0]!.residual, 9 * y[at]!, { rel: 1e-3, because: "0.56 m off, less at most 42 µm" });
      expectClose(p.residuals[at]!, p.gross[0]!.residual, { rel: 1e-15, because: "listed twice" });
      expect(p.settled).toBe(true);
    }
  });

  it("lists a single reading 12 to 30 standard uncertainties off that nothing bears out, edges of bands included", () => {
    let tried = 0;
    for (const seed of [1, 5, 7]) {
      const { x, y } = shaft(200, seed);
      for (const at of [0, 30, 59, 60, 61, 68, 69, 70, 119, 120, 159, 160, 199]) {
        for (const off of [-30, -22, -12, 12, 22, 30]) {
          const p = partition(
            x,
            y.map((v, i) => (i === at ? v + off * u : v)),
            { u },
          );
          // A reading moved to the height of a reading next door or next but one, or onto the line of the two, is borne out.
          const level = y[at]! + off * u;
          const near = (expected: number): boolean => Math.abs(expected - level) < 12 * u;
          const borneOut = [-1, 1].some((way) => {
            const one = y[at + way] ?? 0;
            const two = y[at + 2 * way] ?? 0;
            return near(one) || near(two) || near(2 * one - two);
          });
          if (borneOut) continue;
          tried += 1;
          expect(p.gross.map((g) => g.index)).toEqual([at]);
          const others = (v: readonly number[]): number[] => v.filter((_, i) => i !== at);
          const without = partition(others(x), others(y), { u, penalty: p.penalty });
          expect(p.segments.map((s) => s.points)).toEqual(without.segments.map((s) => s.points));
        }
      }
    }
    expect(tried).toBeGreaterThan(100);
  });

  it("keeps a true band of two readings, and of three, however deep", () => {
    const noise = seededNoise(12);
    const x = Array.from({ length: 100 }, (_, i) => i);
    for (const width of [2, 3]) {
      for (const depth of [8, 30, 1000]) {
        for (const from of [0, 50, 100 - width]) {
          const y = x.map((v) => (v >= from && v < from + width ? -depth : 0) + noise.normal());
          const p = partition(x, y, { u: 1 });
          expect(p.gross).toEqual([]);
          const band = p.segments.find((s) => s.from === from);
          expect(band?.to).toBe(from + width - 1);
        }
      }
    }
  });

  it("keeps the tip of a ridge and a steep run, which their neighbours bear out", () => {
    const x = Array.from({ length: 41 }, (_, i) => i);
    const ridge = x.map((v) => 50 * (20 - Math.abs(v - 20)));
    expect(partition(x, ridge, { u: 1 }).gross).toEqual([]);
    const chamfer = x.map((v) => (v < 15 ? 0 : v < 20 ? 200 * (v - 14) : 1000));
    expect(partition(x, chamfer, { u: 1 }).gross).toEqual([]);
  });

  it("lists every one of many, and nothing else", () => {
    const { x, y } = shaft(1000, 9);
    const noise = seededNoise(10);
    const wrong: number[] = [];
    const values = y.map((v, i) => {
      if (i % 41 !== 17) return v;
      wrong.push(i);
      return v + (noise.uniform() < 0.5 ? -1 : 1) * (13 + 40 * noise.uniform()) * u;
    });
    const p = partition(x, values, { u });
    expect(p.gross.map((g) => g.index)).toEqual(wrong);
    expect(ends(p)).toEqual([299, 349, 599, 799, 999]);
  });

  it("finds every wildly wrong reading where one in ten is and no two side by side", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const noise = seededNoise(seed);
      const { x, y } = shaft(200, seed + 100);
      const wrong: number[] = [];
      const values = y.map((v, i) => {
        if (noise.uniform() >= 0.1 || wrong.at(-1) === i - 1) return v;
        wrong.push(i);
        return v * (noise.uniform() < 0.5 ? 0.1 : 10) * (1 + 0.5 * noise.uniform());
      });
      const found = partition(x, values, { u }).gross.map((g) => g.index);
      expect(found.filter((i) => wrong.includes(i))).toEqual(wrong);
      expect(found.length - wrong.length).toBeLessThanOrEqual(2); // good readings cut off by wrong ones on both sides
    }
  });

  it("holds what it promises: gross readings stand off by more than the limit, the others by less", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 0, max: 6 }), (seed, count) => {
        const noise = seededNoise(seed);
        const { x, y } = shaft(150, seed + 1);
        for (let k = 0; k < count; k++) {
          const at = Math.floor(150 * noise.uniform());
          y[at] = y[at]! + (noise.uniform() < 0.5 ? -1 : 1) * (5 + 30 * noise.uniform()) * u;
        }
        const p = partition(x, y, { u });
        expect(p.settled).toBe(true);
        const put = new Set(p.gross.map((g) => g.index));
        for (const segment of p.segments) {
          const size = segment.shape === "flat" ? 2 : 4;
          for (let i = segment.from; i <= segment.to; i++) {
            const residual = p.residuals[i]!;
            const variance = evaluateSegment(segment, x[i]!).standardUncertainty ** 2;
            if (put.has(i)) expect(Math.abs(residual) / Math.sqrt(u * u + variance)).toBeGreaterThan(6);
            else if (segment.points > size)
              expect(Math.abs(residual) / Math.sqrt(u * u - variance)).toBeLessThanOrEqual(6);
          }
        }
        const kept = x.map((_, i) => i).filter((i) => !put.has(i));
        const plain = plainPartition(
          kept.map((i) => x[i]!),
          kept.map((i) => y[i]!),
          kept.map(() => u),
          { penalty: p.penalty, flat: true, sloping: true, minimumPoints: 2, minimumSlopingPoints: 4 },
        );
        expectClose(p.criterion - 36 * put.size, plain.criterion, {
          rel: 1e-8,
          because: "exact for the readings kept",
        });
      }),
      { seed: 61, numRuns: 150 },
    );
  });

  it("puts nothing aside where the limit is Infinity, and nothing away in silence", () => {
    const { x, y } = shaft(100, 2);
    y[50] = 10 * y[50]!;
    const p = partition(x, y, { u, grossErrorLimit: Number.POSITIVE_INFINITY });
    expect(p.gross).toEqual([]);
    expect(p.segments.reduce((sum, s) => sum + s.points, 0)).toBe(100);
    const listed = partition(x, y, { u });
    expect(listed.segments.reduce((sum, s) => sum + s.points, 0) + listed.gross.length).toBe(100);
    expect(listed.segments.map((s) => s.from).slice(1)).toEqual(
      ends(listed)
        .slice(0, -1)
        .map((to) => to + 1),
    );
  });

  it("still answers when u is stated a thousand times too small, and says so", () => {
    const { x, y } = shaft(300, 3);
    const p = partition(x, y, { u: u / 1000 });
    expect(p.segments.length).toBeGreaterThan(50);
    expect(p.noiseRatio!).toBeGreaterThan(10);
  });
});
