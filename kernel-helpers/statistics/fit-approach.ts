import { type Curve, linearFit, linearised, type Problem, sumOfSquares, valueAt } from "./approach-model.js";
import { requireFiniteList, requireSameLength, uncertaintyList } from "./check.js";
import { chiSquareQuantile } from "./chi-square-distribution.js";
import { fQuantile } from "./f-distribution.js";
import { leastSquares } from "./least-squares.js";
import { requireAgreeingRepeats, requireScatter } from "./refusals.js";

/** What is known beside the readings. */
export interface FitApproachOptions {
  /** The value at time 0, where it is known exactly; fitted where left out. */
  readonly start?: number;
  /** Standard uncertainty of each reading, or one for all [unit of y]; without it the scatter judges. */
  readonly u?: number | readonly number[];
  /** An end foretold by other means, with its standard uncertainty; needs `u` [unit of y]. */
  readonly foretold?: { readonly end: number; readonly u: number };
  /** Other readings that share the time constant, each with an end and a start of its own; their times start at 0. */
  readonly alike?: readonly Approaching[];
  /** Share covered by the interval of the end, two-sided [-]; default 0.95. */
  readonly coverage?: number;
}

/** Readings that approach an end of their own. */
export interface Approaching {
  readonly t: readonly number[];
  readonly y: readonly number[];
  /** Standard uncertainty of each reading, or one for all [unit of y]. */
  readonly u?: number | readonly number[];
}

/** Readings that approach an end, fitted. */
export interface Approach {
  readonly kind: "approach";
  /** The value reached after a long time [unit of y], with its standard uncertainty to first order. */
  readonly end: number;
  readonly uEnd: number;
  /** The value at time 0 [unit of y]. */
  readonly start: number;
  readonly uStart: number;
  /** Time in which 63 % of the way is made [unit of t]. */
  readonly timeConstant: number;
  readonly uTimeConstant: number;
  /** Of end, start (where fitted) and time constant, by rows. */
  readonly covariance: readonly (readonly number[])[];
  /** Values of the end that the readings do not contradict; ±Infinity where they set no bound. */
  readonly endInterval: { readonly from: number; readonly to: number; readonly coverage: number };
  readonly residuals: readonly number[];
  /** Σ (residual/u)², with `u`; else Σ residual² [unit of y²]; over the readings of `alike` too. */
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** Root of the residual sum of squares over the degrees of freedom [unit of y]; undefined with `u`. */
  readonly residualStandardDeviation: number | undefined;
}

/** Time constants looked at, as shares of the time the readings span. */
const shortest = 1e-3;
const longest = 1e4;
const looks = 140;
/** Where only the height of the minimum is wanted, not its place, a coarser grid does. */
const coarseLooks = 56;
/** Beyond so many times the readings' own spread an end counts as unbounded. */
const farEnd = 1e4;

