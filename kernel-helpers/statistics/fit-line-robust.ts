import {
  requireFinite,
  requireFiniteList,
  requireProbability,
  requireSameLength,
  requireSpread,
  uncertaintyList,
} from "./check.js";
import { type FitLineOptions, ordinaryLine } from "./fit-line.js";
import type { LineFit, Point } from "./line-fit.js";
import { chanceOf, influenceOf } from "./line-influence.js";
import { predictLine } from "./predict-line.js";
import { requireAgreeingRepeats } from "./refusals.js";

/** What is known about the readings, and when one is called an outlier. */
export interface RobustLineOptions {
  /** Known standard uncertainty of each y, or one for all [unit of y]; without it, judged by the scatter. */
  readonly u?: number | readonly number[];
  /** A point the line must pass, taken as exact. */
  readonly through?: Point;
  /** True when only the ratios of u are known. Default false. */
  readonly scaleByScatter?: boolean;
  /** Chance that any of all readings is named where all are honest [-]; default 0.01. */
  readonly falseAlarm?: number;
}

/** A reading the others contradict. */
export interface LineOutlier {
  readonly index: number;
  /** Reading less the line of the others [unit of y]. */
  readonly residual: number;
  /** The same in standard uncertainties of that difference [-]. */
  readonly deletionResidual: number;
  /** Chance that the worst of so many honest readings stands off at least so far [-]. */
  readonly chance: number;
}

/** A line through the readings that agree, and those that do not. */
export interface RobustLine {
  readonly kind: "robust line";
  /** The line of the readings that count, as `fitLine` gives it; its residuals are theirs. */
  readonly fit: LineFit;
  /** Readings that count [index]. */
  readonly kept: readonly number[];
  /** Readings given no weight. */
  readonly outliers: readonly LineOutlier[];
  /** False when readings were still changing sides after the last round allowed. */
  readonly settled: boolean;
}

const where = "fitLineRobust";
const mostReadings = 2000;
/** Median of |normal| is 1/1.4826. */
const toSigma = 1.4826;
const firstLimit = 2.5;

/**
 * Straight line that a few wrong readings do not bend, and names them.
 *
 * 1. Start: slope = median over the points of the median slope to all others (Siegel's repeated median), height by
 *    the median; scale 1.4826 · median |residual| (1 + 5/(n−2)), or u where known. Up to half the readings may be
 *    wrong. Kept are those within 2.5 of it. Through a point: slope = median of the slopes from it, 5/(n−1).
 * 2. `fitLine` of the readings kept; each is compared with the line of the others (deletion residual, as
 *    `lineInfluence`). It is an outlier when honest readings stand off so far with chance below falseAlarm/n. The
 *    nearest reading put aside that is none is taken in, else the farthest kept that is one is put aside; until
 *    neither is to be done.
 *
 * So the line returned is the ordinary one of the readings that agree, with its uncertainty; nothing is weighted
 * down by halves, and whoever reads it can look each outlier up. Its uncertainty does not know that some were left
 * out by their looks: with honest readings that is rare (falseAlarm).
 *
 * Without u, readings of which the agreeing half lies on one line exactly are refused: any other, off by one step of
 * rounding, would be named. So are repeats (`repeatsTest`) of which nothing tells which is wrong.
 *
 * Valid when: errors in y alone, more than half the readings are sound, at least 5 and at most 2000.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param options.u standard uncertainty of each y, or one for all, > 0 [unit of y]
 * @param options.through point the line must pass [units of x and y]
 * @param options.scaleByScatter whether u is known up to a common factor only [-]
 * @param options.falseAlarm chance of naming any honest reading, between 0 and 1 [-]
 * @returns the line of the readings that agree, and the outliers by index
 * @throws RangeError fewer than 5 or more than 2000 readings, unequal lengths, all x alike (or all at through.x), u not > 0, falseAlarm not
 * between 0 and 1, a value that is not finite, no scatter where u is to be learnt, or repeats that stay contradictory
 * @example fitLineRobust([0, 1, 2, 3, 4, 5], [0, 1.1, 2, 30, 4.1, 5]).outliers.map(({ index }) => index) // [3]
 * @source start: A. F. Siegel, Biometrika 69 (1982) 242-244; scale: P. J. Rousseeuw, A. M. Leroy, Robust Regression
 * and Outlier Detection, 1987, chapter 5 (from memory); naming by falseAlarm/n: Bonferroni
 */
