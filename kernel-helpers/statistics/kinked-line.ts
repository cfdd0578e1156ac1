import { requireFinite, requireFiniteList, requireSameLength, uncertaintyList } from "./check.js";
import { ordinaryLine } from "./fit-line.js";
import { searchKinked } from "./kinked-search.js";
import { type LeastSquaresFit, leastSquares } from "./least-squares.js";
import { normalQuantile } from "./normal-distribution.js";

/** What is known about the readings, and what a kink must earn. */
export interface KinkedLineOptions {
  /** Known standard uncertainty of each value, or one for all [unit of value]. */
  readonly u: number | readonly number[];
  /** Cost of each parameter [-]; default ln of the number of readings. A kink has two: its place and its angle. */
  readonly penalty?: number;
  /** Fewest steps between different positions from one kink to the next, or to an end [-]; default 2. */
  readonly fewestSteps?: number;
}

/** Where the line changes its slope. */
export interface Kink {
  /** Where [unit of position], with its standard uncertainty by the profile of chi-square. */
  readonly position: number;
  readonly uPosition: number;
  /** Slope behind less slope before [unit of value / unit of position]. */
  readonly change: number;
  readonly uChange: number;
}

/** One straight piece. */
export interface KinkedPiece {
  /** Its ends [unit of position]. */
  readonly from: number;
  readonly to: number;
  /** Height at its ends [unit of value]. */
  readonly start: number;
  readonly end: number;
  /** Slope, with its standard uncertainty [unit of value / unit of position]. */
  readonly slope: number;
  readonly uSlope: number;
}

/** A line without jumps, straight in pieces. */
export interface KinkedLine {
  readonly kind: "kinked line";
  readonly kinks: readonly Kink[];
  readonly pieces: readonly KinkedPiece[];
  /** Reading less line, in the order given [unit of value]. */
  readonly residuals: readonly number[];
  /** Σ (residual/u)² [-]. */
  readonly chiSquare: number;
  /** Readings less 2, less 2 a kink [-]. */
  readonly degreesOfFreedom: number;
  /** chiSquare + penalty × (2 + 2 a kink) [-]. */
  readonly criterion: number;
  /** Scatter seen over noise stated [-]; null with no degree of freedom. */
  readonly noiseRatio: number | null;
  readonly penalty: number;
}

const mostPositions = 500;
const mostRounds = 60;
/** 0.975 quantile of the normal distribution, and its square: 95 % of chi-square with 1 degree of freedom. */
const twoSided95 = normalQuantile(0.975);
const risenBy95 = twoSided95 ** 2;

/**
 * The line without jumps through readings of known noise that is straight in as many pieces as the readings call for:
 * two tapers that meet, a wire that has slackened, a bearing surface worn on a slant from some place on.
 *
 * Minimises Σ (residual/u)² + penalty × parameters; 2 for a straight line and 2 for each kink (place, angle). First
 * exactly over every choice of kinks at the positions read (`searchKinked`); then the places are let go between the
 * positions and all is refined together (damped Gauss–Newton), which can only lower chi-square; and kinks that this
 * makes needless (two at positions on either side of a true one between them), or whose places the readings do not
 * determine, are dropped or joined. So the result is
 * never worse than the best line with kinks at positions, and exact where there is none; that no other choice of
 * kinks between positions is better is not promised.
 *
 * u(place) by the profile: the farther of the two places at which the best line with its kink there has a chi-square
 * larger by 3.84, over 1.96; at most the distance to where the readings no longer tell. (To first order it would be
 * too small for weak kinks: 1.96 u held the place in 84 to 90 of 100 trials, by the profile in 93 and more.)
 * Covariance of the rest from the slopes at the end: (JᵀWJ)⁻¹.
 *
 * Valid when: the errors of the values are independent, of the stated size, and positions are exact; look at
 * noiseRatio. At most 500 different positions. A step is not a kink: see `partition`.
 *
 * @param positions where the readings were taken, ascending [unit of position]
 * @param values readings [unit of value]
 * @param options.u standard uncertainty of each value, or one for all, > 0 [unit of value]
 * @param options.penalty cost of each parameter, > 0 [-]
 * @param options.fewestSteps fewest steps between kinks, ≥ 1 [-]
 * @returns kinks with uncertainties, straight pieces, residuals, chi-square
 * @throws RangeError positions that descend, fewer than 2 or more than 500 different ones, unequal lengths, u not > 0,
 * an option outside its bound, a value that is not finite, or repeats that contradict u
 * @example kinkedLine([0, 1, 2, 3, 4, 5, 6], [0, 1, 2, 3, 3, 3, 3], { u: 0.1 }).kinks[0].position.toFixed(6) // "3.000000"
 * @source search: R. Maidstone, P. Fearnhead, A. Letchford, Journal of Computational and Graphical Statistics 28
 * (2019) 265-275; kinks between positions: D. J. Hudson, JASA 61 (1966) 1097-1129 (both from memory)
 */