/**
 * An exponential approach to an end: y = end + (start − end)·e^(−t/τ), by least squares.
 *
 * For each τ the rest is linear; the best τ is looked for on a logarithmic grid, then all are refined together
 * (Gauss–Newton by QR). Covariance from the slopes at the best fit, × s² without `u`. The interval of the end is by
 * the profile of the sum of squares: those ends E whose best fit is worse by no more than χ² (1 degree of freedom)
 * with `u`, or F(1, ν)·s² without: it holds also where the readings hardly bend yet, and may be open to one side.
 *
 * Readings of `alike` have ends and starts of their own and the same τ: what they tell of τ comes in as one more row.
 *
 * Valid when: the errors are in y alone and independent (readings closer together than the thing measured can
 * change by itself are not), and one time constant rules. Times need not be evenly spaced.
 *
 * @param t times, at least two different [any one unit]
 * @param y readings [any one unit]
 * @param options.start value at time 0 if known exactly [unit of y]
 * @param options.u standard uncertainty of a reading, > 0 [unit of y]
 * @param options.foretold an end foretold otherwise, counted as one more observation [unit of y]
 * @param options.alike other readings with the same time constant, at least three each [the same units]
 * @param options.coverage share covered by the interval, between 0 and 1 [-]
 * @returns end, start, time constant with uncertainties, and the interval of the end
 * @throws RangeError fewer readings than are needed (4; 3 with `start`; one less with `u`), `foretold` without `u`,
 * readings that are all one value, without u readings on the curve exactly, with it repeats that contradict it, or readings that bend away from an end or not at all: "no end in sight"
 * @example
 * const t = [0, 10, 20, 30, 40, 60];
 * fitApproach(t, t.map((x) => 80 - 60 * Math.exp(-x / 25)), { u: 0.5 }).end.toFixed(6) // "80.000000"
 * @source G. H. Golub & V. Pereyra, SIAM J. Numer. Anal. 10, 1973 (variable projection); D. M. Bates & D. G. Watts,
 * Nonlinear Regression Analysis and Its Applications, 1988, section 6.1 (profiles) (both from memory); checked
 * against NIST StRD, Misra1a and BoxBOD
 */
export function fitApproach(
  t: readonly number[],
  y: readonly number[],
  options: FitApproachOptions = {},
): Approach {
  const where = "fitApproach";
  const { start, foretold, alike = [], coverage = 0.95 } = options;
  requireFiniteList(where, "t", t, 0);
  requireFiniteList(where, "y", y, 0);
  requireSameLength(where, "t", t, "y", y);
  if (foretold !== undefined && options.u === undefined)
    throw new RangeError(
      `${where}: a foretold end needs u, the uncertainty of the readings, to be weighed against`,
    );
  if (foretold !== undefined && !(foretold.u > 0 && Number.isFinite(foretold.end)))
    throw new RangeError(`${where}: the foretold end needs an uncertainty above 0, got ${foretold.u}`);
  if (start !== undefined && !Number.isFinite(start))
    throw new RangeError(`${where}: start must be a finite number, got ${start}`);
  if (!(coverage > 0 && coverage < 1))
    throw new RangeError(`${where}: coverage must lie between 0 and 1, got ${coverage}`);
  const others = alike.map((one, i) => alikeProblem(where, `alike[${i}]`, one));
  const parameters = start === undefined ? 3 : 2;
  const observations = y.length + (foretold === undefined ? 0 : 1);
  // Others with the same time constant tell it: the readings need not.
  const needed = parameters + (options.u === undefined ? 1 : 0) - (others.length > 0 ? 1 : 0);
  if (observations < needed)
    throw new RangeError(`${where}: at least ${needed} readings are needed, got ${y.length}`);
  const own = Math.max(...t) - Math.min(...t);
  const span = Math.max(own, ...others.map((other) => other.span));
  if (!(own > 0)) throw new RangeError(`${where}: the readings must span some time, got all at ${t[0]}`);
  if (y.every((value) => value === y[0]))
    throw new RangeError(`${where}: readings that are all ${y[0]} tell nothing of a time constant`);
  const u = uncertaintyList(where, "u", options.u ?? 1, y.length);
  if (options.u !== undefined)
    requireAgreeingRepeats(
      where,
      t,
      y,
      u.map((ui) => 1 / ui ** 2),
      { x: "t", y: "y" },
    );
  const problem: Problem = { t, y, u, start, foretold, span, others };

  const best = bestTimeConstant(problem, (tau) => linearFit(problem, tau));
  if (best === undefined)
    throw new RangeError(
      `${where}: no end in sight: the readings still go straight on or bend away, so they tell no end; more time is needed`,
    );
  const refined = refine(problem, best);
  const { end, first, tau } = refined;
  if (options.u === undefined)
    requireScatter(
      { where, model: "the curve", give: "u" },
      y.map((value, i) => value - valueAt(refined, t[i]!)),
      (i) => Math.abs(y[i]!) + 2 * Math.abs(end) + Math.abs(first),
    );
  const sum = sumOfSquares(problem, refined);
  const degreesOfFreedom =
    observations - parameters + others.reduce((count, other) => count + other.y.length - 2, 0);
  const variance = options.u === undefined ? sum / degreesOfFreedom : 1;
  const { design } = linearised(problem, refined);
  const fit = leastSquares(design, new Array<number>(design.length).fill(0), {
    weights: new Array<number>(design.length).fill(1),
    knownUncertainty: true,
  });
  const covariance = fit.covariance.map((row) => Object.freeze(row.map((value) => value * variance)));
  const uOf = (i: number): number => Math.sqrt(covariance[i]![i]!);
  const rise =
    options.u === undefined
      ? fQuantile(coverage, 1, degreesOfFreedom) * variance
      : chiSquareQuantile(coverage, 1);
  return Object.freeze({
    kind: "approach",
    end,
    uEnd: uOf(0),
    start: first,
    uStart: start === undefined ? uOf(1) : 0,
    timeConstant: tau,
    uTimeConstant: uOf(parameters - 1),
    covariance: Object.freeze(covariance),
    endInterval: Object.freeze({
      from: boundOf(problem, refined, sum + rise, -1),
      to: boundOf(problem, refined, sum + rise, 1),
      coverage,
    }),
    residuals: Object.freeze(y.map((value, i) => value - valueAt(refined, t[i]!))),
    residualSumOfSquares: sum,
    degreesOfFreedom,
    residualStandardDeviation: options.u === undefined ? Math.sqrt(variance) : undefined,
  });
}

