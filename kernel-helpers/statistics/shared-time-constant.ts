import { fQuantile } from "./f-distribution.js";
import { type Approaching, fitApproach } from "./fit-approach.js";
import { fitLine } from "./fit-line.js";

/** Whether approaches may share one time constant. */
export interface SharedTimeConstant {
  readonly kind: "shared-time-constant";
  /** The readings do not speak against one time constant for all. */
  readonly shared: boolean;
  /** (Δ sum of squares / (k − 1)) over the variance left by k separate fits [-]. */
  readonly f: number;
  /** Above this it is refused [-]. */
  readonly critical: number;
  /** Chance of refusing one that is shared [-]. */
  readonly level: number;
  readonly degreesOfFreedom: readonly [number, number];
}

/** Of the sum of squares of the readings, what counts as rounding. */
const rounding = 1e-13;

/**
 * Whether readings that approach several ends may share one time constant: an F test of nested models.
 *
 * k approaches with τ, end and start each, against k with one τ: F = ((S₁ − Sₖ)/(k − 1)) / (Sₖ/(N − 3k)), refused
 * above the quantile of F(k − 1, N − 3k). Readings that show no bend count by their straight line, the limit τ → ∞.
 *
 * Valid when: as for `fitApproach`; for curves the distribution is that of the linear case, nearly. It cannot be
 * tested with fewer than one reading over three an approach.
 *
 * @param stretches readings of each, at least two stretches of at least three readings, times from 0 in each [one unit]
 * @param options.level chance of refusing a shared one, between 0 and 1; default 0.05 [-]
 * @returns verdict, F, its bound and degrees of freedom
 * @throws RangeError fewer than two stretches, too few readings, a level outside 0 to 1, or none that bends
 * @example
 * const t = [0, 10, 20, 30, 40, 60];
 * const rise = (end: number, tau: number) => t.map((x, i) => end * (1 - Math.exp(-x / tau)) + (i % 2 ? 0.1 : -0.1));
 * sharedTimeConstant([{ t, y: rise(30, 25), u: 0.1 }, { t, y: rise(20, 25), u: 0.1 }]).shared // true
 * @source D. M. Bates & D. G. Watts, Nonlinear Regression Analysis and Its Applications, 1988, section 3.10 (nested
 * models; from memory)
 */
export function sharedTimeConstant(
  stretches: readonly Approaching[],
  options: { readonly level?: number } = {},
): SharedTimeConstant {
  const where = "sharedTimeConstant";
  const { level = 0.05 } = options;
  if (!(level > 0 && level < 1))
    throw new RangeError(`${where}: level must lie between 0 and 1, got ${level}`);
  if (stretches.length < 2)
    throw new RangeError(
      `${where}: at least two stretches are needed to share anything, got ${stretches.length}`,
    );
  const apart = stretches.length - 1;
  const left = stretches.reduce((count, { y }) => count + y.length - 3, 0);
  if (left < 1 || stretches.some(({ y }) => y.length < 3))
    throw new RangeError(
      `${where}: at least three readings a stretch and one more are needed, got ${stretches.map(({ y }) => y.length).join(", ")}`,
    );
  const separate = stretches.reduce((sum, stretch) => sum + leastSum(stretch), 0);
  const [first, ...alike] = stretches;
  const together = fitApproach(first!.t, first!.y, { u: first!.u ?? 1, alike }).residualSumOfSquares;
  // What is less than rounding of the readings is no difference: exact readings leave nothing to test against.
  const all = stretches.reduce((sum, stretch) => sum + spreadOf(stretch), 0);
  const difference = together - separate;
  const more = difference <= rounding * all ? 0 : difference / apart;
  const f = more === 0 ? 0 : more / (separate / left);
  const critical = fQuantile(1 - level, apart, left);
  return Object.freeze({
    kind: "shared-time-constant",
    shared: f <= critical,
    f,
    critical,
    level,
    degreesOfFreedom: Object.freeze([apart, left] as const),
  });
}

/** Σ ((reading − first)/u)². */
function spreadOf({ t, y, u = 1 }: Approaching): number {
  return t.reduce((sum, _, i) => sum + ((y[i]! - y[0]!) / (typeof u === "number" ? u : u[i]!)) ** 2, 0);
}

/** Of one stretch by itself; of its straight line where no time constant ends. */
function leastSum({ t, y, u = 1 }: Approaching): number {
  try {
    return fitApproach(t, y, { u }).residualSumOfSquares;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const line = fitLine(t, y, { u, contradictions: "keep" });
    const uOf = (i: number): number => (typeof u === "number" ? u : u[i]!);
    return y.reduce(
      (sum, value, i) => sum + ((value - line.intercept - line.slope * t[i]!) / uOf(i)) ** 2,
      0,
    );
  }
}
