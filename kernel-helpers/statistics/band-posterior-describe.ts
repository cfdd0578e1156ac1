import { bestStarts, edgeAt } from "./band-posterior-counts.js";
import { placesOfEdge, positionOfEdge, shortestRunOfGaps } from "./band-posterior-edges.js";
import type { WeighedSet } from "./band-posterior-gross.js";
import { flatGiven } from "./band-posterior-levels.js";
import type {
  EdgePlace,
  EdgePosition,
  PosteriorEdge,
  PosteriorGap,
  PosteriorSegment,
} from "./band-posterior-types.js";
import type { Weighed } from "./band-posterior-weighed.js";
import { BandSums, type LinePrior } from "./band-sums.js";

/**
 * The readings that count in one choice of gross readings or another, and what all choices say of the gaps between
 * them. Where a reading is gross, the edge lies anywhere in the wider gap alike.
 */
export interface Described {
  /** All positions as given, and the readings that count in any choice [index]. */
  readonly positions: readonly number[];
  readonly index: readonly number[];
  /** Their positions, from the first one given. */
  readonly x: Float64Array;
  readonly sets: readonly WeighedSet[];
  readonly line: LinePrior;
  /** Probability of an edge before reading s, by s. */
  readonly probability: Float64Array;
}

/** Puts the choices together. */
export function described(
  positions: readonly number[],
  sets: readonly WeighedSet[],
  line: LinePrior,
): Described {
  const counting = new Set(sets.flatMap(({ weighed }) => weighed.index));
  const index = [...counting].sort((a, b) => a - b);
  const x = Float64Array.from(index, (i) => positions[i]! - positions[0]!);
  const probability = new Float64Array(index.length + 1);
  for (const { weighed, probability: ofSet } of sets) {
    const { places, table, factor, readings } = weighed;
    const here = Float64Array.from({ length: readings.x.length + 1 }, (_, s) =>
      s > 0 && s < readings.x.length && places.weight[s]! > 0 ? edgeAt(table, s, factor) : 0,
    );
    addSpread(probability, here, ofSet, weighed, index, x);
  }
  return { positions, index, x, sets, line, probability: probability.map((p) => Math.min(1, p)) };
}

/** Adds what one choice says of its gaps, each shared among the finer ones by their width. */
function addSpread(
  into: Float64Array,
  here: Float64Array,
  weight: number,
  weighed: Weighed,
  index: readonly number[],
  x: Float64Array,
): void {
  let place = 0; // among the finer ones
  for (let s = 0; s < weighed.index.length; s++) {
    const last = place;
    while (index[place] !== weighed.index[s]) place += 1;
    const p = here[s]! * weight;
    if (s === 0 || p === 0) continue;
    const width = x[place]! - x[last]!;
    for (let i = last + 1; i <= place; i++) into[i]! += (p * (x[i]! - x[i - 1]!)) / width;
  }
}

/** Every gap that may hold an edge, along the line. */
export function gapsOf({ positions, index, x, probability }: Described): PosteriorGap[] {
  const gaps: PosteriorGap[] = [];
  for (let s = 1; s < index.length; s++) {
    if (x[s] === x[s - 1]) continue;
    const [after, before] = [index[s - 1]!, index[s]!];
    const [low, high] = [positions[after]!, positions[before]!];
    gaps.push(Object.freeze({ after, before, low, high, probability: probability[s]! }));
  }
  return gaps;
}

/** The choice in which the division into so many bands weighs most, and the starts of its bands. */
export function mostProbable(
  { sets }: Described,
  bands: number,
): { readonly weighed: Weighed; readonly starts: readonly number[] } | undefined {
  const weight = ({ weighed, probability }: WeighedSet): number =>
    probability * (weighed.bandCountProbability[bands - 1] ?? 0);
  const most = sets.reduce((a, b) => (weight(b) > weight(a) ? b : a));
  const { steps, table, readings } = most.weighed;
  if (!(table.reach[readings.x.length * table.width + bands]! > 0)) return undefined;
  return { weighed: most.weighed, starts: bestStarts(steps, bands) };
}

/** The edges of the division whose bands begin at the starts given. */
export function edgesOf(
  given: Described,
  { weighed, starts }: { readonly weighed: Weighed; readonly starts: readonly number[] },
  coverage: number,
): PosteriorEdge[] {
  const { positions, index, x, sets, probability } = given;
  const bands = starts.length;
  const total = sets.reduce(
    (sum, set) => sum + set.probability * set.weighed.bandCountProbability[bands - 1]!,
    0,
  );
  return starts.slice(1).map((s, i) => {
    const places = new Float64Array(index.length + 1);
    for (const set of sets) {
      const weight = (set.probability * set.weighed.bandCountProbability[bands - 1]!) / total;
      if (weight > 0)
        addSpread(places, placesOfEdge(set.weighed.table, bands, i + 1), weight, set.weighed, index, x);
    }
    const [after, before] = [weighed.index[s - 1]!, weighed.index[s]!];
    let [anywhere, here] = [0, 0];
    for (let k = index.indexOf(after) + 1; k <= index.indexOf(before); k++) {
      anywhere += probability[k]!;
      here += places[k]!;
    }
    const interval = shortestRunOfGaps(places, x, index, coverage);
    return Object.freeze({
      after,
      before,
      low: positions[after]!,
      high: positions[before]!,
      probability: Math.min(1, anywhere),
      probabilityGivenBands: Math.min(1, here),
      position: fromOrigin(positionOfEdge(places, x, coverage), positions[0]!),
      places: placesAbove(leastPlace, places, given),
      interval: Object.freeze({
        ...interval,
        low: positions[interval.after]!,
        high: positions[interval.before]!,
      }),
    });
  });
}

/** Less probable places of an edge are not listed. */
const leastPlace = 1e-12;

function placesAbove(
  least: number,
  places: Float64Array,
  { positions, index }: Described,
): readonly EdgePlace[] {
  const list: EdgePlace[] = [];
  for (let s = 1; s < index.length; s++)
    if (places[s]! >= least)
      list.push(
        Object.freeze({
          low: positions[index[s - 1]!]!,
          high: positions[index[s]!]!,
          probability: places[s]!,
        }),
      );
  return Object.freeze(list);
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
export function segmentsOf(
  { line }: Described,
  { weighed, starts }: { readonly weighed: Weighed; readonly starts: readonly number[] },
): PosteriorSegment[] {
  const { index, places, readings } = weighed;
  const { x, y, w, row, rowCount } = readings;
  return starts.map((s, k) => {
    const t = starts[k + 1] ?? x.length;
    const sums = new BandSums(rowCount, line);
    for (let i = s; i < t; i++) sums.add(row[i]!, w[i]!, x[i]!, y[i]!);
    const flat = flatGiven(sums, s <= places.lastFlat[t]!, s <= places.lastSloping[t]!);
    return Object.freeze({ from: index[s]!, to: index[t - 1]!, flatProbability: flat });
  });
}