export function kinkedLine(
  positions: readonly number[],
  values: readonly number[],
  options: KinkedLineOptions,
): KinkedLine {
  const where = "kinkedLine";
  const { fewestSteps = 2 } = options;
  requireFiniteList(where, "positions", positions, 2);
  requireFiniteList(where, "values", values, 2);
  requireSameLength(where, "positions", positions, "values", values);
  const n = positions.length;
  for (let i = 1; i < n; i++)
    if (positions[i]! < positions[i - 1]!)
      throw new RangeError(
        `${where}: positions must ascend, got ${positions[i]} at index ${i} after ${positions[i - 1]}`,
      );
  const different = new Set(positions).size;
  if (different < 2 || different > mostPositions)
    throw new RangeError(`${where}: needs 2 to ${mostPositions} different positions, got ${different}`);
  const u = uncertaintyList(where, "u", options.u, n);
  const penalty = options.penalty ?? Math.max(Math.log(n), Math.LN2);
  requireFinite(where, "penalty", penalty);
  if (penalty <= 0) throw new RangeError(`${where}: penalty must be greater than 0, got ${penalty}`);
  if (!Number.isInteger(fewestSteps) || fewestSteps < 1)
    throw new RangeError(`${where}: fewestSteps must be a whole number of at least 1, got ${fewestSteps}`);

  // About the plain line, which costs a kinked one nothing and leaves small numbers.
  const plain = ordinaryLine(where, positions, values, { u: [...u] });
  const pooled = poolPositions(positions, plain.residuals, u);
  const found = searchKinked(pooled.x, pooled.y, pooled.w, 2 * penalty, fewestSteps);
  const readings: Readings = { x: positions, y: plain.residuals, w: u.map((ui) => 1 / (ui * ui)) };
  const inner = found.knots.slice(1, -1).map((k) => pooled.x[k]!);
  const ends = { low: positions[0]!, high: positions[n - 1]! };
  const refined = withoutNeedless(readings, ends.low, refine(readings, ends, inner), 2 * penalty);
  const plainAt = (at: number): number => plain.centre.y + plain.slope * (at - plain.centre.x);
  return describe(refined, readings, ends, plain.slope, plainAt, penalty);
}

interface Readings {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly w: readonly number[];
}

/** Readings of one position as one reading. */
function poolPositions(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
): { readonly x: Float64Array; readonly y: Float64Array; readonly w: Float64Array } {
  const at: number[] = [];
  const mean: number[] = [];
  const weight: number[] = [];
  x.forEach((xi, i) => {
    const w = 1 / (u[i]! * u[i]!);
    const k = at.length - 1;
    if (at[k] === xi) {
      weight[k]! += w;
      mean[k]! += (w / weight[k]!) * (y[i]! - mean[k]!);
    } else {
      at.push(xi);
      mean.push(y[i]!);
      weight.push(w);
    }
  });
  return { x: Float64Array.from(at), y: Float64Array.from(mean), w: Float64Array.from(weight) };
}

/** The best line for kinks at these places, y = c₀ + c₁ (x − low) + Σ cₖ (x − kₖ)₊. */
function fitAt({ x, y, w }: Readings, low: number, kinks: readonly number[]): LeastSquaresFit {
  const design = x.map((xi) => [1, xi - low, ...kinks.map((k) => Math.max(0, xi - k))]);
  return leastSquares(design, y, { weights: w, knownUncertainty: true });
}

interface Refined {
  readonly kinks: readonly number[];
  readonly fit: LeastSquaresFit;
}

/**
 * Lets the places of the kinks go. A kink that starts on a reading may be held there, since the slope of chi-square
 * jumps at it; so each is tried from the middle of the gaps beside it too.
 */
