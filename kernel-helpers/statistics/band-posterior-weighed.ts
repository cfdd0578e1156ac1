import { type Walks, walks } from "./band-posterior-counts.js";
import { divisionWeights, type EdgePlaces, edgePlaces } from "./band-posterior-places.js";
import type { PosteriorSettings } from "./band-posterior-settings.js";
import { type BackwardSteps, backwardSteps, type WeightedReadings } from "./band-posterior-steps.js";
import { BandSums, type LinePrior } from "./band-sums.js";

/** Shares below e^−80, 2e-35, of what matters are left out. */
const smallest = 80;

/** All readings, reckoned from an origin, and what is believed whichever of them are gross. */
export interface Surveyed {
  readonly readings: WeightedReadings;
  readonly line: LinePrior;
  readonly settings: PosteriorSettings;
  readonly maximumBands: number;
  /** Width of the range in which a gross reading lies anywhere alike [unit of value]. */
  readonly grossRange: number;
}

/** All divisions of the readings that are not gross, summed. */
export interface Weighed {
  /** Readings taken for gross, ascending [index]; and those that count. */
  readonly gross: readonly number[];
  readonly index: readonly number[];
  readonly readings: WeightedReadings;
  readonly places: EdgePlaces;
  readonly steps: BackwardSteps;
  readonly table: Walks;
  /** Weight of each number of bands, made so that the probabilities add to 1. */
  readonly factor: Float64Array;
  /** Probability of 1, 2, 3, … bands beforehand and by the readings [-]. */
  readonly prior: readonly number[];
  readonly bandCountProbability: readonly number[];
  /** Logarithm of the probability that just these are gross, times the density of all readings then. */
  readonly logWeight: number;
}

/**
 * Sums over all divisions of the readings that count when the others are gross.
 *
 * weight = ε^g (1 − ε)^(n−g) · R^−g · density of the n − g readings that count, ε the probability that a reading is
 * gross, R the range in which it then lies anywhere alike
 *
 * @returns null where the readings that count allow no division
 */
export function weighed(all: Surveyed, gross: readonly number[]): Weighed | null {
  const { line, settings, maximumBands, grossRange } = all;
  const aside = new Set(gross);
  const index: number[] = [];
  for (let i = 0; i < all.readings.x.length; i++) if (!aside.has(i)) index.push(i);
  const n = index.length;
  if (n === 0) return null;
  const readings = picked(all.readings, index);
  const { x, w } = readings;
  const { shapes, minimumPoints, minimumSlopingPoints, minimumPositions } = settings;
  const fewest = {
    flat: shapes.includes("flat") ? minimumPoints : Number.POSITIVE_INFINITY,
    sloping: shapes.includes("sloping")
      ? Math.max(minimumPoints, minimumSlopingPoints)
      : Number.POSITIVE_INFINITY,
    positions: minimumPositions,
  };
  const places = edgePlaces(
    x,
    fewest,
    settings.edgePrior,
    edgesExpected(settings.bandCountPrior, maximumBands),
  );
  const factors = countFactors(places, settings.bandCountPrior, maximumBands);
  if (factors === null) return null;
  const sums = new BandSums(readings.rowCount, line);
  for (let i = 0; i < n; i++) sums.add(readings.row[i]!, w[i]!, x[i]!, readings.y[i]!);
  sums.weigh();
  const cut = smallest + Math.log(2) + 0.5 * Math.log(sums.spread * sums.slopeSpread) + factors.imbalance;
  const steps = backwardSteps(readings, places, line, cut);
  const table = walks(steps, maximumBands);
  const each = Array.from(
    { length: maximumBands },
    (_, k) => table.reach[n * table.width + k + 1]! * factors.factor[k + 1]!,
  );
  const total = each.reduce((a, b) => a + b, 0);
  const { grossProbability } = settings;
  const priorOfGross =
    grossProbability === 0
      ? 0
      : gross.length * Math.log(grossProbability / grossRange) + n * Math.log1p(-grossProbability);
  return {
    gross,
    index,
    readings,
    places,
    steps,
    table,
    factor: factors.factor.map((f) => f / total),
    prior: factors.prior,
    bandCountProbability: each.map((v) => v / total),
    logWeight:
      priorOfGross +
      steps.logTotal +
      Math.log(total) +
      w.reduce((sum, wi) => sum + 0.5 * Math.log(wi / (2 * Math.PI)), 0),
  };
}

/** The readings of the indices given. */
function picked({ x, y, w, row, rowCount }: WeightedReadings, index: readonly number[]): WeightedReadings {
  return {
    x: Float64Array.from(index, (i) => x[i]!),
    y: Float64Array.from(index, (i) => y[i]!),
    w: Float64Array.from(index, (i) => w[i]!),
    row: Int32Array.from(index, (i) => row[i]!),
    rowCount,
  };
}

/** Total weight of the edges that keeps the weights of few and of many bands alike, so that none is lost. */
function edgesExpected(bandCountPrior: readonly number[], maximumBands: number): number {
  const possible = bandCountPrior.flatMap((p, k) => (p > 0 ? [k] : []));
  const [first, last] = [possible[0]!, possible[possible.length - 1]!];
  const ratio = last > first ? (bandCountPrior[last]! / bandCountPrior[first]!) ** (1 / (last - first)) : 1;
  return (ratio * Math.max(3, maximumBands)) / 3;
}

/**
 * For each number of bands its prior and the factor that turns the weight of its divisions into that prior; and
 * the logarithm of how much these factors differ. Null where no number is possible.
 */
function countFactors(
  places: EdgePlaces,
  given: readonly number[],
  maximumBands: number,
): { readonly prior: number[]; readonly factor: Float64Array; readonly imbalance: number } | null {
  const weights = divisionWeights(places, maximumBands);
  const wanted = Array.from({ length: maximumBands }, (_, k) => (weights[k + 1]! > 0 ? (given[k] ?? 0) : 0));
  const total = wanted.reduce((a, b) => a + b, 0);
  if (total === 0) return null;
  const prior = wanted.map((v) => v / total);
  const factor = new Float64Array(maximumBands + 1);
  prior.forEach((p, k) => {
    if (p > 0) factor[k + 1] = p / weights[k + 1]!;
  });
  const used = [...factor].filter((f) => f > 0);
  return { prior, factor, imbalance: Math.log(Math.max(...used) / Math.min(...used)) };
}
