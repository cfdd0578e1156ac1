import { described, edgesOf, gapsOf, mostProbable, segmentsOf } from "./band-posterior-describe.js";
import { type WeighedSet, weighGross } from "./band-posterior-gross.js";
import { averagedLevels } from "./band-posterior-levels.js";
import { posteriorSettings } from "./band-posterior-settings.js";
import { firstGross } from "./band-posterior-start.js";
import type { WeightedReadings } from "./band-posterior-steps.js";
import type { BandPosterior, BandPosteriorOptions, DoubtfulReading } from "./band-posterior-types.js";
import type { LinePrior } from "./band-sums.js";

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
 * Rows: readings of several rows (angles round a shaft) share their edges. In each band the line of each row stands off
 * from the band's by a normal amount, sd rowSpread, its slope by sd rowSpread · slopeSpread/levelSpread. So an edge that
 * one row shows plainly tells which reading of another row is wrong.
 *
 * Gross errors: each reading is gross with probability grossProbability, and then lies anywhere in a range of width
 * grossRange alike. All probabilities are sums over which readings are gross, so that a reading that may be gross widens
 * the intervals by its share. Of the 2ⁿ choices those that matter are weighed, each exactly: from readings that
 * `partition` would put aside, one reading more or less at a time, wherever that promises a thousandth of the greatest
 * weight, beyond 100 readings 1/200 (grossLeft tells what stays out). Given a choice, the divisions are those of the readings that count; a gap
 * that holds a gross reading is shared by width.
 * How much the range matters: a reading is as likely gross as not where it stands off by √(2 ln(R/(ε u √2π))) u, 4.2 u
 * for a range of 200 u, 4.8 u for one of 2000 u.
 *
 * The intervals of edges hold for the number of bands described; look at bandCountProbability beside them.
 *
 * Valid when: errors are independent, those of sound readings normal, and u is their true size. Time and memory grow with
 * the square of the number of readings, times the number of choices weighed (2 to 10 as a rule, 80 at most, 20 for 500 readings, 4 from
 * 1100 on); at most 5000. Divisions that together have less than 1e-15 of the probability may be
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
 * @param options.minimumPositions fewest different positions of a band, ≥ 1 [-]
 * @param options.rows the row of each reading, by any name [-]
 * @param options.rowSpread how far rows stand off from a band's line, standard deviation > 0 [unit of value]
 * @param options.grossProbability that a reading is gross, beforehand, from 0 to less than 0.5 [-]
 * @param options.grossRange where gross readings lie, width > 0 [unit of value]
 * @param options.suspects readings to begin the search with [index]
 * @param options.bands number of bands whose edges are described [-]
 * @param options.coverage share each interval of an edge covers, between 0 and 1 [-]
 * @param options.at positions where the level is wanted [unit of position]
 * @returns probabilities of the number of bands and of each gap [-], edges with their positions and intervals, averaged
 * levels
 * @throws RangeError as `partition`; more than 5000 readings; an option outside its bound; or no division has
 * the numbers of bands allowed
 * @example bandPosterior([0, 1, 2, 3, 4, 5], [1, 1, 1, 5, 5, 5], { u: 0.1, shapes: ["flat"] }).bandCount // 2
 * @source P. Fearnhead, Statistics and Computing 16 (2006) 203-213 (recursions, and priors on the number
 * of bands with divisions alike; section numbers not checked). Normal line with normal prior: textbook. Sound readings and
 * gross ones as a mixture: G. E. P. Box, G. C. Tiao, Biometrika 55 (1968) 119-129 (from memory)
 */
