import { checkedDivision, requireDecidedRepeats } from "./partition-check.js";
import { type Cost, leastOf, lowerOf, type WeighedReading, withReading } from "./partition-robust-cost.js";

/** What is known about the readings, and what a division may look like. */
export interface RobustPartitionOptions {
  /** Known standard uncertainty of each value, or one for all [unit of value]. */
  readonly u: number | readonly number[];
  /** No reading counts for more than one that stands off so far [standard uncertainties]; default 3. */
  readonly limit?: number;
  /** Fewest readings of a segment [-]; default 2. */
  readonly minimumPoints?: number;
  /** Cost of each parameter [-]; default ln n. A segment has 2: its edge and its level. */
  readonly penalty?: number;
}

/** One level. */
export interface RobustSegment {
  /** First and last reading [index]. */
  readonly from: number;
  readonly to: number;
  /** [unit of value] */
  readonly level: number;
  /** Readings that stand off by the limit or more: they do not draw the level to themselves [index]. */
  readonly bounded: readonly number[];
}

/** Readings along a line divided into levels, none of them able to pull far. */
export interface RobustPartition {
  readonly kind: "robust partition";
  readonly segments: readonly RobustSegment[];
  /** What was made least: Σ min((residual/u)², limit²) + 2 × penalty × segments [-]. */
  readonly criterion: number;
  /** As used [-]. */
  readonly limit: number;
  readonly penalty: number;
}

/**
 * Divides readings along a line into levels so that no single reading counts for more than a limit.
 *
 * Minimises Σ min((residual/u)², limit²) + 2 × penalty × segments (the biweight loss) over all divisions and all
 * levels together: exact. Where `partition` settles on gross readings and bands in turn, and may stay in a division
 * from which no single change leads to a better one, this finds the least there is; but flat segments only.
 *
 * The least cost of the readings so far, as a function of the level μ of the last segment, consists of parabolas side
 * by side. A further reading adds its bounded loss; a new segment is a constant plus the losses of its first readings;
 * at each level the lower of the two stays (functional pruning). Few parabolas are left in practice, n² at worst.
 *
 * How to choose the limit: a stretch of m readings off by any amount is a segment of its own only where m limit²
 * exceeds the cost of two segments, 4 × penalty; below that it is passed over.
 *
 * Valid when: errors are independent, most of them normal with standard uncertainty u. No edge falls between equal
 * positions. Readings that are passed over count for minimumPoints.
 *
 * @param positions  where the readings were taken, ascending [unit of position]
 * @param values  readings [unit of value]
 * @param options.u  standard uncertainty of each value, or one for all [unit of value]
 * @param options.limit  > 0, Infinity for least squares [standard uncertainties]
 * @param options.minimumPoints  fewest readings of a segment, ≥ 1 [-]
 * @param options.penalty  cost of each parameter, > 0 [-]
 * @returns segments with levels and the readings that were bounded; criterion
 * @throws RangeError  positions that descend, unequal lengths, too few readings, an option outside its bound, u not
 * > 0, a value that is not finite, or repeats that contradict each other where nothing tells which is wrong
 * @example robustPartition([0, 1, 2, 3, 4, 5, 6], [1, 1, 90, 1, 5, 5, 5], { u: 0.1 }).segments[0].bounded // [2]
 * @source P. Fearnhead, G. Rigaill, Changepoint detection in the presence of outliers, JASA 114 (2019) 169-183
 * (biweight loss, functional pruning; from memory); fewest readings and unequal weights: own
 */
export function robustPartition(
  positions: readonly number[],
  values: readonly number[],
  options: RobustPartitionOptions,
): RobustPartition {
  const where = "robustPartition";
  const { limit = 3, minimumPoints = 2 } = options;
  const { u, penalty } = checkedDivision(where, positions, values, {
    u: options.u,
    minimumPoints,
    penalty: options.penalty,
  });
  const n = positions.length;
  if (!(limit > 0)) throw new RangeError(`${where}: limit must be greater than 0, got ${limit}`);

  // Reckoned from the first value in uncertainties, so that neither unit nor offset costs digits.
  const scale = Math.min(...u);
  const readings = values.map((v, i) => ({ y: (v - values[0]!) / scale, w: (scale / u[i]!) ** 2 }));
  const edgeAt = (t: number): boolean => t === 0 || t === n || positions[t]! > positions[t - 1]!;
  const { ends, criterion } = searchLevels(readings, edgeAt, {
    limit,
    minimumPoints,
    segmentCost: 2 * penalty,
  });

  const segments = ends.map(({ from, to, level }) => {
    const at = values[0]! + level * scale;
    const bounded: number[] = [];
    for (let i = from; i <= to; i++) {
      const { y, w } = readings[i]!;
      if (w * (y - level) ** 2 >= limit * limit) bounded.push(i);
    }
    return Object.freeze({ from, to, level: at, bounded: Object.freeze(bounded) });
  });
  requireDecidedRepeats(
    where,
    positions,
    values,
    u,
    segments.map(({ from, to, bounded }) => ({ from, to, aside: bounded.length })),
    limit < Number.POSITIVE_INFINITY,
  );
  return Object.freeze({
    kind: "robust partition",
    segments: Object.freeze(segments),
    criterion,
    limit,
    penalty,
  });
}

interface LevelRules {
  readonly limit: number;
  readonly minimumPoints: number;
  readonly segmentCost: number;
}

interface Level {
  readonly from: number;
  readonly to: number;
  readonly level: number;
}

function searchLevels(
  readings: readonly WeighedReading[],
  edgeAt: (t: number) => boolean,
  { limit, minimumPoints, segmentCost }: LevelRules,
): { readonly ends: readonly Level[]; readonly criterion: number } {
  const n = readings.length;
  let [low, high] = [0, 0];
  for (const { y } of readings) {
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  if (low === high) high = low + 1; // a level needs room
  /** Least cost of the first t readings; Infinity where no edge is allowed. */
  const best = [0];
  const last: Level[] = [];
  let cost: Cost = [];
  for (let t = 1; t <= n; t++) {
    cost = withReading(cost, readings[t - 1]!, limit);
    const start = t - minimumPoints;
    if (start >= 0 && best[start]! < Number.POSITIVE_INFINITY) {
      let opened: Cost = [{ low, high, a: 0, m: 0, c: best[start]! + segmentCost, start }];
      for (let i = start; i < t; i++) opened = withReading(opened, readings[i]!, limit);
      cost = cost.length === 0 ? opened : lowerOf(cost, opened);
    }
    const least = leastOf(cost);
    best.push(edgeAt(t) ? least.criterion : Number.POSITIVE_INFINITY);
    last.push({ from: least.start, to: t - 1, level: least.level });
  }
  const ends: Level[] = [];
  for (let t = n; t > 0; t = ends[0]!.from) ends.unshift(last[t - 1]!);
  return { ends, criterion: best[n]! };
}
