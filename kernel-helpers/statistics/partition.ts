import {
  coverAll,
  keptIndices,
  membersOf,
  type Readings,
  screenGross,
  settleGross,
  strayReadings,
} from "./gross-errors.js";
import { checkedDivision, requireDecidedRepeats } from "./partition-check.js";
import {
  fewestPositions,
  type SearchRules,
  type SegmentShape,
  type Stretch,
  searchPartition,
} from "./partition-search.js";
import { fitSegment, residualInU, type SegmentLine } from "./segment.js";

/** What is known about the readings, and what a partition may look like. */
export interface PartitionOptions {
  /** Known standard uncertainty of each value, or one for all [unit of value]. */
  readonly u: number | readonly number[];
  /** Shapes a segment may have. Default both. */
  readonly shapes?: readonly SegmentShape[];
  /** Fewest readings of a segment [-]; default 2. */
  readonly minimumPoints?: number;
  /**
   * Fewest readings of a sloping segment [-], at least 3 and at 3 different positions; default 4 (3 where
   * there are only 3 positions).
   */
  readonly minimumSlopingPoints?: number;
  /**
   * Cost of each parameter [-]; default ln n. A segment has 1 for its edge, and 1 (flat) or 2 (sloping) for
   * its line.
   */
  readonly penalty?: number;
  /**
   * A reading that stands off farther is put aside [standard uncertainties]; default 6, Infinity to put
   * none aside.
   */
  readonly grossErrorLimit?: number;
  /** Whether repeats that contradict each other undecided are refused (default) or kept, for a caller that judges them. */
  readonly contradictions?: "refuse" | "keep";
}

/** One segment of a partition. */
export interface PartitionSegment extends SegmentLine {
  /** First reading of the segment, gross ones included [index]. */
  readonly from: number;
  /** Last reading of the segment, gross ones included [index]. */
  readonly to: number;
  /** Height of its line at position 0 [unit of value]. */
  readonly intercept: number;
  /** Readings that count, gross ones not included [-]. */
  readonly points: number;
  /** Σ (residual/u)² of the readings that count [-]. */
  readonly chiSquare: number;
  /** points less 1 (flat) or 2 (sloping) [-]. */
  readonly degreesOfFreedom: number;
}

/** Where one segment ends and the next begins. */
export interface PartitionEdge {
  /** Last reading that counts before the edge, and the first behind it [index]. */
  readonly after: number;
  readonly before: number;
  /** Their positions: the edge lies somewhere between them [unit of position]. */
  readonly low: number;
  readonly high: number;
}

/**
 * A reading put aside: it stands off from its segment farther than the limit, and nothing beside it bears
 * it out.
 */
export interface PartitionGrossReading {
  readonly index: number;
  /** Reading less the line of its segment, made without it [unit of value]. */
  readonly residual: number;
  /** The same in standard uncertainties of the reading [-]. */
  readonly residualInU: number;
}

/** Readings along a line divided into segments. */
export interface Partition {
  readonly kind: "partition";
  readonly segments: readonly PartitionSegment[];
  readonly edges: readonly PartitionEdge[];
  /** Readings put aside, by index. */
  readonly gross: readonly PartitionGrossReading[];
  /** Reading less the line of its segment, for all readings in their order [unit of value]. */
  readonly residuals: readonly number[];
  /** Σ (residual/u)² of the readings that count [-]. */
  readonly totalChiSquare: number;
  /** Sum of those of the segments [-]. */
  readonly degreesOfFreedom: number;
  /** What was made least: totalChiSquare + penalty × parameters + limit² × gross readings [-]. */
  readonly criterion: number;
  /**
   * Scatter seen over noise stated, √(totalChiSquare / degreesOfFreedom) [-]; null with no degree of
   * freedom.
   */
  readonly noiseRatio: number | null;
  /** Cost of each parameter as used [-]. */
  readonly penalty: number;
  /** Limit as used [standard uncertainties]. */
  readonly grossErrorLimit: number;
  /** False when the gross readings were still changing after the last round allowed. */
  readonly settled: boolean;
}

const mostRounds = 30;

