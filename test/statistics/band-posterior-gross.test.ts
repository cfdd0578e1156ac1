import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BandPosterior, bandPosterior } from "../../kernel-helpers/statistics/index.js";
import { type DivisionRules, everyDivision } from "../support/every-division.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";

interface Everything {
  readonly logEvidence: number;
  readonly gross: readonly number[];
  readonly bandCount: readonly number[];
  /** Probability of an edge between readings i and i + 1, gaps around a gross reading shared by width. */
  readonly edge: readonly number[];
}

/** Every choice of gross readings and every division of the others, by listing: 2ⁿ times 2ⁿ⁻¹. */
function everything(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  rules: DivisionRules,
  grossProbability: number,
  grossRange: number,
): Everything {
  const n = x.length;
  const sums = { total: 0, gross: new Array<number>(n).fill(0), count: new Array<number>(n).fill(0) };
  const edge = new Array<number>(n).fill(0);
  for (let mask = 0; mask < 2 ** n - 1; mask++) {
    const kept = x.map((_, i) => i).filter((i) => (mask & (1 << i)) === 0);
    const of = (all: readonly number[]): number[] => kept.map((i) => all[i]!);
    const listed = everyDivision(of(x), of(y), of(u), {
      ...rules,
      ...(rules.rows === undefined ? {} : { rows: of(rules.rows) }),
    });
    if (!Number.isFinite(listed.logEvidence)) continue;
    const weight =
      (grossProbability / grossRange) ** (n - kept.length) *
      (1 - grossProbability) ** kept.length *
      Math.exp(listed.logEvidence);
    sums.total += weight;
    for (let i = 0; i < n; i++) if (!kept.includes(i)) sums.gross[i]! += weight;
    for (const { starts, probability } of listed.divisions) {
      sums.count[starts.length - 1]! += weight * probability;
      for (const start of starts.slice(1)) {
        const [from, to] = [kept[start - 1]!, kept[start]!];
        for (let i = from; i < to; i++)
          edge[i]! += (weight * probability * (x[i + 1]! - x[i]!)) / (x[to]! - x[from]!);
      }
    }
  }
  const share = (v: number): number => v / sums.total;
  return {
    logEvidence: Math.log(sums.total),
    gross: sums.gross.map(share),
    bandCount: sums.count.map(share),
    edge: edge.map(share),
  };
}

/** The greatest difference of any probability from those of the list. */
function farthest(found: BandPosterior, listed: Everything): number {
  const off: number[] = [];
  const gross = new Map(found.doubtful.map(({ index, probability }) => [index, probability]));
  listed.gross.forEach((p, i) => {
    const said = gross.get(i);
    off.push(said === undefined ? Math.max(0, p - 0.01) : Math.abs(said - p));
  });
  found.bandCountProbability.forEach((p, k) => {
    off.push(Math.abs(p - (listed.bandCount[k] ?? 0)));
  });
  for (const { after, before, probability } of found.gaps) {
    let p = 0;
    for (let i = after; i < before; i++) p += listed.edge[i]!;
    off.push(Math.abs(probability - p));
  }
  return Math.max(...off);
}

/** Whether repeats of one position in a row differ by 3 standard uncertainties or more: some such are refused. */
function contradicts(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  rows: readonly number[],
): boolean {
  return x.some((at, i) =>
    x.some(
      (other, j) =>
        other === at && rows[i] === rows[j] && Math.abs(y[i]! - y[j]!) >= 3 * Math.hypot(u[i]!, u[j]!),
    ),
  );
}

