import { formatNumber } from "../quantity/index.js";
import { type Partition, type PartitionSegment, robustPartition } from "../statistics/index.js";
import { scaled } from "./divide-means.js";
import type { StationMean } from "./station-means.js";

/** What the bands were found with. */
export interface SecondOpinionRules {
  /** Factor on the stated uncertainty [-]. */
  readonly factor: number;
  readonly minimumStations: number;
  /** Cost of each parameter [-]. */
  readonly penalty: number;
}

/** The time grows with up to the square of the stations. */
const mostStations = 2000;

/** Two edges, by the stations on either side [index]. */
interface Gap {
  readonly after: number;
  readonly before: number;
}

/**
 * Whether the bands hold where no single station can pull far, a sentence where they do not.
 *
 * The stations are divided a second time, by `robustPartition`, in which a station counts for no more than one that
 * stands off by √((4 penalty + 6)/3) uncertainties (3.3 at 26 stations): as little as still lets three stations, however
 * far off, be a band (within a row it costs 4 penalties, and its own noise). So this is told, too, of a band that rests
 * on two stations. Neighbouring flat bands are divided together; a sloping band by itself, less its line; so edges to
 * sloping bands are not judged. An edge agrees where the gap of the first division holds that of the second.
 *
 * How much it sees, of 1800 drawn surveys with one reading off by 0.8 to 1.2 thou beside an edge of a 1 thou step (two
 * angles, noise 0.15 thou, 26 to 100 stations): in 311 that moved an edge and was not called gross; of those it tells of
 * 94. In most of the others the station then lies nearer to the band next door than to its own, and the edge moves in
 * any division: against that only a further reading helps. Where all readings are honest it said nothing in 400 surveys.
 *
 * @param means  the station means [m]
 * @param parts  the bands chosen
 * @param rules  what they were found with
 * @returns a sentence, or undefined where both agree or there are too many stations
 * @source judgement, no source; see `robustPartition`
 */
export function secondOpinion(
  means: readonly StationMean[],
  parts: Partition,
  { factor, minimumStations, penalty }: SecondOpinionRules,
): string | undefined {
  if (means.length > mostStations) return undefined;
  const limit = Math.sqrt((4 * penalty + 6) / 3);
  const u = scaled(
    means.map((mean) => mean.u),
    factor,
  );
  const gone: Gap[] = [];
  const come: Gap[] = [];
  for (const run of runsOf(parts.segments)) {
    const from = run[0]!.from;
    const to = run[run.length - 1]!.to;
    const x = means.slice(from, to + 1).map(({ position }) => position);
    const { slope } = run[0]!;
    const y = means.slice(from, to + 1).map(({ diameter, position }) => diameter - slope * position);
    const again = robustPartition(x, y, {
      u: u.slice(from, to + 1),
      limit,
      minimumPoints: minimumStations,
      penalty,
    });
    const chosen = parts.edges.filter(({ after, before }) => after >= from && before <= to);
    const second = again.segments.slice(1).map((s) => ({ after: from + s.from - 1, before: from + s.from }));
    const same = (a: Gap, b: Gap): boolean => a.after <= b.after && b.before <= a.before;
    gone.push(...chosen.filter((edge) => !second.some((other) => same(edge, other))));
    come.push(...second.filter((edge) => !chosen.some((other) => same(other, edge))));
  }
  if (gone.length === 0 && come.length === 0) return undefined;
  const between = ({ after, before }: Gap): string =>
    `between ${means[after]!.station.station} and ${means[before]!.station.station}`;
  const told = [
    ...(gone.length === 0 ? [] : [`finds no edge ${gone.map(between).join(" nor ")}`]),
    ...(come.length === 0 ? [] : [`finds an edge ${come.map(between).join(" and ")}`]),
  ].join(", but ");
  return `A second division, in which no station counts for more than ${formatNumber(limit, 2)} uncertainties, ${told}: one or two stations carry the difference. Read there again.`;
}

/** Flat bands side by side together, sloping ones each alone. */
function runsOf(segments: readonly PartitionSegment[]): PartitionSegment[][] {
  const runs: PartitionSegment[][] = [];
  for (const segment of segments) {
    const last = runs[runs.length - 1];
    if (last !== undefined && segment.shape === "flat" && last[0]!.shape === "flat") last.push(segment);
    else runs.push([segment]);
  }
  return runs;
}