/**
 * Divides readings along a line into segments, each flat or straight sloping, from readings of known noise.
 *
 * Minimises Σ (residual/u)² + penalty × parameters, each segment having 1 parameter for its edge and 1 (flat)
 * or 2 (sloping) for its line. The default penalty ln n makes this the Bayesian information criterion for
 * known noise. Found by optimal partitioning over all divisions: exact, not a search that may miss.
 *
 * Gross errors: a reading off by more than grossErrorLimit from its segment, as the other readings draw it,
 * is given no weight and listed. Precisely: with limit² charged for each reading put aside, a first look
 * (screenGross) chooses what to put aside; then in turn the partition is made least for the readings kept,
 * and readings are put aside or taken in where that lowers the total, until neither lowers it. Hence on
 * return (settled)
 * - the partition is the exact least one for the readings that count;
 * - each gross reading stands off from its segment by more than the limit, and no segment that has readings
 *   to spare keeps one that does; nor is there a small segment that would vanish at a gain by putting one
 *   reading aside;
 * - it is not promised that no other choice of gross readings has a lower total.
 * Two wrong readings side by side that are like each other pass for a narrow band, and are shown as one.
 * Near an edge two accounts of one reading can be almost equally likely (gross, or part of the band next
 * door); the one of lower total is taken.
 * Why 6: honest normal noise exceeds it twice in 1e9 readings; and two like readings side by side cost less
 * as a band of their own than as two gross errors (6 ln n < 2·6²) up to 160 000 readings, so a true narrow
 * band is kept.
 *
 * Why 4 readings for a slope: a line drawn through one gross reading and two good ones beside it hardly
 * misses them.
 *
 * Repeats of one position that contradict each other (`repeatsTest`) are decided by their neighbours as any gross
 * error is; they are refused where nothing decides: with no limit, or where in the segment of the worst two none or as many are put
 * aside as count.
 *
 * Valid when: errors are independent and u is their true size; look at noiseRatio. If u is stated too small,
 * noise is taken for edges; too large, edges are lost. No edge falls between equal positions.
 *
 * @param positions where the readings were taken, ascending [unit of position]
 * @param values readings [unit of value]
 * @param options.u standard uncertainty of each value, or one for all [unit of value]
 * @param options.shapes shapes a segment may have [-]
 * @param options.minimumPoints fewest readings of a segment, ≥ 1 [-]
 * @param options.minimumSlopingPoints fewest readings of a sloping segment, ≥ 3 [-]
 * @param options.penalty cost of each parameter, > 0 [-]
 * @param options.grossErrorLimit how far a reading may stand off, > 0 [standard uncertainties]
 * @param options.contradictions whether repeats that contradict each other undecided are refused or kept
 * @returns segments with lines and uncertainties, edges, gross readings, chi-square and noise ratio
 * @throws RangeError positions that descend, unequal lengths, too few readings or positions for any allowed
 * segment, an option outside its bound, u not > 0, a value that is not finite, or repeats that contradict each other
 * where nothing tells which is wrong
 * @example partition([0, 1, 2, 3, 4, 5], [1, 1, 1, 5, 5, 5], { u: 0.1 }).edges[0].high // 3
 * @source criterion: G. Schwarz, Annals of Statistics 6 (1978) 461-464; Y.-C. Yao, Statistics & Probability
 * Letters 6 (1988) 181-189. Search: B. Jackson et al., IEEE Signal Processing Letters 12 (2005) 105-108; R.
 * Killick, P. Fearnhead, I. A. Eckley, JASA 107 (2012) 1590-1598. Gross errors as readings with a shift of
 * their own at a fixed price: Y. She, A. B. Owen, JASA 106 (2011) 626-639 (from memory)
 */
