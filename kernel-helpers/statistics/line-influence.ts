import { centredSums } from "./centred-line.js";
import { uncertaintyList } from "./check.js";
import { compensatedSum } from "./compensated-sum.js";
import { type FitLineOptions, ordinaryLine } from "./fit-line.js";
import type { LineFit } from "./line-fit.js";
import { normalCdf } from "./normal-distribution.js";
import { studentTCdf } from "./student-t-distribution.js";

/** What one reading does to the line. */
export interface PointInfluence {
  /** Reading less line [unit of y]. */
  readonly residual: number;
  /** How far the line follows this reading: its change at x for a change of the reading by 1 [-], 0 to 1. */
  readonly leverage: number;
  /**
   * Reading less the line through the others, in standard uncertainties of that difference [-]: normal where u is
   * known, else Student's t. Null where the others define no line, or leave no scatter to judge by.
   */
  readonly deletionResidual: number | null;
  /** Chance that an honest reading stands off at least so far, either way [-]; null where the above is. */
  readonly chance: number | null;
  /** Cook's distance: shift of all fitted values without this reading, in terms of their uncertainty [-]. */
  readonly cookDistance: number | null;
  /** Slope without this reading [unit of y / unit of x]; null where the others define no line. */
  readonly slopeWithout: number | null;
}

/** A line and what each reading does to it. */
export interface LineInfluence {
  readonly kind: "line influence";
  readonly fit: LineFit;
  /** In the order of the readings. */
  readonly points: readonly PointInfluence[];
  /** The reading of largest Cook's distance [index]; null where none has one. */
  readonly mostInfluential: number | null;
}

/** A reading the line passes through whatever it is. */
const followedWholly = 1 - 1e-12;
/** Chi-square less the part of one reading, where it is no more than this share of it, is 0. */
const roundingOfDifference = 1e-12;

/**
 * What each reading does to a straight line: leverage, residual against the line of the others, Cook's distance,
 * slope without it. In closed form, no refitting.
 *
 * h = w (1/Σw + (x−x̄)²/Σw(x−x̄)²); t = r√w / (s₍ᵢ₎ √(1−h)), s₍ᵢ₎² = (χ² − w r²/(1−h))/(ν−1), or 1 with u known;
 * D = w r² h / (p s² (1−h)²), p = 2 (1 through a point); b₍ᵢ₎ = b − w (x−x̄) r / (Σw(x−x̄)² (1−h))
 *
 * A reading with a large leverage may bend the line and yet have a small residual: look at Cook's distance, of which
 * 1 and more is large. `chance` is that of one reading picked beforehand; the worst of n stands off so far n times as
 * often.
 *
 * Valid when: as `fitLine`, errors in y alone. With errors in both, give u = √(u²(y) + b² u²(x)), b from
 * `fitLineBothErrors`: then to first order.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param options as of `fitLine`
 * @returns the line, and for each reading its influence
 * @throws RangeError as `fitLine`
 * @example lineInfluence([0, 1, 2, 3], [1, 3, 5, 9]).points[3].leverage // 0.7
 * @source R. D. Cook, Technometrics 19 (1977) 15-18; D. A. Belsley, E. Kuh, R. E. Welsch, Regression Diagnostics,
 * 1980, chapter 2 (from memory)
 */
export function lineInfluence(
  x: readonly number[],
  y: readonly number[],
  options: FitLineOptions = {},
): LineInfluence {
  return influenceOf("lineInfluence", x, y, options);
}

/** `lineInfluence` under the name of the helper that asks for it. */
export function influenceOf(
  where: string,
  x: readonly number[],
  y: readonly number[],
  options: FitLineOptions,
): LineInfluence {
  const fit = ordinaryLine(where, x, y, options);
  const { through, slope, residuals, degreesOfFreedom, scaled } = fit;
  const w =
    options.u === undefined
      ? x.map(() => 1)
      : uncertaintyList(where, "u", options.u, x.length).map((u) => u ** -2);
  const { xx, atMiddle, middle } = leverageSums(x, y, w, fit);
  const chiSquare = compensatedSum(residuals.map((r, i) => w[i]! * r * r));
  const parameters = through === null ? 2 : 1;
  const points = x.map((xi, i): PointInfluence => {
    const r = residuals[i]!;
    const leverage = w[i]! * (atMiddle + (xi - middle) ** 2 / xx);
    if (leverage > followedWholly) return frozenPoint(r, 1, null, null, null, null);
    const own = (w[i]! * r * r) / (1 - leverage); // what chi-square loses without the reading
    const variance = scaled ? chiSquare / degreesOfFreedom : 1;
    const cook = r === 0 ? 0 : (own * leverage) / (parameters * variance * (1 - leverage));
    const without = slope - (w[i]! * (xi - middle) * r) / (xx * (1 - leverage));
    if (scaled && degreesOfFreedom < 2) return frozenPoint(r, leverage, null, null, cook, without);
    // What is left of a difference of two numbers alike to 12 digits is rounding: the others lie on one line.
    if (scaled && chiSquare - own <= roundingOfDifference * chiSquare)
      return frozenPoint(r, leverage, null, null, cook, without);
    const left = scaled ? (chiSquare - own) / (degreesOfFreedom - 1) : 1;
    const t = r === 0 ? 0 : Math.sign(r) * Math.sqrt(own / left);
    return frozenPoint(r, leverage, t, chanceOf(t, scaled ? degreesOfFreedom - 1 : null), cook, without);
  });
  let most: number | null = null;
  points.forEach(({ cookDistance }, i) => {
    if (cookDistance !== null && cookDistance > (most === null ? -1 : points[most]!.cookDistance!)) most = i;
  });
  return Object.freeze({
    kind: "line influence",
    fit,
    points: Object.freeze(points),
    mostInfluential: most,
  });
}

/** Chance that a normal (dof null) or Student variable lies so far from 0, either way. */
export function chanceOf(t: number, dof: number | null): number {
  const far = -Math.abs(t);
  if (far === Number.NEGATIVE_INFINITY) return 0;
  return 2 * (dof === null ? normalCdf(far) : studentTCdf(far, dof));
}

function leverageSums(
  x: readonly number[],
  y: readonly number[],
  w: readonly number[],
  { through }: LineFit,
): { readonly xx: number; readonly atMiddle: number; readonly middle: number } {
  if (through !== null) {
    const xx = compensatedSum(x.map((v, i) => w[i]! * (v - through.x) ** 2));
    return { xx, atMiddle: 0, middle: through.x };
  }
  const sums = centredSums(x, y, w);
  return { xx: sums.xx, atMiddle: 1 / sums.w, middle: sums.x };
}

function frozenPoint(
  residual: number,
  leverage: number,
  deletionResidual: number | null,
  chance: number | null,
  cookDistance: number | null,
  slopeWithout: number | null,
): PointInfluence {
  return Object.freeze({ residual, leverage, deletionResidual, chance, cookDistance, slopeWithout });
}
