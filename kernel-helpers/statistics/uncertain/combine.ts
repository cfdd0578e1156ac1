import { welchSatterthwaite } from "../welch-satterthwaite.js";
import { siOf } from "./plain-value.js";
import { correlationOf, type Source } from "./source.js";

/** Derivative of a value with respect to each of its sources, in SI units; none is 0. */
export type Derivatives = ReadonlyMap<Source, number>;

/** What the sources of a value make together. */
export interface Combined {
  /** Combined standard uncertainty [SI of the value]. */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  /** By source: signed contribution c·u [SI of the value] and share of the variance [-]. */
  readonly parts: ReadonlyMap<Source, { readonly contribution: number; readonly share: number }>;
}

/**
 * The law of propagation of uncertainty, with correlation.
 *
 * u² = Σᵢ Σⱼ cᵢ uᵢ r_ij cⱼ uⱼ; the share of source i is its row of that sum over u²
 *
 * Sources that are correlated make one component of the effective degrees of freedom, with the smallest
 * degrees of freedom among them: exact when all of them come from one fit, cautious otherwise (the
 * Welch–Satterthwaite formula itself is for independent ones).
 *
 * @source JCGM 100:2008 (GUM), 5.2.2, equation 16, and G.4.1
 */
export function combine(derivatives: Derivatives): Combined {
  const sources = [...derivatives.keys()];
  const contributions = sources.map((s) => derivatives.get(s)! * siOf(s.standardUncertainty));
  const largest = Math.max(0, ...contributions.map(Math.abs));
  const scaled = contributions.map((c) => (largest === 0 ? 0 : c / largest));
  const rows = sources.map((a, i) =>
    sources.reduce((sum, b, j) => sum + scaled[i]! * correlationOf(a, b) * scaled[j]!, 0),
  );
  // Rounding alone may bring a sum that cancels below 0.
  const variance = Math.max(
    0,
    rows.reduce((sum, row) => sum + row, 0),
  );
  const components = componentsOf(sources).map((members) => ({
    variance: Math.max(
      0,
      members.reduce((sum, i) => sum + rows[i]!, 0),
    ),
    degreesOfFreedom: Math.min(
      ...members.filter((i) => scaled[i] !== 0).map((i) => sources[i]!.degreesOfFreedom),
    ),
  }));
  return {
    standardUncertainty: largest * Math.sqrt(variance),
    degreesOfFreedom:
      components.length === 0
        ? Number.POSITIVE_INFINITY
        : welchSatterthwaite(
            components.map((c) => Math.sqrt(c.variance)),
            components.map((c) => c.degreesOfFreedom),
          ),
    parts: new Map(
      sources.map((source, i) => [
        source,
        { contribution: contributions[i]!, share: variance === 0 ? 0 : rows[i]! / variance },
      ]),
    ),
  };
}

/** Sources joined by a correlation, directly or through others; each by its place in the list. */
function componentsOf(sources: readonly Source[]): number[][] {
  const left = new Set(sources.keys());
  const components: number[][] = [];
  for (const first of sources.keys()) {
    if (!left.delete(first)) continue;
    const members = [first];
    for (const member of members)
      for (const other of [...left])
        if (correlationOf(sources[member]!, sources[other]!) !== 0) {
          left.delete(other);
          members.push(other);
        }
    components.push(members);
  }
  return components;
}