describe("bandPosterior(positions, values, { rows, … })", () => {
  it("is the sum over every division there is, each row with a line of its own", () => {
    const reading = fc.record({
      gap: fc.integer({ min: 0, max: 2 }),
      y: fc.integer({ min: -8, max: 8 }),
      u: fc.constantFrom(0.5, 1, 2),
      row: fc.integer({ min: 0, max: 2 }),
    });
    const rules = fc.record({
      shapes: fc.constantFrom<readonly ("flat" | "sloping")[]>(["flat"], ["flat", "sloping"]),
      minimumPoints: fc.integer({ min: 1, max: 3 }),
      minimumSlopingPoints: fc.integer({ min: 3, max: 4 }),
      minimumPositions: fc.integer({ min: 1, max: 2 }),
      bandCountPrior: fc.constantFrom([1, 1, 1, 1], [0.5, 0.25, 0.125]),
      edgePrior: fc.constantFrom("gaps" as const, "length" as const),
      levelCentre: fc.constantFrom(0, 3),
      levelSpread: fc.constantFrom(1, 10),
      slopeSpread: fc.constantFrom(0.1, 10),
      rowSpread: fc.constantFrom(0.3, 5),
    });
    let compared = 0;
    fc.assert(
      fc.property(fc.array(reading, { minLength: 3, maxLength: 9 }), rules, (list, drawn) => {
        let place = 0;
        const x = list.map(({ gap }) => {
          place += gap;
          return place;
        });
        const rows = list.map(({ row }) => row);
        const [y, u] = [list.map((r) => r.y), list.map((r) => r.u)];
        const own = new Set(rows).size === 1 ? { ...drawn, rowSpread: 0 } : { ...drawn, rows };
        const listed = everyDivision(x, y, u, own);
        if (!Number.isFinite(listed.logEvidence) || contradicts(x, y, u, rows)) return;
        compared += 1;
        const found = bandPosterior(x, y, { ...drawn, rows, u, maximumBands: 4, grossProbability: 0 });
        const exact = { abs: 1e-9, because: "the factored covariance loses a few digits" };
        expectClose(found.logEvidence, listed.logEvidence, exact);
        found.bandCountProbability.forEach((p, k) => {
          const same = listed.divisions.filter(({ starts }) => starts.length === k + 1);
          expectClose(
            p,
            same.reduce((sum, { probability }) => sum + probability, 0),
            exact,
          );
        });
      }),
      { seed: 8, numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

describe("bandPosterior(positions, values, { grossProbability, … })", () => {
  it("is the sum over every choice of gross readings and every division, but for what grossLeft says", () => {
    const noise = seededNoise(31);
    let [doubted, widest] = [0, 0];
    for (let run = 0; run < 60; run++) {
      const n = 6 + (run % 3);
      const twoRows = run % 2 === 1;
      const x = Array.from({ length: n }, (_, i) => (twoRows ? Math.floor(i / 2) : i));
      const rows = x.map((_, i) => (twoRows ? i % 2 : 0));
      const edge = 1 + Math.floor(noise.uniform() * (x[n - 1]! - 1));
      const step = 12 * noise.uniform();
      const y = x.map((v, i) => (v < edge ? 0 : step) + (rows[i] === 1 ? 3 : 0) + noise.normal());
      const wrong = Math.floor(n * noise.uniform());
      y[wrong]! += 3 + 9 * noise.uniform();
      const u = x.map(() => 1);
      const rules: DivisionRules = {
        shapes: run % 5 === 0 ? ["flat", "sloping"] : ["flat"],
        minimumPoints: 2,
        minimumSlopingPoints: 4,
        bandCountPrior: [1, 0.25, 0.0625, 1 / 64],
        edgePrior: "gaps",
        levelCentre: 5,
        levelSpread: 15,
        slopeSpread: 5,
        ...(twoRows ? { rows, rowSpread: 6 } : {}),
      };
      const listed = everything(x, y, u, rules, 0.02, 150);
      const found = bandPosterior(x, y, {
        ...rules,
        u,
        maximumBands: 4,
        grossProbability: 0.02,
        grossRange: 150,
      });
      const off = farthest(found, listed);
      expect(found.logEvidence).toBeLessThanOrEqual(listed.logEvidence + 1e-9); // a part of the sum
      widest = Math.max(widest, off);
      doubted += found.doubtful.some(({ probability }) => probability > 0.1 && probability < 0.9) ? 1 : 0;
    }
    expect(doubted).toBeGreaterThan(5);
    // Measured 0.0053 in the worst survey, 0.0005 as a rule.
    expect(widest).toBeLessThan(0.01);
  });

  it("is as often right as it says: one reading in fifty gross, anywhere in the range it states", () => {
    const noise = seededNoise(4);
    const x = Array.from({ length: 24 }, (_, i) => Math.floor(i / 2));
    const rows = x.map((_, i) => i % 2);
    const said = [0, 0, 0];
    const came = [0, 0, 0];
    let variance = 0;
    for (let run = 0; run < 250; run++) {
      const step = 10 * noise.normal();
      const edge = 2 + Math.floor(9 * noise.uniform());
      const gross = x.map(() => noise.uniform() < 0.02);
      const y = x.map((v, i) => {
        const sound = (v < edge ? 0 : step) + (rows[i] === 1 ? 2 : 0) + noise.normal();
        return gross[i]! ? 30 * (noise.uniform() - 0.5) : sound;
      });
      const found = bandPosterior(x, y, {
        u: 1,
        rows,
        shapes: ["flat"],
        minimumPositions: 2,
        maximumBands: 4,
        levelCentre: 0,
        levelSpread: 10,
        rowSpread: 3,
        grossProbability: 0.02,
        grossRange: 30,
      });
      for (const { index, probability } of found.doubtful) {
        const part = probability < 0.1 ? 0 : probability < 0.9 ? 1 : 2;
        said[part]! += probability;
        came[part]! += gross[index]! ? 1 : 0;
        variance += probability * (1 - probability);
      }
    }
    expect(came[1]! + said[1]!).toBeGreaterThan(20);
    expectClose(came[0]! + came[1]! + came[2]!, said[0]! + said[1]! + said[2]!, {
      abs: 3.5 * Math.sqrt(variance),
      because: "3.5 standard deviations of the number that comes true",
    });
    expectClose(came[1]!, said[1]!, {
      abs: 3.5 * Math.sqrt(variance),
      because: "likewise, those most in doubt",
    });
  });

  it("widens an edge by the share that a doubtful reading speaks against it, and shares the gap it stands in", () => {
    const x = Array.from({ length: 16 }, (_, i) => i);
    const y = x.map((v) => (v < 8 ? 0 : 60));
    const given = { u: 1, shapes: ["flat"] as const, levelCentre: 30, levelSpread: 60, grossRange: 300 };
    const edgeWith = (off: number, grossProbability: number): BandPosterior =>
      bandPosterior(
        x,
        y.map((v, i) => (i === 7 ? off : v)),
        { ...given, grossProbability, bands: 2 },
      );
    const sound = edgeWith(0, 0.01).edges[0]!.position;
    expectClose(sound.high - sound.low, 0.95, { rel: 0.01, because: "a gap of 1, the middle 95 % of it" });
    const between = edgeWith(30, 0.01); // neither band's: gross, and the edge anywhere between 6 and 8
    expect(between.doubtful.map(({ index }) => index)).toEqual([7]);
    expect(between.doubtful[0]!.probability).toBeGreaterThan(0.999);
    expectClose(between.edges[0]!.position.high - between.edges[0]!.position.low, 1.9, {
      rel: 0.01,
      because: "a gap of 2, the middle 95 % of it",
    });
    const doubtful = edgeWith(4.6, 0.01);
    const { probability } = doubtful.doubtful.find(({ index }) => index === 7)!;
    expect(probability).toBeGreaterThan(0.2);
    expect(probability).toBeLessThan(0.9);
    const { standardUncertainty } = doubtful.edges[0]!.position;
    // A mixture of a gap of 1 about 7.5 and one of 2 about 7.
    const mean = 7.5 - 0.5 * probability;
    const variance =
      (1 - probability) * (1 / 12 + (7.5 - mean) ** 2) + probability * (4 / 12 + (7 - mean) ** 2);
    expectClose(standardUncertainty, Math.sqrt(variance), {
      rel: 0.02,
      because: "other places hold below 1 %",
    });
  });

  it("tells a reading beside an edge by what another row says of the edge, and takes two stations alike for a narrow band", () => {
    const noise = seededNoise(3);
    const x = Array.from({ length: 60 }, (_, i) => Math.floor(i / 2));
    const rows = x.map((_, i) => (i % 2 === 0 ? "0°" : "90°"));
    const y = x.map((v) => (v < 10 || v >= 20 ? 0 : -20) + noise.normal());
    // 0° at the last station but one before the edge, off by most of the step; partition puts aside the sound one beside it.
    const slipped = y.map((v, i) => (i === 16 ? v - 13 : v));
    const found = bandPosterior(x, slipped, { u: 1, rows, minimumPositions: 2 });
    expect(found.gross).toEqual([16]);
    expect(found.bandCount).toBe(3);
    expect(found.edges.map(({ low, high }) => [low, high])).toEqual([
      [9, 10],
      [19, 20],
    ]);
    const lowered = (at: readonly number[]): BandPosterior =>
      bandPosterior(
        x,
        y.map((v, i) => (at.includes(i) ? v - 13 : v)),
        { u: 1, rows },
      );
    const groove = lowered([50, 51, 52, 53]);
    expect(groove.gross).toEqual([]);
    expect(groove.bandCount).toBe(5);
    // Both rows of one station alike: two errors or a band; of one row alone there is no doubt.
    const pair = lowered([50, 51]).doubtful.map(({ index, probability }) => ({
      index,
      sure: probability > 0.99,
    }));
    expect(pair).toEqual([
      { index: 50, sure: false },
      { index: 51, sure: false },
    ]);
    const single = lowered([50]);
    expect(single.gross).toEqual([50]);
    expect(single.doubtful[0]!.probability).toBeGreaterThan(0.999);
  });

  it("rejects rows, suspects and probabilities it cannot use", () => {
    const rejects = (options: object, message: RegExp): void => {
      expect(() => bandPosterior([0, 1, 2, 3], [1, 1, 2, 2], { u: 1, ...options })).toThrow(message);
    };
    rejects({ grossProbability: 0.5 }, /grossProbability must be from 0 to less than 0.5, got 0.5/);
    rejects({ grossProbability: Number.NaN }, /grossProbability must be from 0 to less than 0.5, got NaN/);
    rejects({ grossRange: 0 }, /grossRange must be greater than 0, got 0/);
    rejects({ rows: [0, 1] }, /rows must name one row a reading \(4\), got 2/);
    rejects({ rows: [0, 1, 0, 1], at: [1] }, /at is for readings of one row, got 2 rows/);
    rejects({ suspects: [4] }, /suspects must be indices of readings, 0 to 3, got 4/);
    rejects({ minimumPositions: 0 }, /minimumPositions must be a whole number of at least 1, got 0/);
  });
});
