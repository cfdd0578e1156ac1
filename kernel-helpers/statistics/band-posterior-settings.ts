import type { BandPosteriorOptions } from "./band-posterior-types.js";
import {
  requireFinite,
  requireFiniteList,
  requireProbability,
  requireSameLength,
  uncertaintyList,
} from "./check.js";
import { fewestPositions, type SegmentShape } from "./partition-search.js";

/** The rules of a posterior, checked and with their defaults. */
export interface PosteriorSettings {
  readonly u: readonly number[];
  readonly shapes: readonly SegmentShape[];
  readonly minimumPoints: number;
  readonly minimumSlopingPoints: number;
  readonly maximumBands: number;
  readonly bandCountPrior: readonly number[];
  readonly edgePrior: "gaps" | "length";
  readonly grossErrorLimit: number;
  readonly coverage: number;
}

/** More readings would need a table of more than 100 megabytes. */
export const mostReadings = 5000;
const mostBands = 200;
/** How likely one band more is beforehand, against one less. */
const furtherBand = 1 / 4;
const where = "bandPosterior";

/** Checks readings and options that do not depend on which readings count. */
export function posteriorSettings(
  positions: readonly number[],
  values: readonly number[],
  options: BandPosteriorOptions,
): PosteriorSettings {
  const { shapes = ["flat", "sloping"], minimumPoints = 2, edgePrior = "gaps" } = options;
  const { grossErrorLimit = 6, coverage = 0.95, maximumBands = 20, at = [] } = options;
  requireWhole("minimumPoints", minimumPoints, 1);
  requireFiniteList(where, "positions", positions, minimumPoints);
  requireFiniteList(where, "values", values, minimumPoints);
  requireSameLength(where, "positions", positions, "values", values);
  const n = positions.length;
  if (n > mostReadings)
    throw new RangeError(`${where}: at most ${mostReadings} readings can be weighed, got ${n}`);
  for (let i = 1; i < n; i++)
    if (positions[i]! < positions[i - 1]!)
      throw new RangeError(
        `${where}: positions must ascend, got ${positions[i]} at index ${i} after ${positions[i - 1]}`,
      );
  const u = uncertaintyList(where, "u", options.u, n);
  if (shapes.length === 0) throw new RangeError(`${where}: shapes needs at least one shape, got none`);
  for (const shape of shapes)
    if (shape !== "flat" && shape !== "sloping")
      throw new RangeError(`${where}: shapes may hold "flat" and "sloping", got ${JSON.stringify(shape)}`);
  const minimumSlopingPoints =
    options.minimumSlopingPoints ?? (new Set(positions).size > fewestPositions ? 4 : fewestPositions);
  requireWhole("minimumSlopingPoints", minimumSlopingPoints, fewestPositions);
  requireWhole("maximumBands", maximumBands, 1, mostBands);
  if (edgePrior !== "gaps" && edgePrior !== "length")
    throw new RangeError(`${where}: edgePrior must be "gaps" or "length", got ${JSON.stringify(edgePrior)}`);
  if (!(grossErrorLimit > 0))
    throw new RangeError(`${where}: grossErrorLimit must be greater than 0, got ${grossErrorLimit}`);
  requireProbability(where, "coverage", coverage);
  if (options.levelCentre !== undefined) requireFinite(where, "levelCentre", options.levelCentre);
  for (const name of ["levelSpread", "slopeSpread"] as const) {
    const value = options[name];
    if (value === undefined) continue;
    requireFinite(where, name, value);
    if (value <= 0) throw new RangeError(`${where}: ${name} must be greater than 0, got ${value}`);
  }
  if (options.bands !== undefined) requireWhole("bands", options.bands, 1, maximumBands);
  requireFiniteList(where, "at", at, 0);
  const bandCountPrior =
    options.bandCountPrior ?? Array.from({ length: maximumBands }, (_, k) => furtherBand ** k);
  requireFiniteList(where, "bandCountPrior", bandCountPrior, 1);
  if (bandCountPrior.length > maximumBands)
    throw new RangeError(
      `${where}: bandCountPrior may have one value a number of bands (maximumBands, ${maximumBands}), got ${bandCountPrior.length}`,
    );
  if (bandCountPrior.some((p) => p < 0) || !bandCountPrior.some((p) => p > 0))
    throw new RangeError(
      `${where}: bandCountPrior must hold values of 0 or more, one of them above 0, got ${bandCountPrior.join(", ")}`,
    );
  return {
    u,
    shapes,
    minimumPoints,
    minimumSlopingPoints,
    maximumBands,
    bandCountPrior,
    edgePrior,
    grossErrorLimit,
    coverage,
  };
}

function requireWhole(name: string, value: number, least: number, most?: number): void {
  if (Number.isInteger(value) && value >= least && (most === undefined || value <= most)) return;
  const rule = most === undefined ? `of at least ${least}` : `from ${least} to ${most}`;
  throw new RangeError(`${where}: ${name} must be a whole number ${rule}, got ${value}`);
}
