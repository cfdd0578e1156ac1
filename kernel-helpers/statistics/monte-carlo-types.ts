import type { Correlation } from "./uncertain/correlation.js";
import type { Plain } from "./uncertain/plain-value.js";

/** How a simulation is run. */
export interface MonteCarloOptions {
  /** How often the function is evaluated, from 1000 to 10 000 000; default 100 000 [-]. */
  readonly draws?: number;
  /** Where the random numbers start; the same seed gives the same result, to the last digit [-]. */
  readonly seed: number;
  /** Share to be covered by the intervals, between 0 and 1; default 0.95 [-]. */
  readonly coverage?: number;
  /** Pairs of normal inputs that are correlated, each with its coefficient. */
  readonly correlations?: readonly Correlation[];
  /** Significant digits of the standard uncertainty that matter for the comparison, 1 or 2 (default 2) [-]. */
  readonly digits?: 1 | 2;
}

/** From where to where, with unit. */
export interface PlainInterval<V extends Plain> {
  readonly low: V;
  readonly high: V;
}

/** What a simulation gives. */
export interface MonteCarlo<V extends Plain> {
  readonly kind: "monte carlo";
  readonly draws: number;
  readonly seed: number;
  readonly coverage: number;
  /** Mean of the simulated values. */
  readonly estimate: V;
  /** Standard deviation of the simulated values. */
  readonly standardUncertainty: V;
  /** The narrowest interval that holds the share covered. */
  readonly shortest: PlainInterval<V>;
  /** The interval that leaves as much below as above. */
  readonly symmetric: PlainInterval<V>;
  /** How many simulated values lie in each of equal steps from histogram.from to histogram.to. */
  readonly histogram: Histogram<V>;
  readonly linear: LinearComparison<V>;
}

/** Counts of simulated values; the few outside are left out. */
export interface Histogram<V extends Plain> {
  readonly from: V;
  readonly to: V;
  readonly counts: readonly number[];
}

/** Linear propagation of the same inputs, and whether it will do. */
export interface LinearComparison<V extends Plain> {
  readonly value: V;
  readonly standardUncertainty: V;
  readonly degreesOfFreedom: number;
  readonly low: V;
  readonly high: V;
  /** How far the ends may differ: half of the last digit of the uncertainty that matters. */
  readonly tolerance: V;
  readonly agrees: "yes" | "no" | "cannot tell yet";
  /** The same in words, with the reason. */
  readonly verdict: string;
}
