import type { Walks } from "./band-posterior-counts.js";
import { placesOfEdge, positionOf, shortestInterval } from "./band-posterior-edges.js";
import { flatGiven } from "./band-posterior-levels.js";
import type { LinePrior } from "./band-posterior-model.js";
import type { EdgePlaces } from "./band-posterior-places.js";
import type { EdgePosition, PosteriorEdge, PosteriorGap, PosteriorSegment } from "./band-posterior-types.js";
import { RunningSums } from "./running-sums.js";

/** What the description of gaps, edges and bands needs. */
export interface Described {
  /** All positions as given, and which of them count. */
  readonly positions: readonly number[];
  readonly index: readonly number[];
  /** Readings that count. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly w: Float64Array;
  readonly places: EdgePlaces;
  readonly line: LinePrior;
  /** Probability of an edge before reading s, by s. */
  readonly probability: Float64Array;
}

function gapAt({ positions, index, probability }: Described, s: number): PosteriorGap {
  const after = index[s - 1]!;
  const before = index[s]!;
  const [low, high] = [positions[after]!, positions[before]!];
  return Object.freeze({ after, before, low, high, probability: probability[s]! });
}

/** Every gap that may hold an edge, along the line. */
export function gapsOf(given: Described): PosteriorGap[] {
  const { weight } = given.places;
  const gaps: PosteriorGap[] = [];
  for (let s = 1; s < given.x.length; s++) if (weight[s]! > 0) gaps.push(gapAt(given, s));
  return gaps;
}

/** The edges of the division whose bands begin at the starts given. */
export function edgesOf(
  given: Described,
  starts: readonly number[],
  table: Walks,
  coverage: number,
): PosteriorEdge[] {
  const { positions, index, x } = given;
  return starts.slice(1).map((s, i) => {
    const places = placesOfEdge(table, starts.length, i + 1);
    const interval = shortestInterval(places, x, index, coverage);
    return Object.freeze({
      ...gapAt(given, s),
      probabilityGivenBands: Math.min(1, places[s]!),
      position: fromOrigin(positionOf(places, x, coverage), positions[index[0]!]!),
      interval: Object.freeze({
        ...interval,
        low: positions[interval.after]!,
        high: positions[interval.before]!,
      }),
    });
  });
}

function fromOrigin({ value, standardUncertainty, low, high }: EdgePosition, origin: number): EdgePosition {
  return Object.freeze({
    value: value + origin,
    standardUncertainty,
    low: low + origin,
    high: high + origin,
  });
}

/** The bands that begin at the starts given. */
export function segmentsOf(given: Described, starts: readonly number[]): PosteriorSegment[] {
  const { index, x, y, w, places, line } = given;
  return starts.map((s, k) => {
    const t = starts[k + 1] ?? x.length;
    const sums = new RunningSums();
    for (let i = s; i < t; i++) sums.add(w[i]!, x[i]!, y[i]!);
    const flat = flatGiven(sums, line, s <= places.lastFlat[t]!, s <= places.lastSloping[t]!);
    return Object.freeze({ from: index[s]!, to: index[t - 1]!, flatProbability: flat });
  });
}
