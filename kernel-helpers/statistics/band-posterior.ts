import { bestStarts, edgeAt, walks } from "./band-posterior-counts.js";
import { type Described, edgesOf, gapsOf, segmentsOf } from "./band-posterior-describe.js";
import { averagedLevels } from "./band-posterior-levels.js";
import type { LinePrior } from "./band-posterior-model.js";
import { divisionWeights, type EdgePlaces, edgePlaces } from "./band-posterior-places.js";
import { type PosteriorSettings, posteriorSettings } from "./band-posterior-settings.js";
import { backwardSteps } from "./band-posterior-steps.js";
import type { BandPosterior, BandPosteriorOptions } from "./band-posterior-types.js";
import { partition } from "./partition.js";
import { requireDecidedRepeats } from "./partition-check.js";
import { RunningSums } from "./running-sums.js";

/** Shares below e^−80, 2e-35, of what matters are left out. */
const smallest = 80;

/**
 * Probability of every division of readings along a line into bands, flat or sloping, of known noise: how many
 * bands there are, which gaps between readings hold an edge, how far each edge may lie elsewhere, and the level
 * at any position with the doubt about the edges in it. Summed over all divisions: exact, not sampled.
 *
 * P(division | readings) ∝ P(number of bands) · P(edges | number) · Π evidence(band), evidence being the
 * probability density of the readings of a band, u known, with its line and shape averaged over their prior.
 *
 * Beforehand (every part can be given):
 * - one band more is a quarter as likely as one less, up to maximumBands (bandCountPrior);
 * - given the number, so are all allowed divisions ("gaps"), or each has the product of the widths of the gaps
 *   that hold its edges as weight ("length"); allowed means: edges between different positions only, and enough
 *   readings in each band, as in `partition`;
 * - a band is flat or sloping, each as likely where both are allowed;
 * - its height at the weighted middle of its readings is normal about levelCentre, sd levelSpread; its slope
 *   normal about 0, sd slopeSpread; independent, of each other and from band to band.
 *
 * How much that matters: a spread ten times as wide makes each edge up to ten times less likely against none
 * (a sloping band up to a hundred times), so it weighs where an edge is doubtful, and hardly moves the place of
 * an edge that is there. State the spreads where the number of bands decides something.
 *
 * Gross errors: readings that `partition` puts aside (grossErrorLimit) are given no weight and listed; the doubt
 * whether they are gross is not in the probabilities.
 *
 * The intervals of edges hold for the number of bands described; look at bandCountProbability beside them.
 *
 * Valid when: errors are independent, normal, and u is their true size. Time and memory grow with the square of
 * the number of readings; at most 5000. Divisions that together have less than 1e-15 of the probability may be
 * left out.
 *
 * @param positions where the readings were taken, ascending [unit of position]
 * @param values readings [unit of value]
 * @param options.u standard uncertainty of each value, or one for all [unit of value]
 * @param options.shapes shapes a band may have [-]
 * @param options.minimumPoints fewest readings of a band, ≥ 1 [-]
 * @param options.minimumSlopingPoints fewest readings of a sloping band, ≥ 3 [-]
 * @param options.maximumBands most bands considered, 1 to 200 [-]
 * @param options.bandCountPrior how likely 1, 2, 3, … bands are beforehand, ≥ 0 [-]
 * @param options.edgePrior "gaps" or "length" [-]
 * @param options.levelCentre middle of the prior of a height [unit of value]
 * @param options.levelSpread its standard deviation, > 0 [unit of value]
 * @param options.slopeSpread standard deviation of the prior of a slope, > 0 [unit of value / unit of position]
 * @param options.grossErrorLimit how far a reading may stand off, > 0 [standard uncertainties]
 * @param options.bands number of bands whose edges are described [-]
 * @param options.coverage share each interval of an edge covers, between 0 and 1 [-]
 * @param options.at positions where the level is wanted [unit of position]
 * @returns probabilities of the number of bands and of each gap [-], edges with their positions and intervals, averaged
 * levels
 * @throws RangeError as `partition`; more than 5000 readings; an option outside its bound; or no division has
 * the numbers of bands allowed
 * @example bandPosterior([0, 1, 2, 3, 4, 5], [1, 1, 1, 5, 5, 5], { u: 0.1, shapes: ["flat"] }).bandCount // 2
 * @source P. Fearnhead, Statistics and Computing 16 (2006) 203-213 (recursions, and priors on the number
 * of bands with divisions alike; section numbers not checked). Normal line with normal prior: textbook
 */
