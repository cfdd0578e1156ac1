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
  readonly minimumPositions: number;
  /** The row of each reading, 0, 1, 2, … */
  readonly rows: readonly number[];
  readonly rowCount: number;
  readonly grossProbability: number;
  readonly coverage: number;
}

/** More readings would need a table of more than 100 megabytes. */
export const mostReadings = 5000;
const mostBands = 200;
const mostRows = 64;
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
  const { grossProbability = 0.01, coverage = 0.95, maximumBands = 20, at = [] } = options;
  const { minimumPositions = 1 } = options;
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
  requireWhole("minimumPositions", minimumPositions, 1);
  if (!(grossProbability >= 0 && grossProbability < 0.5))
    throw new RangeError(
      `${where}: grossProbability must be from 0 to less than 0.5, got ${grossProbability}`,
    );
  requireProbability(where, "coverage", coverage);
  if (options.levelCentre !== undefined) requireFinite(where, "levelCentre", options.levelCentre);
  for (const name of ["levelSpread", "slopeSpread", "rowSpread", "grossRange"] as const) {
    const value = options[name];
    if (value === undefined) continue;
    requireFinite(where, name, value);
    if (value <= 0) throw new RangeError(`${where}: ${name} must be greater than 0, got ${value}`);
  }
  if (options.bands !== undefined) requireWhole("bands", options.bands, 1, maximumBands);
  requireFiniteList(where, "at", at, 0);
  const { rows, rowCount } = rowsOf(options.rows, n);
  if (rowCount > 1 && at.length > 0)
    throw new RangeError(`${where}: at is for readings of one row, got ${rowCount} rows`);
  for (const i of options.suspects ?? [])
    if (!(Number.isInteger(i) && i >= 0 && i < n))
      throw new RangeError(`${where}: suspects must be indices of readings, 0 to ${n - 1}, got ${i}`);
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
    minimumPositions,
    rows,
    rowCount,
    grossProbability,
    coverage,
  };
}

/** The rows numbered from 0 in the order in which they come. */
function rowsOf(
  given: readonly (number | string)[] | undefined,
  n: number,
): { readonly rows: readonly number[]; readonly rowCount: number } {
  if (given === undefined) return { rows: new Array<number>(n).fill(0), rowCount: 1 };
  if (given.length !== n)
    throw new RangeError(`${where}: rows must name one row a reading (${n}), got ${given.length}`);
  const number = new Map<number | string, number>();
  const rows = given.map((name) => {
    const known = number.get(name) ?? number.size;
    number.set(name, known);
    return known;
  });
  if (number.size > mostRows)
    throw new RangeError(`${where}: rows may name at most ${mostRows} rows, got ${number.size}`);
  return { rows, rowCount: number.size };
}

function requireWhole(name: string, value: number, least: number, most?: number): void {
  if (Number.isInteger(value) && value >= least && (most === undefined || value <= most)) return;
  const rule = most === undefined ? `of at least ${least}` : `from ${least} to ${most}`;
  throw new RangeError(`${where}: ${name} must be a whole number ${rule}, got ${value}`);
}