/**
 * The value of a fitted approach at a time, and the standard uncertainty of the curve there.
 *
 * @param fit as `fitApproach` returns it
 * @param t time [unit of the fit's t]
 * @returns value and standard uncertainty, first order [unit of y]
 * @example
 * const t = [0, 10, 20, 30, 40, 60];
 * const fit = fitApproach(t, t.map((x) => 80 - 60 * Math.exp(-x / 25)), { u: 0.5 });
 * approachAt(fit, 25).value.toFixed(2) // "57.93"
 * @source JCGM 102:2011, 6.2
 */
export function approachAt(fit: Approach, t: number): { readonly value: number; readonly u: number } {
  const fade = Math.exp(-t / fit.timeConstant);
  const slope = [
    1 - fade,
    ...(fit.covariance.length === 3 ? [fade] : []),
    ((fit.start - fit.end) * fade * t) / fit.timeConstant ** 2,
  ];
  const variance = slope.reduce(
    (sum, a, i) => sum + slope.reduce((row, b, j) => row + a * b * fit.covariance[i]![j]!, 0),
    0,
  );
  return { value: fit.end + (fit.start - fit.end) * fade, u: Math.sqrt(Math.max(0, variance)) };
}

function alikeProblem(where: string, name: string, { t, y, u }: Approaching): Problem {
  requireFiniteList(where, `${name}.t`, t, 3);
  requireFiniteList(where, `${name}.y`, y, 3);
  requireSameLength(where, `${name}.t`, t, `${name}.y`, y);
  const span = Math.max(...t) - Math.min(...t);
  if (!(span > 0)) throw new RangeError(`${where}: ${name}.t must span some time, got all at ${t[0]}`);
  return {
    t,
    y,
    u: uncertaintyList(where, `${name}.u`, u ?? 1, y.length),
    start: undefined,
    foretold: undefined,
    span,
    others: [],
  };
}