function refine(
  readings: Readings,
  ends: { readonly low: number; readonly high: number },
  start: readonly number[],
): Refined {
  let state = descend(readings, ends.low, { kinks: start, fit: fitAt(readings, ends.low, start) });
  const positions = [...new Set(readings.x)];
  start.forEach((at, i) => {
    const place = positions.indexOf(at);
    for (const beside of [positions[place - 1]!, positions[place + 1]!]) {
      const kinks = state.kinks.map((k, j) => (j === i ? (at + beside) / 2 : k));
      if (!separate(readings.x, kinks)) continue;
      const other = descend(readings, ends.low, { kinks, fit: fitAt(readings, ends.low, kinks) });
      if (other.fit.residualSumOfSquares < state.fit.residualSumOfSquares) state = other;
    }
  });
  return state;
}

/**
 * Drops kinks, or joins two neighbours, as long as that lowers chi-square plus cost, and as long as the readings do not
 * determine the places of all of them.
 */
function withoutNeedless(readings: Readings, low: number, start: Refined, cost: number): Refined {
  const total = (state: Refined): number =>
    isDetermined(readings, low, state)
      ? state.fit.residualSumOfSquares + cost * state.kinks.length
      : Number.POSITIVE_INFINITY;
  let state = start;
  for (;;) {
    const { kinks } = state;
    if (kinks.length === 0) return state;
    const fewer = kinks.flatMap((kink, i) => {
      const rest = kinks.filter((_, j) => j !== i);
      const next = kinks[i + 1];
      if (next === undefined) return [rest];
      return [rest, [...kinks.slice(0, i), (kink + next) / 2, ...kinks.slice(i + 2)]];
    });
    const best = fewer
      .filter((choice) => separate(readings.x, choice))
      .map((choice) => descend(readings, low, { kinks: choice, fit: fitAt(readings, low, choice) }))
      .sort((a, b) => total(a) - total(b))[0];
    if (best === undefined) return state;
    if (isDetermined(readings, low, state) && total(best) >= total(state)) return state;
    state = best;
  }
}

/** Moves the kinks, but for one held, as long as that lowers chi-square and keeps their order. */
function descend(readings: Readings, low: number, start: Refined, held: number | null = null): Refined {
  let state = start;
  const moving = start.kinks.map((_, i) => i).filter((i) => i !== held);
  if (moving.length === 0) return state;
  for (let round = 0; round < mostRounds; round++) {
    const steps = stepsOf(readings, low, state, moving);
    if (steps === null) return state;
    let better: Refined | null = null;
    for (let share = 1; share > 1e-4 && better === null; share /= 2) {
      const kinks = state.kinks.map((k, i) => k + share * (steps[moving.indexOf(i)] ?? 0));
      if (!separate(readings.x, kinks)) continue;
      const fit = fitAt(readings, low, kinks);
      if (fit.residualSumOfSquares < state.fit.residualSumOfSquares * (1 - 1e-10)) better = { kinks, fit };
    }
    if (better === null) return state;
    state = better;
  }
  return state;
}

/** Whether there are at least two different positions before, behind and between the kinks: else a piece is free. */
function separate(x: readonly number[], kinks: readonly number[]): boolean {
  const bounds = [Number.NEGATIVE_INFINITY, ...kinks, Number.POSITIVE_INFINITY];
  return bounds.slice(1).every((to, k) => new Set(x.filter((xi) => xi >= bounds[k]! && xi <= to)).size >= 2);
}

/** Slopes of the line by its coefficients and by the places of the kinks that move. */
function slopesOf(
  x: readonly number[],
  low: number,
  { kinks, fit }: Refined,
  moving: readonly number[],
): number[][] {
  return x.map((xi) => [
    1,
    xi - low,
    ...kinks.map((k) => Math.max(0, xi - k)),
    // At a reading that lies on the kink itself, half of either side.
    ...moving.map((i) => {
      const k = kinks[i]!;
      return -fit.coefficients[2 + i]! * (xi > k ? 1 : xi === k ? 0.5 : 0);
    }),
  ]);
}

/** Gauss–Newton's step of each moving kink; null where the readings do not tell the places. */
function stepsOf(
  readings: Readings,
  low: number,
  state: Refined,
  moving: readonly number[],
): readonly number[] | null {
  const step = full(readings, low, state, moving);
  return step === null ? null : step.coefficients.slice(2 + state.kinks.length);
}