export function bandPosterior(
  positions: readonly number[],
  values: readonly number[],
  options: BandPosteriorOptions,
): BandPosterior {
  const settings = posteriorSettings(positions, values, options);
  const first = [...new Set(options.suspects ?? firstGross(positions, values, settings))].sort(
    (a, b) => a - b,
  );
  const aside = new Set(first);
  const start = positions.map((_, i) => i).filter((i) => !aside.has(i));
  // Reckoned from the first position and a sound value, so that a large offset costs no digits.
  const originX = positions[0]!;
  const originY = values[start[0] ?? 0]!;
  const readings: WeightedReadings = {
    x: Float64Array.from(positions, (v) => v - originX),
    y: Float64Array.from(values, (v) => v - originY),
    w: Float64Array.from(settings.u, (v) => 1 / v ** 2),
    row: Int32Array.from(settings.rows),
    rowCount: settings.rowCount,
  };
  const line = linePrior(readings, start, originY, options);
  const grossRange = options.grossRange ?? Math.max(2 * rangeOf(readings.y), 200 * median(settings.u));
  const maximumBands = Math.min(settings.maximumBands, positions.length);
  const weighed = weighGross({ readings, line, settings, maximumBands, grossRange }, first);
  if (weighed === null)
    throw new RangeError(
      `bandPosterior: positions must allow a division into a number of bands that bandCountPrior and maximumBands allow, got ${positions.length} readings that do not`,
    );
  const { sets } = weighed;
  const mixed = (of: (set: WeighedSet) => number): number =>
    sets.reduce((sum, set) => sum + set.probability * of(set), 0);
  const bandCountProbability = Array.from({ length: maximumBands }, (_, k) =>
    mixed((set) => set.weighed.bandCountProbability[k]!),
  );
  const bandCount = 1 + bandCountProbability.indexOf(Math.max(...bandCountProbability));
  const bands = options.bands ?? bandCount;
  const given = described(positions, sets, line);
  const division = bands <= maximumBands ? mostProbable(given, bands) : undefined;
  const at = options.at ?? [];
  const levels = averagedLevels(withinReadings(at, given.x, originX), sets, line);
  const best = sets[0]!.weighed;
  return Object.freeze<BandPosterior>({
    kind: "band posterior",
    bandCountProbability: Object.freeze(bandCountProbability),
    bandCount,
    gaps: Object.freeze(gapsOf(given)),
    bands,
    edges: Object.freeze(division === undefined ? [] : edgesOf(given, division, settings.coverage)),
    segments: Object.freeze(division === undefined ? [] : segmentsOf(given, division)),
    levels: Object.freeze(
      levels.map((level, i) => Object.freeze({ ...level, position: at[i]!, value: level.value + originY })),
    ),
    gross: Object.freeze([...best.gross]),
    doubtful: Object.freeze(doubtfulReadings(sets)),
    grossSets: Object.freeze(
      sets.map(({ weighed: { gross }, probability }) =>
        Object.freeze({ gross: Object.freeze([...gross]), probability }),
      ),
    ),
    grossLeft: weighed.left,
    logEvidence: best.logWeight - Math.log(sets[0]!.probability),
    prior: Object.freeze({
      levelCentre: line.levelCentre + originY,
      levelSpread: Math.sqrt(line.levelVariance),
      slopeSpread: Math.sqrt(line.slopeVariance),
      rowSpread: Math.sqrt(line.rowVariance),
      grossProbability: settings.grossProbability,
      grossRange,
      edgePrior: settings.edgePrior,
      bandCount: Object.freeze([...best.prior]),
    }),
  });
}

/** Readings less probably gross than this are not named. */
const leastNamed = 0.01;

function doubtfulReadings(sets: readonly WeighedSet[]): DoubtfulReading[] {
  const sum = new Map<number, number>();
  for (const { weighed, probability } of sets)
    for (const i of weighed.gross) sum.set(i, (sum.get(i) ?? 0) + probability);
  return [...sum]
    .filter(([, probability]) => probability >= leastNamed)
    .sort(([i], [j]) => i - j)
    .map(([index, probability]) => Object.freeze({ index, probability: Math.min(1, probability) }));
}

/** Positions where a level is wanted, reckoned from the first reading. */
function withinReadings(at: readonly number[], x: Float64Array, originX: number): number[] {
  const [first, last] = [x[0]!, x[x.length - 1]!];
  return at.map((position) => {
    const from = position - originX;
    if (from >= first && from <= last) return from;
    throw new RangeError(
      `bandPosterior: at must lie within the readings that count, ${originX + first} to ${originX + last}, got ${position}`,
    );
  });
}

/** The prior of a band's line, heights reckoned from the origin of the values. */
function linePrior(
  { x, y, w, rowCount }: WeightedReadings,
  start: readonly number[],
  originY: number,
  options: BandPosteriorOptions,
): LinePrior {
  const counting = start.length > 0 ? start : Array.from(y, (_, i) => i);
  const heights = counting.map((i) => y[i]!);
  const medianU = 1 / Math.sqrt(median(counting.map((i) => w[i]!)));
  const levelSpread = options.levelSpread ?? Math.max(rangeOf(heights), 10 * medianU);
  const length = x[counting[counting.length - 1]!]! - x[counting[0]!]!;
  const slopeSpread = options.slopeSpread ?? (length > 0 ? (4 * levelSpread) / length : 1);
  const rowSpread = rowCount === 1 ? 0 : (options.rowSpread ?? levelSpread / 2);
  return {
    levelCentre:
      options.levelCentre === undefined
        ? (least(heights) + greatest(heights)) / 2
        : options.levelCentre - originY,
    levelVariance: levelSpread ** 2,
    slopeVariance: slopeSpread ** 2,
    rowVariance: rowSpread ** 2,
    rowSlopeVariance: ((rowSpread / levelSpread) * slopeSpread) ** 2,
  };
}

function least(values: ArrayLike<number>): number {
  let found = Number.POSITIVE_INFINITY;
  for (let i = 0; i < values.length; i++) found = Math.min(found, values[i]!);
  return found;
}

function greatest(values: ArrayLike<number>): number {
  let found = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) found = Math.max(found, values[i]!);
  return found;
}

function rangeOf(values: ArrayLike<number>): number {
  return greatest(values) - least(values);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