export function partition(
  positions: readonly number[],
  values: readonly number[],
  options: PartitionOptions,
): Partition {
  const where = "partition";
  const { shapes = ["flat", "sloping"], minimumPoints = 2, grossErrorLimit = 6 } = options;
  const { u, penalty } = checkedDivision(where, positions, values, {
    u: options.u,
    minimumPoints,
    penalty: options.penalty,
  });
  const n = positions.length;
  if (!(grossErrorLimit > 0))
    throw new RangeError(`${where}: grossErrorLimit must be greater than 0, got ${grossErrorLimit}`);
  if (shapes.length === 0) throw new RangeError(`${where}: shapes needs at least one shape, got none`);
  for (const shape of shapes) {
    if (shape !== "flat" && shape !== "sloping")
      throw new RangeError(`${where}: shapes may hold "flat" and "sloping", got ${JSON.stringify(shape)}`);
  }
  const minimumSlopingPoints =
    options.minimumSlopingPoints ?? (morePositionsThan(positions, fewestPositions) ? 4 : fewestPositions);
  if (!Number.isInteger(minimumSlopingPoints) || minimumSlopingPoints < fewestPositions)
    throw new RangeError(
      `${where}: minimumSlopingPoints must be a whole number of at least ${fewestPositions}, got ${minimumSlopingPoints}`,
    );
  const rules: SearchRules = {
    fewestFlat: shapes.includes("flat") ? minimumPoints : Number.POSITIVE_INFINITY,
    fewestSloping: shapes.includes("sloping")
      ? Math.max(minimumPoints, minimumSlopingPoints)
      : Number.POSITIVE_INFINITY,
    flatCost: 2 * penalty,
    slopingCost: 3 * penalty,
  };
  // Reckoned from the first position and value, so that a large offset costs no digits.
  const readings: Readings = {
    x: Float64Array.from(positions),
    y: Float64Array.from(values),
    w: Float64Array.from(u),
  };
  for (let i = 0; i < n; i++) {
    readings.x[i]! -= positions[0]!;
    readings.y[i]! -= values[0]!;
    readings.w[i] = 1 / (u[i]! * u[i]!);
  }

  const found = leastPartition(readings, rules, grossErrorLimit);
  if (found === null)
    throw new RangeError(
      `${where}: positions must allow at least one segment (${shapes.join(" or ")}, ${minimumPoints} readings or more; sloping: ${minimumSlopingPoints} or more, at 3 different positions), got ${n} readings that do not`,
    );
  const described = describePartition(positions, values, u, readings, found, penalty, grossErrorLimit);
  if (options.contradictions === "keep") return described;
  requireDecidedRepeats(
    where,
    positions,
    values,
    u,
    described.segments.map(({ from, to, points }) => ({ from, to, aside: to - from + 1 - points })),
    grossErrorLimit < Number.POSITIVE_INFINITY,
  );
  return described;
}

/** Whether ascending positions hold more than so many different ones. */
function morePositionsThan(positions: readonly number[], count: number): boolean {
  let different = 1;
  for (let i = 1; i < positions.length && different <= count; i++)
    if (positions[i] !== positions[i - 1]) different += 1;
  return different > count;
}

/** A choice of gross readings with the least partition of the others. */
interface State {
  readonly gross: Uint8Array;
  /** Stretches that cover all readings, gross ones included. */
  readonly segments: readonly Stretch[];
  readonly criterion: number;
  readonly settled: boolean;
}

/** Alternates between the exact partition of the readings kept and the choice of the readings to keep. */
function leastPartition(readings: Readings, rules: SearchRules, limit: number): State | null {
  const n = readings.x.length;
  const none = new Uint8Array(n);
  if (limit === Number.POSITIVE_INFINITY) return partitionWithout(readings, none, rules, limit);
  const screened = screenGross(readings, limit);
  // Where a quarter and more stand out, u is not the noise of these readings, and the first look says nothing.
  const start = n - keptIndices(screened).length > n / 4 ? none : screened;
  let state =
    partitionWithout(readings, start, rules, limit) ?? partitionWithout(readings, none, rules, limit);
  if (state === null) return null;
  for (let round = 0; round < mostRounds; round++) {
    const better = improved(readings, state, rules, limit);
    if (better === null) return state;
    state = better;
  }
  return { ...state, settled: false };
}

/**
 * A state of lower criterion reached by another choice of gross readings, or null where there is none in
 * reach.
 */