export function fitLineRobust(
  x: readonly number[],
  y: readonly number[],
  options: RobustLineOptions = {},
): RobustLine {
  const { falseAlarm = 0.01, scaleByScatter = false, through } = options;
  requireFiniteList(where, "x", x, 5);
  requireFiniteList(where, "y", y, 5);
  requireSameLength(where, "x", x, "y", y);
  if (through === undefined) requireSpread(where, x);
  else {
    requireFinite(where, "through.x", through.x);
    requireFinite(where, "through.y", through.y);
    if (x.every((xi) => xi === through.x))
      throw new RangeError(`${where}: some x must differ from through.x, got ${through.x} for all of them`);
  }
  requireProbability(where, "falseAlarm", falseAlarm);
  const n = x.length;
  if (n > mostReadings)
    throw new RangeError(`${where}: at most ${mostReadings} readings can be compared pair by pair, got ${n}`);
  const u = options.u === undefined ? undefined : uncertaintyList(where, "u", options.u, n);
  const known = u !== undefined && !scaleByScatter;

  const side: Sides = { x, y, u, through, scaleByScatter, known };
  let kept = firstKept(side);
  const chanceEach = falseAlarm / n;
  let settled = false;
  for (let round = 0; round < 4 * n && !settled; round++) {
    const judged = judge(side, kept);
    const back = judged
      .filter(({ inside, chance }) => !inside && chance >= chanceEach)
      .sort((a, b) => b.chance - a.chance)[0];
    const out = judged
      .filter(({ inside, chance }) => inside && chance < chanceEach)
      .sort((a, b) => Math.abs(b.deletionResidual) - Math.abs(a.deletionResidual))[0];
    if (back !== undefined) kept = [...kept, back.index].sort((a, b) => a - b);
    else if (out !== undefined) kept = kept.filter((i) => i !== out.index);
    else settled = true;
  }
  const outliers = judge(side, kept)
    .filter(({ inside }) => !inside)
    .map(({ index, residual, deletionResidual, chance }) =>
      Object.freeze({ index, residual, deletionResidual, chance: Math.min(1, n * chance) }),
    );
  // As many put aside as kept: neither outvotes the other.
  if (u !== undefined && !scaleByScatter && 2 * outliers.length >= n)
    requireAgreeingRepeats(
      where,
      x,
      y,
      u.map((ui) => ui ** -2),
    );
  return Object.freeze({
    kind: "robust line",
    fit: ordinaryLine(where, pick(x, kept), pick(y, kept), optionsOf(side, kept)),
    kept: Object.freeze(kept),
    outliers: Object.freeze(outliers),
    settled,
  });
}

/** The readings and what is known of them. */
interface Sides {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly u: readonly number[] | undefined;
  readonly through: Point | undefined;
  readonly scaleByScatter: boolean;
  /** Whether u is known in size. */
  readonly known: boolean;
}

/** A reading against the line of the other readings kept. */
interface Judged {
  readonly index: number;
  readonly inside: boolean;
  readonly residual: number;
  readonly deletionResidual: number;
  readonly chance: number;
}

/** Compares each reading with the line of the (other) readings kept. */
function judge(side: Sides, kept: readonly number[]): Judged[] {
  const { x, y, u, known } = side;
  // Repeats may contradict each other until the wrong one is put aside.
  const options: FitLineOptions = { ...optionsOf(side, kept), contradictions: "keep" };
  const { fit, points } = influenceOf(where, pick(x, kept), pick(y, kept), options);
  const place = new Map(kept.map((i, k) => [i, k]));
  return x.map((xi, index): Judged => {
    const k = place.get(index);
    if (k !== undefined) {
      const { residual, deletionResidual, chance } = points[k]!;
      // Null: the others say nothing of this reading.
      return { index, inside: true, residual, deletionResidual: deletionResidual ?? 0, chance: chance ?? 1 };
    }
    const { value, standardUncertainty } = predictLine(fit, xi);
    const residual = y[index]! - value;
    const one = known ? 1 : Math.sqrt(scatterSquare(fit, side, kept));
    const spread = Math.hypot(standardUncertainty, one * (u?.[index] ?? 1));
    const deletionResidual = residual === 0 ? 0 : residual / spread;
    const chance = chanceOf(deletionResidual, known ? null : fit.degreesOfFreedom);
    return { index, inside: false, residual, deletionResidual, chance };
  });
}

/** Σ w residual² / degrees of freedom: the variance of a reading of weight 1. */
function scatterSquare(
  { residuals, degreesOfFreedom }: LineFit,
  { u }: Sides,
  kept: readonly number[],
): number {
  const squares = residuals.map((r, k) => (r / (u?.[kept[k]!] ?? 1)) ** 2);
  return squares.reduce((a, b) => a + b, 0) / degreesOfFreedom;
}

/** Readings near the robust first line; at least the nearer half and one more, and enough for a line and scatter. */
function firstKept(side: Sides): number[] {
  const { x, u, through, known } = side;
  const n = x.length;
  const off = firstResiduals(side).map((residual, i) => Math.abs(residual) / (u?.[i] ?? 1));
  const scale = known ? 1 : toSigma * (1 + 5 / (n - (through === undefined ? 2 : 1))) * median(off);
  const byNearness = x.map((_, i) => i).sort((a, b) => off[a]! - off[b]!);
  const atLeast = Math.max(4, Math.floor(n / 2) + 1);
  const kept = byNearness.filter((i, rank) => rank < atLeast || off[i]! <= firstLimit * scale);
  // A line needs two different positions, that of the point it must pass included.
  const place = through?.x ?? x[kept[0]!];
  for (const i of byNearness) {
    if (kept.some((k) => x[k] !== place)) break;
    if (x[i] !== place) kept.push(i);
  }
  return kept.sort((a, b) => a - b);
}

/** Readings less the robust first line. */
function firstResiduals({ x, y, through }: Sides): number[] {
  if (through !== undefined) {
    const slope = median(
      x.flatMap((xi, i) => (xi === through.x ? [] : [(y[i]! - through.y) / (xi - through.x)])),
    );
    return y.map((yi, i) => yi - through.y - slope * (x[i]! - through.x));
  }
  const slope = median(
    x.flatMap((xi, i) => {
      const slopes = x.flatMap((xj, j) => (xj === xi ? [] : [(y[j]! - y[i]!) / (xj - xi)]));
      return slopes.length === 0 ? [] : [median(slopes)];
    }),
  );
  const heights = y.map((yi, i) => yi - slope * x[i]!);
  const level = median(heights);
  return heights.map((height) => height - level);
}

function optionsOf({ u, through, scaleByScatter }: Sides, kept: readonly number[]): FitLineOptions {
  return {
    ...(u === undefined ? {} : { u: pick(u, kept), scaleByScatter }),
    ...(through === undefined ? {} : { through }),
  };
}

function pick(values: readonly number[], kept: readonly number[]): number[] {
  return kept.map((i) => values[i]!);
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
