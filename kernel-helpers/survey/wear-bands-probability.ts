import { type Length, quantityFromSi } from "../quantity/index.js";
import {
  type BandPosterior,
  bandPosterior,
  type EdgePlace,
  type Partition,
  positionOfEdge,
  type SegmentShape,
  shortestRunOfGaps,
} from "../statistics/index.js";
import type { GrossChoice } from "./band-in-doubt.js";
import { scaled } from "./divide-means.js";
import type { BandCountProbability, EdgeReach, EdgeStretch, ProfileStation } from "./profile-types.js";
import type { StationMean } from "./station-means.js";

/** How probable the edges and the number of bands are, or why that was not worked out. */
export interface WearProbability {
  /** One an edge, along the shaft; empty where not worked out. */
  readonly edges: readonly EdgeProbability[];
  readonly bandCount: BandCountProbability | undefined;
  /** Why not worked out, a sentence; "" where it was. */
  readonly note: string;
}

export interface EdgeProbability {
  readonly probability: number;
  readonly interval: EdgeStretch | undefined;
  readonly reach: EdgeReach | undefined;
}

/** Up to so many stations it takes less time than finding the bands twice; beyond, it must be asked for. */
export const stationsByDefault = 400;
/** Limits of bandPosterior. */
export const mostStations = 5000;
const mostBands = 200;

/**
 * Probability of each edge and of the number of bands, given the noise seen or stated.
 *
 * See `bandPosterior`, with its prior: one band more is a quarter as likely as one less, all places alike, heights
 * spread as the diameters are. The prior weighs where an edge is doubtful and not where it is plain.
 *
 * Where it is in doubt which readings are gross, summed over the choices (see `grossChoices`): each gives station
 * means of its own, and its edges count by its probability. So a reading that is as likely gross as not widens an edge
 * by the half that speaks against it.
 *
 * @param choices  which readings may be gross, the stations that stand off alone left out
 * @param means  the station means divided
 * @param parts  the bands found
 * @param widened  factor on the uncertainties of the means [-]
 * @param rules  fewest stations of a band, and its shapes, as they were for the bands
 * @param wanted  true or false as asked; undefined for up to 400 stations only
 */
export function wearProbability(
  choices: readonly GrossChoice[],
  means: readonly StationMean[],
  parts: Partition,
  widened: number,
  rules: { readonly minimumStations: number; readonly shapes: readonly SegmentShape[] | undefined },
  wanted: boolean | undefined,
): WearProbability {
  const found = parts.segments.length;
  const left = (note: string): WearProbability => ({ edges: [], bandCount: undefined, note });
  if (wanted === false) return left("The probability of edges and bands was not asked for.");
  if (wanted === undefined && means.length > stationsByDefault)
    return left(
      `The probability of edges and bands is not worked out for more than ${stationsByDefault} stations (${means.length} here) unless asked for with edgeProbability: true.`,
    );
  if (found > mostBands)
    return left(
      `The probability of edges and bands is not worked out for more than ${mostBands} bands (${found} here).`,
    );
  const accounts = choices.map(
    ({ of, probability }): Account => ({
      of,
      probability,
      posterior: bandPosterior(
        of.map(({ position }) => position),
        of.map(({ diameter }) => diameter),
        {
          u: scaled(
            of.map(({ u }) => u),
            widened,
          ),
          ...(rules.shapes === undefined ? {} : { shapes: rules.shapes }),
          minimumPoints: rules.minimumStations,
          maximumBands: Math.min(mostBands, Math.max(20, 2 * found)),
          bands: found,
          grossProbability: 0, // weighed already
        },
      ),
    }),
  );
  const line = stationsOf(accounts);
  return {
    edges: parts.edges.map(({ after, before }, k) => {
      const { low, high } = { low: means[after]!.position, high: means[before]!.position };
      const probability = accounts.reduce(
        (sum, account) => sum + account.probability * within(account.posterior.gaps, low, high),
        0,
      );
      return { probability: Math.min(1, probability), ...whereabouts(accounts, line, k, found) };
    }),
    bandCount: bandCountOf(
      accounts[0]!.posterior.bandCountProbability.map((_, k) =>
        accounts.reduce(
          (sum, one) => sum + one.probability * (one.posterior.bandCountProbability[k] ?? 0),
          0,
        ),
      ),
      found,
    ),
    note: "",
  };
}

interface Account extends GrossChoice {
  readonly posterior: BandPosterior;
}

/** Every station that counts in one choice or another, along the shaft. */
function stationsOf(choices: readonly GrossChoice[]): readonly ProfileStation[] {
  const stations = new Set(choices.flatMap(({ of }) => of.map(({ station }) => station)));
  return [...stations].sort((a, b) => a.station.si - b.station.si);
}

/** Probability of an edge from one position to another; in a wider gap it lies anywhere alike. */
function within(places: readonly EdgePlace[], low: number, high: number): number {
  return places.reduce((sum, place) => {
    const shared = Math.min(high, place.high) - Math.max(low, place.low);
    return shared > 0 ? sum + (place.probability * shared) / (place.high - place.low) : sum;
  }, 0);
}

/** Where an edge lies by all choices, each counting as it makes the number of bands found probable. */
function whereabouts(
  accounts: readonly Account[],
  line: readonly ProfileStation[],
  k: number,
  found: number,
): Pick<EdgeProbability, "interval" | "reach"> {
  const x = Float64Array.from(line, ({ station }) => station.si - line[0]!.station.si);
  const places = new Float64Array(x.length + 1);
  let total = 0;
  for (const { posterior, probability } of accounts) {
    const edge = posterior.edges[k];
    const weight = probability * (posterior.bandCountProbability[found - 1] ?? 0);
    if (edge === undefined || weight === 0) continue;
    total += weight;
    for (let s = 1; s < x.length; s++)
      places[s]! += weight * within(edge.places, line[s - 1]!.station.si, line[s]!.station.si);
  }
  if (total === 0) return { interval: undefined, reach: undefined };
  const shares = places.map((p) => p / total);
  const at = (i: number): Length => line[i]!.station;
  const { after, before, probability } = shortestRunOfGaps(
    shares,
    x,
    line.map((_, i) => i),
    0.95,
  );
  const { low, high } = positionOfEdge(shares, x, 0.95);
  const place = (si: number): Length =>
    quantityFromSi("length", si + line[0]!.station.si, line[0]!.station.writtenIn as never);
  return {
    interval: Object.freeze({ after: at(after), before: at(before), probability }),
    reach: Object.freeze({ low: place(low), high: place(high) }),
  };
}

function bandCountOf(all: readonly number[], found: number): BandCountProbability {
  let runner: BandCountProbability["runnerUp"];
  all.forEach((probability, k) => {
    if (k + 1 !== found && probability > (runner?.probability ?? 0)) runner = { bands: k + 1, probability };
  });
  return Object.freeze({
    found: all[found - 1] ?? 0,
    runnerUp: runner === undefined ? undefined : Object.freeze(runner),
    all,
  });
}
