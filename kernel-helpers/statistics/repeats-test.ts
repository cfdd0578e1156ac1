import { requireFiniteList, requireSameLength, uncertaintyList } from "./check.js";
import { chiSquareSurvival } from "./chi-square-distribution.js";

/** Whether repeated readings of one place agree within the uncertainty stated. */
export interface RepeatsTest {
  readonly kind: "repeats test";
  /** Places read more than once [-]. */
  readonly places: number;
  /** Σ over these places of Σ ((reading − mean of the place)/u)² [-]. */
  readonly chiSquare: number;
  /** Readings at these places less the number of places [-]. */
  readonly degreesOfFreedom: number;
  /** Chance that honest repeats of the u stated scatter at least so much [-]; null without repeats. */
  readonly probability: number | null;
  /** Scatter seen over scatter stated, √(chiSquare / degreesOfFreedom) [-]; null without repeats. */
  readonly noiseRatio: number | null;
  /** True where not even three times the u stated explains the repeats. */
  readonly contradictory: boolean;
  /** The two repeats farthest apart in terms of their uncertainty; null without repeats. */
  readonly worst: RepeatsApart | null;
}

/** Two readings of one place. */
export interface RepeatsApart {
  /** Their places in the list, the lower first. */
  readonly indices: readonly [number, number];
  /** The second less the first [unit of y]. */
  readonly difference: number;
  /** The same without its sign, in standard uncertainties of the difference, √(u₁² + u₂²) [-]. */
  readonly differenceInU: number;
}

/** A stated u is a judgement and may itself be off by so much before repeats are said to contradict it. */
const allowance = 3;
/** Honest repeats are called contradictory in less than this share of all cases, even where u is off by the allowance. */
const falseAlarm = 1e-3;

/**
 * Whether repeated readings of one place agree within their stated uncertainty (chi-squared test of pure error).
 *
 * χ² = Σ_places Σ w (y − ȳ)², w = 1/u², ȳ the weighted mean of a place; ν = readings − places. Whatever runs through the
 * places (a line, bands, a taper) has no part in it. Contradictory: P(χ²_ν ≥ χ²/3²) < 0.001.
 *
 * Why three times u, and one in a thousand: a stated u is a judgement (from three readings it is itself uncertain by
 * half), and noise two or three times as large is a matter of widening, not of refusal. What is left are readings of
 * which one must be wrong, such as two readings of one place 14 u apart.
 *
 * Valid when: readings of one x are readings of one place, independent and about normal.
 *
 * @param x where each reading was taken; equal numbers are one place [any one unit]
 * @param y readings [any one unit]
 * @param u standard uncertainty of each reading, or one for all, > 0 [unit of y]
 * @returns chi-square of the repeats, its chance, and the two repeats farthest apart
 * @throws RangeError unequal lengths, no readings, u not > 0, or a value that is not finite
 * @example repeatsTest([0, 1, 1, 2], [0, 1, 9, 2], 0.5).chiSquare // 128
 * @example repeatsTest([0, 1, 1, 2], [0, 1, 9, 2], 0.5).contradictory // true
 * @source pure error: N. R. Draper, H. Smith, Applied Regression Analysis, 3rd edition, 1998, section 2.1 (from
 * memory); test of a known variance: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.8 (from memory);
 * uncertainty of an uncertainty: JCGM 100:2008 (GUM), E.4.3, table E.1; allowance and level: own
 */
export function repeatsTest(
  x: readonly number[],
  y: readonly number[],
  u: number | readonly number[],
): RepeatsTest {
  const where = "repeatsTest";
  requireFiniteList(where, "x", x, 1);
  requireFiniteList(where, "y", y, 1);
  requireSameLength(where, "x", x, "y", y);
  return repeatsTestOf(
    x,
    y,
    uncertaintyList(where, "u", u, x.length).map((ui) => 1 / ui ** 2),
  );
}

/** The same for readings that were checked, with weights 1/u². */
export function repeatsTestOf(
  x: readonly number[],
  y: readonly number[],
  weights: ArrayLike<number>,
): RepeatsTest {
  let chiSquare = 0;
  let degreesOfFreedom = 0;
  let worst: RepeatsApart | null = null;
  const places = repeatedPlaces(x);
  for (const place of places) {
    const first = y[place[0]!]!;
    let [total, sum] = [0, 0];
    for (const i of place) {
      total += weights[i]!;
      sum += weights[i]! * (y[i]! - first);
    }
    const mean = first + sum / total;
    for (const i of place) chiSquare += weights[i]! * (y[i]! - mean) ** 2;
    degreesOfFreedom += place.length - 1;
    const apart = farthestApart(place, mean, y, weights);
    if (worst === null || apart.differenceInU > worst.differenceInU) worst = apart;
  }
  const judged = degreesOfFreedom > 0;
  return Object.freeze({
    kind: "repeats test",
    places: places.length,
    chiSquare,
    degreesOfFreedom,
    probability: judged ? chiSquareSurvival(chiSquare, degreesOfFreedom) : null,
    noiseRatio: judged ? Math.sqrt(chiSquare / degreesOfFreedom) : null,
    contradictory: judged && chiSquareSurvival(chiSquare / allowance ** 2, degreesOfFreedom) < falseAlarm,
    worst,
  });
}

/** Indices of the readings of each place that was read more than once. */
function repeatedPlaces(x: readonly number[]): number[][] {
  let ascends = true;
  for (let i = 1; i < x.length && ascends; i++) ascends = x[i]! > x[i - 1]!;
  if (ascends) return [];
  const places = new Map<number, number[]>();
  x.forEach((at, i) => {
    const place = places.get(at);
    if (place === undefined) places.set(at, [i]);
    else place.push(i);
  });
  return [...places.values()].filter((place) => place.length > 1);
}

/** The repeat farthest from the mean of its place, and the one farthest from that. */
function farthestApart(
  place: readonly number[],
  mean: number,
  y: readonly number[],
  weights: ArrayLike<number>,
): RepeatsApart {
  const off = (i: number): number => Math.abs(y[i]! - mean) * Math.sqrt(weights[i]!);
  const far = place.reduce((a, b) => (off(b) > off(a) ? b : a));
  const inU = (i: number): number =>
    Math.abs(y[i]! - y[far]!) / Math.sqrt(1 / weights[i]! + 1 / weights[far]!);
  const other = place.filter((i) => i !== far).reduce((a, b) => (inU(b) > inU(a) ? b : a));
  const [i, j] = [Math.min(far, other), Math.max(far, other)];
  return Object.freeze({
    indices: Object.freeze([i, j] as const),
    difference: y[j]! - y[i]!,
    differenceInU: inU(other),
  });
}
