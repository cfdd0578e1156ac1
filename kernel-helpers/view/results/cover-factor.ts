import { coverageFactor } from "../../statistics/coverage-factor.js";

/** The share that every uncertainty shown covers, two-sided, unless a label says otherwise. */
export const coverage = 0.95;

/** k of an uncertainty taken as known, such as that of a single reading. */
export const coverFactor: number = coverageFactor(coverage, Number.POSITIVE_INFINITY);
