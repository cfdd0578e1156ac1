import { coverageFactor } from "../coverage-factor.js";
import { alike, divided, type Plain, siOf } from "./plain-value.js";
import type { AnyUncertain } from "./uncertain-type.js";
import { isUncertainValue } from "./uncertain-value.js";

/** What the uncertainty of a value is made of. */
export interface Budget {
  readonly kind: "budget";
  /** What the value is, in words. */
  readonly title: string;
  readonly value: Plain;
  /** Combined standard uncertainty. */
  readonly standardUncertainty: Plain;
  /** Effective degrees of freedom (Welch–Satterthwaite). */
  readonly degreesOfFreedom: number;
  /** Share covered by the expanded uncertainty, two-sided [-]. */
  readonly coverage: number;
  readonly coverageFactor: number;
  /** Coverage factor times standard uncertainty. */
  readonly expanded: Plain;
  /** The sources, from the largest contribution down. */
  readonly rows: readonly BudgetRow[];
  /** Whether any two of them are correlated: the shares then hold their part of the covariances. */
  readonly isCorrelated: boolean;
  /** Set where value and sources are lengths over lengths, as a taper is: shown in thou per foot or µm per 100 mm. */
  readonly slope?: true;
}

/** One source in a budget. */
export interface BudgetRow {
  readonly source: string;
  readonly standardUncertainty: Plain;
  /** Change of the value for a unit of the source, with its unit. */
  readonly sensitivity: Plain;
  /** |sensitivity| times standard uncertainty. */
  readonly contribution: Plain;
  /** Share of the variance; all add up to 1. Below 0 where correlation makes a source cancel others [-]. */
  readonly share: number;
  readonly degreesOfFreedom: number;
}

/** How a budget is drawn up. */
export interface BudgetOptions {
  /** What the value is, e.g. "clearance at the drive end"; default "Uncertainty budget". */
  readonly title?: string;
  /** Share covered by the expanded uncertainty, between 0 and 1; default 0.95 [-]. */
  readonly coverage?: number;
  /** Of the combined uncertainty, where all sources rest on one estimate of scatter; default Welch–Satterthwaite [-]. */
  readonly degreesOfFreedom?: number;
  /** Whether the value and all its sources are lengths over lengths; default not. */
  readonly slope?: boolean;
}

/**
 * The uncertainty budget of a value: each source with what it contributes, the largest first.
 *
 * contribution = |∂y/∂x| u(x); share = (∂y/∂xᵢ) uᵢ Σⱼ r_ij (∂y/∂xⱼ) uⱼ / u²; U = t_p(ν) u
 *
 * @param of  an uncertain value with at least one source
 * @param options.coverage  share covered by the expanded uncertainty, between 0 and 1, default 0.95 [-]
 * @param options.degreesOfFreedom  of the combined uncertainty, > 0, where the sources share one estimate of scatter [-]
 * @param options.slope  whether value and sources are lengths over lengths, as a taper is; changes nothing but how they are shown [-]
 * @returns the budget
 * @throws TypeError   it is no uncertain value
 * @throws RangeError  it is exact and has no budget, no source contributes anything, or the coverage is not between 0 and 1
 * @example
 * const bore = uncertain(measured(inch(2.4405), inch(0.0003)), "bore gauge");
 * const shaft = uncertain(measured(inch(2.4375), inch(0.0004)), "micrometer");
 * budget(bore.minus(shaft)).rows[0] // { source: "micrometer", share: 0.64 }
 * @source JCGM 100:2008 (GUM), 5.1.3, 7.2.1 and table H.1
 */
export function budget(of: AnyUncertain, options: BudgetOptions = {}): Budget {
  const { title = "Uncertainty budget", coverage = 0.95, slope = false } = options;
  if (!isUncertainValue(of))
    throw new TypeError(`budget: an uncertain value was expected, got ${String(of)}`);
  const { value, standardUncertainty, sources } = of;
  const { degreesOfFreedom = of.degreesOfFreedom } = options;
  if (sources.length === 0)
    throw new RangeError(`budget: the value must have an uncertain source, got the exact ${value}`);
  // Where correlated sources cancel there is much to show, though nothing is left.
  if (sources.every(({ contribution }) => contribution === 0))
    throw new RangeError(
      `budget: the value must have an uncertainty to share out, got 0 for ${value} from ${sources.map(({ source }) => source.name).join(", ")}; give a source a standard uncertainty above 0, or leave it exact`,
    );
  const k = coverageFactor(coverage, degreesOfFreedom);
  const rows = [...sources]
    .sort((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution))
    .map(({ source, derivative, contribution, share }) =>
      Object.freeze({
        source: source.name,
        standardUncertainty: source.standardUncertainty,
        sensitivity: perUnit(value, source.standardUncertainty, derivative),
        contribution: alike(value, Math.abs(contribution)),
        share,
        degreesOfFreedom: source.degreesOfFreedom,
      }),
    );
  return Object.freeze({
    kind: "budget",
    title,
    value,
    standardUncertainty,
    degreesOfFreedom,
    coverage,
    coverageFactor: k,
    expanded: alike(value, k * siOf(standardUncertainty)),
    rows: Object.freeze(rows),
    isCorrelated: sources.some(
      ({ contribution, share }) =>
        Math.abs(share * siOf(standardUncertainty) ** 2 - contribution ** 2) >
        1e-9 * siOf(standardUncertainty) ** 2,
    ),
    ...(slope ? { slope: true as const } : {}),
  });
}

/** A derivative as a quantity of its own kind: of the value over the source. */
function perUnit(value: Plain, source: Plain, si: number): Plain {
  const pattern = divided(alike(value, 1), alike(source, 1));
  return alike(pattern, si);
}