export function bandPosterior(
  positions: readonly number[],
  values: readonly number[],
  options: BandPosteriorOptions,
): BandPosterior {
  const settings = posteriorSettings(positions, values, options);
  const gross = grossIn(positions, values, settings);
  const aside = new Set(gross);
  const index = positions.map((_, i) => i).filter((i) => !aside.has(i));
  // Reckoned from the first position and value, so that a large offset costs no digits.
  const originX = positions[index[0]!]!;
  const originY = values[index[0]!]!;
  const x = Float64Array.from(index, (i) => positions[i]! - originX);
  const y = Float64Array.from(index, (i) => values[i]! - originY);
  const w = Float64Array.from(index, (i) => 1 / settings.u[i]! ** 2);
  const n = x.length;

  const line = linePrior(x, y, w, originY, options);
  const maximumBands = Math.min(settings.maximumBands, n);
  const { shapes, minimumPoints, minimumSlopingPoints } = settings;
  const fewest = {
    flat: shapes.includes("flat") ? minimumPoints : Number.POSITIVE_INFINITY,
    sloping: shapes.includes("sloping")
      ? Math.max(minimumPoints, minimumSlopingPoints)
      : Number.POSITIVE_INFINITY,
  };
  const places = edgePlaces(
    x,
    fewest,
    settings.edgePrior,
    edgesExpected(settings.bandCountPrior, maximumBands),
  );
  const { prior, factor, imbalance } = countFactors(places, settings.bandCountPrior, maximumBands, n);
  const all = new RunningSums();
  for (let i = 0; i < n; i++) all.add(w[i]!, x[i]!, y[i]!);
  const spread = (1 + all.w * line.levelVariance) * (1 + all.xx * line.slopeVariance);
  const cut = smallest + Math.log(2) + 0.5 * Math.log(spread) + imbalance;
  const steps = backwardSteps(x, y, w, places, line, cut);
  const table = walks(steps, maximumBands);

  const ways = Array.from({ length: maximumBands }, (_, k) => table.reach[n * table.width + k + 1]!);
  const weighed = ways.map((way, k) => way * factor[k + 1]!);
  const total = weighed.reduce((a, b) => a + b, 0);
  const normed = factor.map((f) => f / total);
  const bandCountProbability = weighed.map((v) => v / total);
  const bandCount = 1 + bandCountProbability.indexOf(Math.max(...bandCountProbability));
  const bands = options.bands ?? bandCount;
  const starts = (ways[bands - 1] ?? 0) > 0 ? bestStarts(steps, bands) : [];
  const probability = Float64Array.from({ length: n + 1 }, (_, s) =>
    s > 0 && s < n && places.weight[s]! > 0 ? Math.min(1, edgeAt(table, s, normed)) : 0,
  );
  const given: Described = { positions, index, x, y, w, places, line, probability };
  const at = options.at ?? [];
  const levels = averagedLevels(
    withinReadings(at, x, originX),
    x,
    y,
    w,
    places,
    line,
    steps.lastBands,
    table,
    normed,
  );
  return Object.freeze<BandPosterior>({
    kind: "band posterior",
    bandCountProbability: Object.freeze(bandCountProbability),
    bandCount,
    gaps: Object.freeze(gapsOf(given)),
    bands,
    edges: Object.freeze(edgesOf(given, starts, table, settings.coverage)),
    segments: Object.freeze(segmentsOf(given, starts)),
    levels: Object.freeze(
      levels.map((level, i) => Object.freeze({ ...level, position: at[i]!, value: level.value + originY })),
    ),
    gross: Object.freeze(gross),
    logEvidence:
      steps.logTotal + Math.log(total) + w.reduce((sum, wi) => sum + 0.5 * Math.log(wi / (2 * Math.PI)), 0),
    prior: Object.freeze({
      levelCentre: line.levelCentre + originY,
      levelSpread: Math.sqrt(line.levelVariance),
      slopeSpread: Math.sqrt(line.slopeVariance),
      edgePrior: settings.edgePrior,
      bandCount: Object.freeze(prior),
    }),
  });
}

