import { type Length, quantityFromSi } from "../quantity/index.js";
import { bandPosterior, type Partition, type SegmentShape } from "../statistics/index.js";
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
 * @param means  the station means divided
 * @param parts  the bands found; stations put aside count no more
 * @param widened  factor on the uncertainties of the means [-]
 * @param rules  fewest stations of a band, and its shapes, as they were for the bands
 * @param wanted  true or false as asked; undefined for up to 400 stations only
 */
export function wearProbability(
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
  const aside = new Set(parts.gross.map(({ index }) => index));
  const kept = means.map((_, i) => i).filter((i) => !aside.has(i));
  const of = kept.map((i) => means[i]!);
  const posterior = bandPosterior(
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
      grossErrorLimit: Number.POSITIVE_INFINITY, // looked for already
    },
  );
  const stretch = (k: number): EdgeStretch | undefined => {
    const interval = posterior.edges[k]?.interval;
    if (interval === undefined) return undefined;
    const { after, before, probability } = interval;
    const at = (i: number): ProfileStation["station"] => of[i]!.station.station;
    return Object.freeze({ after: at(after), before: at(before), probability });
  };
  const reach = (k: number): EdgeReach | undefined => {
    const position = posterior.edges[k]?.position;
    if (position === undefined) return undefined;
    const place = (si: number): Length =>
      quantityFromSi("length", si, of[0]!.station.station.writtenIn as never);
    return Object.freeze({ low: place(position.low), high: place(position.high) });
  };
  const byStation = new Map(posterior.gaps.map((gap) => [kept[gap.after], gap.probability]));
  return {
    edges: parts.edges.map(({ after }, k) => ({
      probability: byStation.get(after) ?? 0,
      interval: stretch(k),
      reach: reach(k),
    })),
    bandCount: bandCountOf(posterior.bandCountProbability, found),
    note: "",
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
