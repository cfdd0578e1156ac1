import { requireFinite, requireProbability } from "./check.js";
import { coverageFactor } from "./coverage-factor.js";
import type { LineFit } from "./line-fit.js";
import { predictLine } from "./predict-line.js";

/** What an interval about a line is for. */
export interface LineIntervalOptions {
  /**
   * "line": the mean line at x; "reading": a single new reading there, which scatters about the line besides.
   */
  readonly of: "line" | "reading";
  /**
   * Standard uncertainty of the new reading [unit of y]; default, for a fit that learnt it from equal readings, the
   * residual standard deviation. Else it must be given.
   */
  readonly uReading?: number;
  /** Share the interval covers [-]; default 0.95. */
  readonly coverage?: number;
}

/** A value with its interval. */
export interface LineInterval {
  readonly kind: "line interval";
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Standard uncertainty of the value, and its degrees of freedom (Infinity where uncertainties are known). */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly coverage: number;
}

/**
 * Interval for the mean line, or for a single new reading, at a position.
 *
 * y ± k √(u²(line at x) + u²(reading)); k from Student's t with the degrees of freedom of the fit, or of both parts
 * together (Welch–Satterthwaite) where the reading's u is known and the line's is not
 *
 * Valid when: x is exact and the new reading is made as those fitted. "line" is narrower: it says where the line
 * runs, not where the next reading falls.
 *
 * @param fit a fitted line
 * @param x position [unit of x]
 * @param options.of "line" or "reading"
 * @param options.uReading standard uncertainty of the new reading, ≥ 0 [unit of y]
 * @param options.coverage share covered, between 0 and 1 [-]
 * @returns value and interval [unit of y]
 * @throws RangeError x is not finite, coverage is not between 0 and 1, or uReading is negative or needed
 * @example predictInterval(fitLine([0, 1, 2, 3], [1, 3, 5, 7.4]), 1.5, { of: "line" }).value // 4.1
 * @source N. R. Draper, H. Smith, Applied Regression Analysis, 3rd edition, 1998, chapter 3 (from memory); effective
 * degrees of freedom: JCGM 100:2008 (GUM), G.4.1
 */
export function predictInterval(fit: LineFit, x: number, options: LineIntervalOptions): LineInterval {
  const where = "predictInterval";
  const { of, coverage = 0.95 } = options;
  requireProbability(where, "coverage", coverage);
  if (of !== "line" && of !== "reading")
    throw new RangeError(`${where}: of must be "line" or "reading", got ${JSON.stringify(of)}`);
  const { value, standardUncertainty: uLine } = predictLine(fit, x);
  const reading = of === "line" ? noReading : readingPart(where, fit, options.uReading);
  const { u, dof } = together(fit, uLine, reading);
  const half = coverageFactor(coverage, dof) * u;
  return frozen(value, value - half, value + half, u, dof, coverage);
}

/**
 * Interval for the position at which a line has a given height, or at which a new reading was made (inverse
 * prediction, Fieller's method: exact for normal errors, not of first order).
 *
 * All x with |y − line(x)| ≤ k √(u²(line at x) + u²(reading)): with d = x − x̄, e = y − ȳ it is between the roots of
 * (b² − k² u²(b)) d² − 2 b e d + e² − k² (u²(ȳ) + u²(reading)) = 0
 *
 * Valid when: b differs from 0 by more than k u(b); else every position agrees with the height, and it throws. The
 * interval is not symmetric about the value; the standard uncertainty is that of `inverseLine`. Where degrees of
 * freedom are effective (line learnt, reading known), those at the value are used.
 *
 * @param fit a fitted line
 * @param y height [unit of y]
 * @param options.of "line": y is an exact height; "reading": y was read
 * @param options.uReading standard uncertainty of the reading, ≥ 0 [unit of y]
 * @param options.coverage share covered, between 0 and 1 [-]
 * @returns position and interval [unit of x]
 * @throws RangeError y is not finite, coverage is not between 0 and 1, uReading is negative or needed, or the slope
 * cannot be told from 0
 * @example inverseInterval(fitLine([0, 1, 2], [1, 3, 5], { u: 0.1 }), 3, { of: "line" }).value // 1
 * @source E. C. Fieller, Journal of the Royal Statistical Society B 16 (1954) 175-185 (from memory)
 */
export function inverseInterval(fit: LineFit, y: number, options: LineIntervalOptions): LineInterval {
  const where = "inverseInterval";
  const { of, coverage = 0.95 } = options;
  requireFinite(where, "y", y);
  requireProbability(where, "coverage", coverage);
  if (of !== "line" && of !== "reading")
    throw new RangeError(`${where}: of must be "line" or "reading", got ${JSON.stringify(of)}`);
  const reading = of === "line" ? noReading : readingPart(where, fit, options.uReading);
  const { slope, uSlope, uCentre, centre } = fit;
  const away = slope === 0 ? 0 : (y - centre.y) / slope;
  const { u, dof } = together(fit, Math.hypot(uCentre, away * uSlope), reading);
  const k = coverageFactor(coverage, dof);
  const leading = slope ** 2 - (k * uSlope) ** 2;
  if (!(leading > 0))
    throw new RangeError(
      `${where}: the slope must differ from 0 by more than ${k.toPrecision(3)} of its standard uncertainty, or any position agrees with the height; got slope ${slope}, standard uncertainty ${uSlope}`,
    );
  const e = y - centre.y;
  const root = k * Math.sqrt((e * uSlope) ** 2 + leading * (uCentre ** 2 + reading.u ** 2));
  const middle = (slope * e) / leading;
  return frozen(
    centre.x + away,
    centre.x + middle - root / leading,
    centre.x + middle + root / leading,
    u / Math.abs(slope),
    dof,
    coverage,
  );
}

/** The part a new reading has in an interval. */
interface ReadingPart {
  readonly u: number;
  /** Whether it was learnt from the same scatter as the line. */
  readonly learnt: boolean;
}

const noReading: ReadingPart = { u: 0, learnt: false };

function readingPart(where: string, fit: LineFit, u: number | undefined): ReadingPart {
  if (u !== undefined) {
    if (!(u >= 0 && u < Number.POSITIVE_INFINITY))
      throw new RangeError(`${where}: uReading must be 0 or greater and finite, got ${u}`);
    return { u, learnt: false };
  }
  const learnt = fit.residualStandardDeviation;
  if (!fit.scaled || learnt === null || fit.method === "weighted" || fit.method === "errors in both")
    throw new RangeError(
      `${where}: uReading must be given where readings have uncertainties of their own or known beforehand, got none`,
    );
  return { u: learnt, learnt: true };
}

/** Standard uncertainty of line and reading together, and its effective degrees of freedom. */
function together(
  fit: LineFit,
  uLine: number,
  { u, learnt }: ReadingPart,
): { readonly u: number; readonly dof: number } {
  const both = Math.hypot(uLine, u);
  if (!fit.scaled) return { u: both, dof: Number.POSITIVE_INFINITY };
  if (learnt || u === 0) return { u: both, dof: fit.degreesOfFreedom };
  return { u: both, dof: fit.degreesOfFreedom * (both / uLine) ** 4 };
}

function frozen(
  value: number,
  low: number,
  high: number,
  standardUncertainty: number,
  degreesOfFreedom: number,
  coverage: number,
): LineInterval {
  return Object.freeze({
    kind: "line interval",
    value,
    low,
    high,
    standardUncertainty,
    degreesOfFreedom,
    coverage,
  });
}