/** The readings' own step from a state: all coefficients and the moving kinks together. */
function full(
  { x, w }: Readings,
  low: number,
  state: Refined,
  moving: readonly number[],
): LeastSquaresFit | null {
  const slopes = slopesOf(x, low, state, moving);
  if (slopes[0]!.length > x.length) return null;
  try {
    return leastSquares(slopes, state.fit.residuals, { weights: w, knownUncertainty: true });
  } catch (error) {
    if (error instanceof RangeError) return null; // columns that depend on each other
    throw error;
  }
}

/** Standard uncertainty of a kink's place by the profile of chi-square. */
function placeUncertainty(readings: Readings, low: number, state: Refined, i: number): number {
  const at = state.kinks[i]!;
  const mark = state.fit.residualSumOfSquares + risenBy95;
  const withKinkAt = (place: number): number => {
    const kinks = state.kinks.map((k, j) => (j === i ? place : k));
    if (!separate(readings.x, kinks)) return Number.POSITIVE_INFINITY;
    return descend(readings, low, { kinks, fit: fitAt(readings, low, kinks) }, i).fit.residualSumOfSquares;
  };
  const span = readings.x.at(-1)! - low;
  const reach = [-1, 1].map((way) => {
    let inside = 0;
    let outside = span / 1024;
    while (outside < span && withKinkAt(at + way * outside) <= mark)
      [inside, outside] = [outside, 2 * outside];
    while (outside - inside > 1e-4 * outside && outside > 1e-9 * span) {
      const middle = (inside + outside) / 2;
      if (withKinkAt(at + way * middle) <= mark) inside = middle;
      else outside = middle;
    }
    return inside;
  });
  return Math.max(...reach) / twoSided95;
}

/** Whether the readings tell height, slopes and places of all kinks, with something left to judge by. */
function isDetermined(readings: Readings, low: number, state: Refined): boolean {
  if (state.kinks.length === 0) return true;
  if (new Set(readings.x).size < 3 + 2 * state.kinks.length) return false;
  return (
    full(
      readings,
      low,
      state,
      state.kinks.map((_, i) => i),
    ) !== null
  );
}

/** Kinks and pieces with their uncertainties, in the units given. */
function describe(
  state: Refined,
  readings: Readings,
  { low, high }: { readonly low: number; readonly high: number },
  plainSlope: number,
  plainAt: (position: number) => number,
  penalty: number,
): KinkedLine {
  const { kinks, fit } = state;
  const everyKink = kinks.map((_, i) => i);
  const all = kinks.length === 0 ? fit : full(readings, low, state, everyKink);
  const covariance = all?.covariance;
  const spread = (among: readonly number[]): number => {
    if (covariance === undefined) return Number.POSITIVE_INFINITY;
    let variance = 0;
    for (const i of among) for (const j of among) variance += covariance[i]![j]!;
    return Math.sqrt(Math.max(0, variance));
  };
  const bounds = [low, ...kinks, high];
  const heightAt = (at: number): number =>
    plainAt(at) +
    fit.coefficients[0]! +
    fit.coefficients[1]! * (at - low) +
    kinks.reduce((sum, k, i) => sum + fit.coefficients[2 + i]! * Math.max(0, at - k), 0);
  const pieces = bounds.slice(1).map((to, k): KinkedPiece => {
    const members = Array.from({ length: k + 1 }, (_, i) => 1 + i);
    return Object.freeze({
      from: bounds[k]!,
      to,
      start: heightAt(bounds[k]!),
      end: heightAt(to),
      slope: plainSlope + members.reduce((sum, i) => sum + fit.coefficients[i]!, 0),
      uSlope: spread(members),
    });
  });
  const degreesOfFreedom = readings.x.length - 2 - 2 * kinks.length;
  const chiSquare = fit.residualSumOfSquares;
  return Object.freeze({
    kind: "kinked line",
    kinks: Object.freeze(
      kinks.map(
        (position, i): Kink =>
          Object.freeze({
            position,
            uPosition: placeUncertainty(readings, low, state, i),
            change: fit.coefficients[2 + i]!,
            uChange: spread([2 + i]),
          }),
      ),
    ),
    pieces: Object.freeze(pieces),
    residuals: Object.freeze(fit.residuals.slice()),
    chiSquare,
    degreesOfFreedom,
    criterion: chiSquare + penalty * (2 + 2 * kinks.length),
    noiseRatio: degreesOfFreedom > 0 ? Math.sqrt(chiSquare / degreesOfFreedom) : null,
    penalty,
  });
}