/** The readings `partition` puts aside under the same rules. */
function grossIn(
  positions: readonly number[],
  values: readonly number[],
  { u, shapes, minimumPoints, minimumSlopingPoints, grossErrorLimit }: PosteriorSettings,
): number[] {
  if (grossErrorLimit === Number.POSITIVE_INFINITY) {
    const all = { from: 0, to: positions.length - 1, aside: 0 };
    requireDecidedRepeats("bandPosterior", positions, values, u, [all], false);
    return [];
  }
  const rules = { u, shapes, minimumPoints, minimumSlopingPoints, grossErrorLimit };
  const { segments, gross } = partition(positions, values, { ...rules, contradictions: "keep" });
  const outvoted = segments.map(({ from, to, points }) => ({ from, to, aside: to - from + 1 - points }));
  requireDecidedRepeats("bandPosterior", positions, values, u, outvoted, true);
  return gross.map(({ index }) => index);
}

/** Total weight of the edges that keeps the weights of few and of many bands alike, so that none is lost. */
function edgesExpected(bandCountPrior: readonly number[], maximumBands: number): number {
  const possible = bandCountPrior.flatMap((p, k) => (p > 0 ? [k] : []));
  const [first, last] = [possible[0]!, possible[possible.length - 1]!];
  const ratio = last > first ? (bandCountPrior[last]! / bandCountPrior[first]!) ** (1 / (last - first)) : 1;
  return (ratio * Math.max(3, maximumBands)) / 3;
}

/** Positions where a level is wanted, reckoned from the first reading that counts. */
function withinReadings(at: readonly number[], x: Float64Array, originX: number): number[] {
  const last = x[x.length - 1]!;
  return at.map((position) => {
    const from = position - originX;
    if (from >= 0 && from <= last) return from;
    throw new RangeError(
      `bandPosterior: at must lie within the readings that count, ${originX} to ${originX + last}, got ${position}`,
    );
  });
}

/** The prior of a band's line, heights reckoned from the first value. */
function linePrior(
  x: Float64Array,
  y: Float64Array,
  w: Float64Array,
  originY: number,
  options: BandPosteriorOptions,
): LinePrior {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const v of y) {
    low = Math.min(low, v);
    high = Math.max(high, v);
  }
  const medianU = 1 / Math.sqrt([...w].sort((a, b) => a - b)[Math.floor(w.length / 2)]!);
  const levelSpread = options.levelSpread ?? Math.max(high - low, 10 * medianU);
  const length = x[x.length - 1]! - x[0]!;
  const slopeSpread = options.slopeSpread ?? (length > 0 ? (4 * levelSpread) / length : 1);
  return {
    levelCentre: options.levelCentre === undefined ? (low + high) / 2 : options.levelCentre - originY,
    levelVariance: levelSpread ** 2,
    slopeVariance: slopeSpread ** 2,
  };
}

/**
 * For each number of bands its prior and the factor that turns the weight of its divisions into that prior; and
 * the logarithm of how much these factors differ.
 */
function countFactors(
  places: EdgePlaces,
  given: readonly number[],
  maximumBands: number,
  n: number,
): { readonly prior: number[]; readonly factor: Float64Array; readonly imbalance: number } {
  const weights = divisionWeights(places, maximumBands);
  const wanted = Array.from({ length: maximumBands }, (_, k) => (weights[k + 1]! > 0 ? (given[k] ?? 0) : 0));
  const total = wanted.reduce((a, b) => a + b, 0);
  if (total === 0)
    throw new RangeError(
      `bandPosterior: positions must allow a division into a number of bands that bandCountPrior and maximumBands allow, got ${n} readings that do not`,
    );
  const prior = wanted.map((v) => v / total);
  const factor = new Float64Array(maximumBands + 1);
  prior.forEach((p, k) => {
    if (p > 0) factor[k + 1] = p / weights[k + 1]!;
  });
  const used = [...factor].filter((f) => f > 0);
  return { prior, factor, imbalance: Math.log(Math.max(...used) / Math.min(...used)) };
}
