import { eachBand } from "./band-posterior-each-band.js";
import { type Surveyed, type Weighed, weighed } from "./band-posterior-weighed.js";
import { RunningSums } from "./running-sums.js";

/** One choice of gross readings, and how probable it is among those weighed. */
export interface WeighedSet {
  readonly weighed: Weighed;
  readonly probability: number;
}

/** Every choice of gross readings that matters. */
export interface WeighedSets {
  /** The most probable first. */
  readonly sets: readonly WeighedSet[];
  /** How many choices were weighed. */
  readonly weighedCount: number;
  /** Estimated probability of those next to them that were not [-]. */
  readonly left: number;
}

/** A choice is weighed where it promises this share of the most probable one's weight, or more. */
function leastShareOf(n: number): number {
  return n <= fewReadings ? 1e-3 : 5e-3;
}

/** Among so few readings every one is looked at in every band. */
const fewReadings = 100;
/** Choices lighter than this share of the most probable one are dropped once weighed. */
const negligible = 1e-6;
/** Bands less probable than this tell nothing of their readings. */
const leastBand = 1e-9;
/** Of bands less probable than this only the readings near their ends are looked at: the others lie alike in likelier ones. */
const plainBand = 1e-3;
const nearEnd = 4;
/** So few readings may be a band, or each of them gross. */
const mostInBlock = 3;

/** How many choices are weighed at most: each takes a time that grows with the square of the readings. */
function mostChoices(n: number): number {
  return Math.min(80, Math.max(4, Math.floor(5e6 / n ** 2)));
}

/**
 * Weighs the choices of gross readings that matter, each exactly, from a first choice outward.
 *
 * Beside each choice weighed stand those with one gross reading more. How much they weigh is read off before they are
 * weighed: leaving reading i out multiplies the weight by
 *
 * ε/(1 − ε) · u√(2π)/R · Σ over the bands that hold i of P(band) · density without i / density with i,
 *
 * but for the change in the number of gaps. Those that promise a thousandth of the greatest weight (beyond 100 readings 1/200) are weighed, the
 * weightiest first, and so are the choices with one gross reading less than the weightiest one, or all of
 * one position less, and those in which all
 * readings of a band of three or fewer are gross.
 *
 * @param all the readings and beliefs
 * @param first gross readings to begin with [index]
 * @returns null where no choice near the first one leaves a division
 */
export function weighGross(all: Surveyed, first: readonly number[]): WeighedSets | null {
  const n = all.readings.x.length;
  const leastShare = leastShareOf(n);
  const seen = new Set<string>();
  const found: Weighed[] = [];
  const queue: { gross: readonly number[]; promise: number; sure: boolean }[] = [];
  let best: Weighed | undefined;
  const weigh = (gross: readonly number[]): void => {
    const key = gross.join();
    if (seen.has(key)) return;
    seen.add(key);
    const one = weighed(all, gross);
    if (one === null || !Number.isFinite(one.logWeight)) return;
    found.push(one);
    if (best === undefined || one.logWeight > best.logWeight) best = one;
    if (all.settings.grossProbability > 0) queue.push(...beside(all, one));
  };
  weigh(first);
  if (best === undefined) weigh([]);
  if (best === undefined) return null;
  while (found.length < mostChoices(n) && all.settings.grossProbability > 0) {
    const top: Weighed = best;
    const { x } = all.readings;
    const without = top.gross.flatMap((i) => [
      top.gross.filter((j) => j !== i),
      top.gross.filter((j) => x[j] !== x[i]), // all at one position may be a band of their own
    ]);
    const fewer = without.find((gross) => !seen.has(gross.join()));
    if (fewer !== undefined) {
      weigh(fewer);
      continue;
    }
    queue.sort((a, b) => a.promise - b.promise);
    const next = queue.pop();
    if (next === undefined || next.promise < top.logWeight + Math.log(leastShare)) break;
    weigh(next.gross);
  }
  const greatest = best.logWeight;
  const kept = found
    .filter(({ logWeight }) => logWeight > greatest + Math.log(negligible))
    .sort((a, b) => b.logWeight - a.logWeight);
  const weights = kept.map(({ logWeight }) => Math.exp(logWeight - greatest));
  const total = weights.reduce((a, b) => a + b, 0);
  const left = new Map<string, number>();
  for (const { gross, promise, sure } of queue)
    if (sure && !seen.has(gross.join())) left.set(gross.join(), Math.exp(promise - greatest) / total);
  return {
    sets: kept.map((one, i) => ({ weighed: one, probability: weights[i]! / total })),
    weighedCount: found.length,
    left: Math.min(
      1,
      [...left.values()].reduce((a, b) => a + b, 0),
    ),
  };
}

