import type { Plain } from "./plain-value.js";

/** How the sources of one group hang together: the matrix of their correlation coefficients. */
export interface CorrelatedGroup {
  readonly coefficients: readonly (readonly number[])[];
}

/**
 * One thing that is not known exactly: a reading, a certificate, a temperature. Two sources are the same only
 * when they are the same object, whatever their names.
 */
export interface Source {
  /** What it is called in a budget. */
  readonly name: string;
  /** One standard deviation, with unit. */
  readonly standardUncertainty: Plain;
  /** Infinity when the uncertainty is taken as known. */
  readonly degreesOfFreedom: number;
  /** The sources it is correlated with, and which of them it is; undefined for an independent one. */
  readonly correlated: { readonly group: CorrelatedGroup; readonly index: number } | undefined;
}

/** The correlation coefficient of two sources: 1 of one with itself, 0 of strangers. */
export function correlationOf(a: Source, b: Source): number {
  if (a === b) return 1;
  if (a.correlated === undefined || a.correlated.group !== b.correlated?.group) return 0;
  return a.correlated.group.coefficients[a.correlated.index]![b.correlated.index]!;
}