/** The best time constant on a logarithmic grid, then by golden section; undefined where it runs off the long end. */
function bestTimeConstant(problem: Problem, curveOf: (tau: number) => Curve | undefined): Curve | undefined {
  const cost = (logTau: number): number => {
    const curve = curveOf(Math.exp(logTau));
    return curve === undefined ? Number.POSITIVE_INFINITY : sumOfSquares(problem, curve);
  };
  const [from, to] = [Math.log(problem.span * shortest), Math.log(problem.span * longest)];
  const step = (to - from) / looks;
  let [best, least] = [-1, Number.POSITIVE_INFINITY];
  for (let i = 0; i <= looks; i++) {
    const value = cost(from + i * step);
    // A later look must be better by more than rounding: along a straight line all long time constants are alike.
    if (value < least * (1 - 1e-12)) [best, least] = [i, value];
  }
  if (best < 0 || best >= looks - 1) return undefined;
  let [low, high] = [from + (best - 1) * step, from + (best + 1) * step];
  const ratio = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 60; i++) {
    const [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
    if (cost(a) < cost(b)) high = b;
    else low = a;
  }
  return curveOf(Math.exp((low + high) / 2));
}

function refine(problem: Problem, from: Curve): Curve {
  let [curve, least] = [from, sumOfSquares(problem, from)];
  for (let i = 0; i < 20; i++) {
    const { design, misses } = linearised(problem, curve);
    let move: readonly number[];
    try {
      move = leastSquares(design, misses, {
        weights: misses.map(() => 1),
        knownUncertainty: true,
      }).coefficients;
    } catch {
      return curve; // the slopes cannot be told apart any finer
    }
    const next: Curve = {
      end: curve.end + move[0]!,
      first: problem.start ?? curve.first + move[1]!,
      tau: curve.tau + move.at(-1)!,
    };
    const sum = next.tau > 0 ? sumOfSquares(problem, next) : Number.POSITIVE_INFINITY;
    if (!(sum <= least)) return curve;
    [curve, least] = [next, sum];
    if (Math.abs(move.at(-1)!) < 1e-15 * curve.tau) return curve;
  }
  return curve;
}

/** How far the end can go to one side before the best fit with it is as bad as allowed. */
function boundOf(problem: Problem, best: Curve, allowed: number, side: 1 | -1): number {
  const spread = Math.max(...problem.y) - Math.min(...problem.y);
  const worse = (end: number): boolean => {
    const curve = bestTimeConstantAt(problem, end);
    return curve > allowed;
  };
  let [near, far] = [0, spread / 16];
  while (!worse(best.end + side * far)) {
    near = far;
    far *= 2;
    if (far > farEnd * spread) return side * Number.POSITIVE_INFINITY;
  }
  for (let i = 0; i < 30; i++) {
    const middle = (near + far) / 2;
    if (worse(best.end + side * middle)) far = middle;
    else near = middle;
  }
  return best.end + side * far;
}

/** The least sum of squares with a given end. */
function bestTimeConstantAt(problem: Problem, end: number): number {
  const { t, y, u, start, span } = problem;
  const cost = (logTau: number): number => {
    const tau = Math.exp(logTau);
    let first = start;
    if (first === undefined) {
      let [ff, fy] = [0, 0];
      for (let i = 0; i < t.length; i++) {
        const fade = Math.exp(-t[i]! / tau);
        const weight = 1 / u[i]! ** 2;
        ff += weight * fade * fade;
        fy += weight * fade * (y[i]! - end);
      }
      first = ff > 0 ? end + fy / ff : end;
    }
    return sumOfSquares(problem, { end, first, tau });
  };
  // A far end is reached in a long time: the grid reaches further than that of the best fit.
  const [from, to] = [Math.log(span * shortest), Math.log(span * longest * farEnd)];
  const step = (to - from) / coarseLooks;
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i <= coarseLooks; i++) {
    const value = cost(from + i * step);
    if (value < least) [best, least] = [i, value];
  }
  let [low, high] = [from + (best - 1) * step, from + (best + 1) * step];
  const ratio = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 30; i++) {
    const [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
    if (cost(a) < cost(b)) high = b;
    else low = a;
  }
  return Math.min(least, cost((low + high) / 2));
}