function improved(readings: Readings, state: State, rules: SearchRules, limit: number): State | null {
  const fewest = { flat: rules.fewestFlat, sloping: rules.fewestSloping };
  const settledChoice = settleGross(readings, state.segments, state.gross, limit, fewest);
  const strays = strayReadings(readings, state.segments, state.gross, limit, rules);
  const strayChoice = state.gross.slice();
  for (const i of strays) strayChoice[i] = 1;
  for (const choice of [settledChoice, strayChoice]) {
    if (choice.every((g, i) => g === state.gross[i])) continue;
    const next = partitionWithout(readings, choice, rules, limit);
    if (next !== null && next.criterion < state.criterion - 1e-9 * (1 + state.criterion)) return next;
  }
  return null;
}

/** The exact least partition with the given readings put aside; null where the others allow none. */
function partitionWithout(
  readings: Readings,
  gross: Uint8Array,
  rules: SearchRules,
  limit: number,
): State | null {
  const kept = keptIndices(gross);
  const pick = (list: Float64Array): Float64Array => {
    if (kept.length === list.length) return list;
    const picked = new Float64Array(kept.length);
    for (let k = 0; k < kept.length; k++) picked[k] = list[kept[k]!]!;
    return picked;
  };
  const result = searchPartition(pick(readings.x), pick(readings.y), pick(readings.w), rules);
  if (result === null) return null;
  const grossCount = gross.length - kept.length;
  return {
    gross,
    segments: coverAll(readings, kept, result.stretches),
    criterion: result.criterion + (grossCount === 0 ? 0 : grossCount * limit * limit),
    settled: true,
  };
}

/** Fits every segment anew from its readings and writes the result in the units given. */
function describePartition(
  positions: readonly number[],
  values: readonly number[],
  u: readonly number[],
  readings: Readings,
  state: State,
  penalty: number,
  grossErrorLimit: number,
): Partition {
  const { x, y, w } = readings;
  const residuals = new Array<number>(x.length).fill(0);
  const gross: PartitionGrossReading[] = [];
  const segments: PartitionSegment[] = [];
  const edges: PartitionEdge[] = [];
  let lastMember = -1;
  for (const stretch of state.segments) {
    const members = membersOf(stretch, state.gross);
    const line = fitSegment(x, y, w, members, stretch.shape);
    let chiSquare = 0;
    for (let i = stretch.from; i <= stretch.to; i++) {
      const inU = residualInU(line, x[i]!, y[i]!, w[i]!);
      residuals[i] = inU * u[i]!;
      if (state.gross[i] === 1)
        gross.push(Object.freeze({ index: i, residual: residuals[i]!, residualInU: inU }));
      else chiSquare += inU * inU;
    }
    const centre = line.centre + positions[0]!;
    const level = line.level + values[0]!;
    segments.push(
      Object.freeze({
        ...line,
        from: stretch.from,
        to: stretch.to,
        centre,
        level,
        intercept: level - line.slope * centre,
        points: members.length,
        chiSquare,
        degreesOfFreedom: members.length - (stretch.shape === "flat" ? 1 : 2),
      }),
    );
    if (lastMember >= 0) {
      const first = members[0]!;
      edges.push(
        Object.freeze({
          after: lastMember,
          before: first,
          low: positions[lastMember]!,
          high: positions[first]!,
        }),
      );
    }
    lastMember = members[members.length - 1]!;
  }
  const totalChiSquare = segments.reduce((sum, s) => sum + s.chiSquare, 0);
  const degreesOfFreedom = segments.reduce((sum, s) => sum + s.degreesOfFreedom, 0);
  const parameters = segments.reduce((sum, s) => sum + (s.shape === "flat" ? 2 : 3), 0);
  return Object.freeze({
    kind: "partition",
    segments: Object.freeze(segments),
    edges: Object.freeze(edges),
    gross: Object.freeze(gross),
    residuals: Object.freeze(residuals),
    totalChiSquare,
    degreesOfFreedom,
    criterion:
      totalChiSquare + penalty * parameters + (gross.length === 0 ? 0 : gross.length * grossErrorLimit ** 2),
    noiseRatio: degreesOfFreedom > 0 ? Math.sqrt(totalChiSquare / degreesOfFreedom) : null,
    penalty,
    grossErrorLimit,
    settled: state.settled,
  });
}