/** The choices beside one, each with the logarithm of the weight it promises. */
function beside(
  { line, settings, grossRange }: Surveyed,
  one: Weighed,
): { gross: readonly number[]; promise: number; sure: boolean }[] {
  const { readings, index, places } = one;
  const { x, y, w, row } = readings;
  const leastShare = leastShareOf(x.length);
  const priceOf = (i: number): number =>
    Math.log(settings.grossProbability / (1 - settings.grossProbability) / grossRange) -
    0.5 * Math.log(w[i]! / (2 * Math.PI));
  // Half the chi-square by which leaving a reading out must pay, with some room.
  const worth = x.map((_, i) => Math.log(leastShare) - priceOf(i) - 2.5);
  const gain = new Map<number, number>(); // logarithm, by place among the readings that count
  const blocks = new Map<string, { block: readonly number[]; promise: number }>();
  const before = new RunningSums();
  eachBand(one, line, leastBand, (s, t, probability, sums) => {
    const mayBeFlat = s <= places.lastFlat[t]!;
    const maySlope = s <= places.lastSloping[t]!;
    const logProbability = Math.log(probability);
    sums.weigh();
    const now = sums.logDensity(mayBeFlat, maySlope);
    if (t - s <= mostInBlock && probability > leastShare && index.length > t - s + 1) {
      const block = Array.from({ length: t - s }, (_, k) => s + k);
      const price = block.reduce((sum, i) => sum + priceOf(i), 0);
      // At most what two edges and a line cost: the readings beside may be one band without them.
      const promise = price + Math.log(16 * index.length ** 2) + 0.5 * Math.log(sums.spread);
      blocks.set(`${s},${t}`, { block, promise });
    }
    for (let i = s; i < t; i++) {
      if (x.length > fewReadings && probability < plainBand && i === s + nearEnd && t - nearEnd > i)
        i = t - nearEnd;
      const sum = sums.rows[row[i]!]!;
      const many = sum.w > mostInBlock * w[i]!; // where few, its row may stand off for this reading alone
      if (
        many &&
        x.length > fewReadings &&
        0.5 * leftOutGain(sum, x[i]!, y[i]!, w[i]!, maySlope) < worth[i]! - logProbability
      )
        continue;
      before.set(sum);
      if (sum.w - w[i]! > 1e-9 * sum.w) sum.add(-w[i]!, x[i]!, y[i]!);
      else sum.clear();
      sum.xx = Math.max(0, sum.xx);
      sum.yy = Math.max(0, sum.yy);
      sums.weigh();
      const more = logProbability + sums.logDensity(mayBeFlat, maySlope) - now;
      sum.set(before);
      gain.set(i, logSum(gain.get(i) ?? Number.NEGATIVE_INFINITY, more));
    }
  });
  const withMore = (more: readonly number[]): readonly number[] =>
    [...one.gross, ...more.map((i) => index[i]!)].sort((a, b) => a - b);
  return [
    ...[...gain].map(([i, more]) => ({
      gross: withMore([i]),
      promise: one.logWeight + priceOf(i) + more,
      sure: true,
    })),
    ...[...blocks.values()].map(({ block, promise }) => ({
      gross: withMore(block),
      promise: one.logWeight + promise,
      sure: false,
    })),
  ];
}

/** By how much chi-square of a row falls when a reading is left out, about its mean or its own line. */
function leftOutGain(sum: RunningSums, x: number, y: number, w: number, maySlope: boolean): number {
  const share = w / sum.w;
  const away = y - sum.y;
  const flat = (w * away * away) / Math.max(1e-9, 1 - share);
  if (!maySlope || sum.xx === 0) return flat;
  const dx = x - sum.x;
  const off = away - (sum.xy / sum.xx) * dx;
  return Math.max(flat, (w * off * off) / Math.max(1e-9, 1 - share - (w * dx * dx) / sum.xx));
}

function logSum(a: number, b: number): number {
  const most = Math.max(a, b);
  return most === Number.NEGATIVE_INFINITY ? most : most + Math.log(Math.exp(a - most) + Math.exp(b - most));
}
