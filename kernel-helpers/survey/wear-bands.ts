import { type Length, measured } from "../quantity/index.js";
import { type Partition, type PartitionOptions, partition, type SegmentShape } from "../statistics/index.js";
import { bandInDoubt, grossChoices } from "./band-in-doubt.js";
import { type Divide, divideLearning, divideMeans } from "./divide-means.js";
import { beyondBoth, doubtfulReadings, mostToDoubt, usualNoise } from "./doubtful-readings.js";
import { type Expected, grossReadings, isSurelyGross } from "./gross-readings.js";
import type { BandEdge, Profile, WearBands } from "./profile-types.js";
import { withoutGross } from "./profile-without.js";
import { requireAgreeingReadings } from "./repeated-readings.js";
import { requireStations } from "./require-stations.js";
import { scatterWarning } from "./scatter-test.js";
import { screenReadings } from "./screen-readings.js";
import { secondOpinion } from "./second-opinion.js";
import { type StationMean, stationMeans } from "./station-means.js";
import { stationWarnings } from "./station-warnings.js";
import { heightAt, wearBand } from "./wear-band.js";
import { bandByAngle } from "./wear-bands-angles.js";
import { type EdgeProbability, mostStations, wearProbability } from "./wear-bands-probability.js";

/** What is asked of the bands. */
export interface WearBandsOptions {
  /** The diameter as made; without it no wear is judged. */
  readonly nominal?: Length;
  /** The smallest diameter allowed; carried along for the figure and the verdicts. */
  readonly limit?: Length;
  /** Wear that does not count as wear, on diameter; default 0. */
  readonly wornBeyond?: Length;
  /** Shapes a band may have; default flat and sloping. */
  readonly shapes?: readonly SegmentShape[];
  /** Fewest stations of a band, at least 2; default 2. */
  readonly minimumStations?: number;
  /** Cost of each parameter of a band, in chi-square [-]; default 2 ln of the number of stations. */
  readonly penalty?: number;
  /**
   * Whether to work out how probable each edge and the number of bands are. Default yes up to 400 stations: the
   * time grows with their square. At most 5000.
   */
  readonly edgeProbability?: boolean;
}

/**
 * The cost of a parameter is so many times ln n. With 1 (the Bayesian information criterion) a shaft of one diameter
 * read at 12 to 40 stations falls apart in 10 to 15 of 100 surveys; with 2 in less than 1 of 100 (found by trial), and
 * three stations worn by 3.2 u(mean) are still seen among 40.
 */
const penaltyByDefault = 2;

/**
 * In a survey of so few stations a band often has only three, and three may slope where each is the mean of several
 * screened readings. In a longer one a slope needs four: three would as well follow a gross reading.
 */
const shortSurvey = 20;

/**
 * Where no reading stands off its angle's band by so many uncertainties, nor beyond both its neighbours (for it may have
 * drawn its band to itself), none is likely gross.
 */
const worthDoubt = 3;
/** A reading that counts is named where it is gross with this probability. */
const leastDoubt = 0.05;

/**
 * Divides a shaft into bands of one shape each, and judges which are worn.
 *
 * 1. Gross readings are looked for among single readings, angle by angle: each angle's readings along the shaft
 *    are divided into bands on their own, and a reading that stands off by more than 6 standard uncertainties
 *    from its band there, with nothing beside it to bear it out, is flagged. It stays in the profile and has no
 *    weight. One-sided wear is a band at its angle, so it is never gross. Then all angles are weighed together
 *    (`bandPosterior` with rows): which readings are most probably gross, and how surely; these have no weight.
 * 2. The station means over the angles, u = √(Σu²)/m, are divided into bands by exact optimal partitioning: Σ
 *    (residual/u)² + penalty · parameters is least. The readings of one station share its position, so no edge
 *    falls between them; nor does ovality, which differs from angle to angle, count as noise. Where a station
 *    lacks an angle see `stationMeans`. A station whose mean stands off alone is flagged with all its readings.
 * 3. Bands and noise are weighed together: many bands in the noise stated, or fewer in a larger one, whichever is more
 *    probable (`divideLearning`). Where the stations scatter about the bands more than the instrument states (chi-square
 *    test, 1 %), uncertainties are widened by the noise seen, with degrees of freedom.
 *
 * 4. How probable each edge is in its gap, how far it may lie elsewhere (95 %), and how probable the number of bands
 *    is: see `bandPosterior`, with u as in 3 and its prior, which weighs where an edge is doubtful. Bands are those
 *    of 2. Where it is in doubt whether a reading is gross, edges, number of bands and the band's diameter are averaged
 *    over the choices, so that the doubt widens them. Where another number of bands is more probable, `bandCountProbability.runnerUp` says so.
 *
 * Band diameter: u² = u²(fit at the middle) + u²(common), effective degrees of freedom by Welch–Satterthwaite.
 * Edge: midway between the last station of one band and the first of the next, u = half the gap / √3.
 * Depth: nominal − diameter, on diameter (twice the depth on radius).
 *
 * Valid when: errors of single readings are independent and about normal. A band narrower than the step between
 * stations cannot be seen.
 *
 * 5. A second division in which no station can pull far (`secondOpinion`); where its edges are others, a warning says so.
 *
 * @param profile  the diameter along the shaft
 * @param options.nominal  diameter as made [m]
 * @param options.limit  smallest diameter allowed [m]
 * @param options.wornBeyond  wear on diameter that does not count, ≥ 0 [m]
 * @param options.shapes  shapes a band may have [-]
 * @param options.minimumStations  fewest stations of a band, ≥ 2 [-]
 * @param options.penalty  cost of each parameter, > 0 [-]
 * @param options.edgeProbability  whether to work out probabilities of edges and of the number of bands
 * @returns bands with diameters, depths [m] and states; edges [m] with their probability [-]; gross readings; noise
 * ratio [-]; the profile, its station means free of gross readings
 * @throws RangeError  fewer than 3 stations, an option outside its bound, or readings of one place that contradict each
 * other where nothing tells which is wrong
 * @example
 * const rows = ["0,2.4375", "1,2.4374", "2,2.4375", "3,2.4376", "4,2.4331", "5,2.4332", "6,2.4332", "7,2.4331"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * wearBands(profile, { nominal: inch(2.4375) }).bands.map(({ state }) => state) // ["as made", "worn"]
 * @source optimal partitioning: see `partition`; probabilities: see `bandPosterior`; edges: JCGM 100:2008 (GUM), 4.3.7; degrees of freedom: G.4.1
 */
export function wearBands(profile: Profile, options: WearBandsOptions = {}): WearBands {
  const { nominal, limit, wornBeyond, shapes, minimumStations = 2, penalty, edgeProbability } = options;
  requireStations("wearBands", profile, 3);
  if (!Number.isInteger(minimumStations) || minimumStations < 2)
    throw new RangeError(
      `wearBands: minimumStations must be a whole number of at least 2, got ${minimumStations}`,
    );
  if (wornBeyond !== undefined && !(wornBeyond.si >= 0))
    throw new RangeError(`wearBands: wornBeyond must be 0 or more, got ${wornBeyond}`);

  if (edgeProbability === true && profile.stations.length > mostStations)
    throw new RangeError(
      `wearBands: edgeProbability can be worked out for at most ${mostStations} stations, got ${profile.stations.length}`,
    );

  const penaltyOf = (stations: number): number => penalty ?? penaltyByDefault * Math.log(stations);
  const divideWith =
    (more: Pick<PartitionOptions, "minimumSlopingPoints">): Divide =>
    (x, y, u) =>
      partition(x, y, {
        ...more,
        u,
        minimumPoints: minimumStations,
        contradictions: "keep", // judged below, by the rows of the table
        ...(shapes === undefined ? {} : { shapes }),
        penalty: penaltyOf(x.length),
      });

  const off: number[] = [];
  let farthest = 0;
  const suspects = screenReadings(profile, profile.stations, (x, y, u) => {
    const { found } = divideLearning(x, y, u, divideWith({}));
    found.residuals.forEach((residual, i) => {
      off.push(Math.abs(residual) / u[i]!);
      farthest = Math.max(farthest, off[off.length - 1]!, beyondBoth(y, u, i));
    });
    return found.gross.map(({ index }) => index);
  });
  requireAgreeingReadings("wearBands", profile, suspects);
  const noise = usualNoise(off);
  const doubted =
    profile.readings.length <= mostToDoubt && farthest > worthDoubt * noise
      ? doubtfulReadings(profile, suspects, noise, shapes)
      : { gross: suspects, probability: new Map<number, number>(), sets: [] };
  const gross = new Set(doubted.gross);
  const means = stationMeans(profile, profile.stations, gross);
  if (means.length < 3)
    throw new RangeError(
      `wearBands: at least 3 stations with a sound reading are needed, got ${means.length}`,
    );
  const short =
    means.length <= shortSurvey && means.every(({ angles }) => angles === "all") && angleCount(means) > 1;
  const { parts, noiseRatio, widened, factor } = divideMeans(
    means,
    divideWith(short ? { minimumSlopingPoints: 3 } : {}),
  );
  for (const { index } of parts.gross) for (const i of means[index]!.station.readings) gross.add(i);

  const doubt = secondOpinion(means, parts, { factor, minimumStations, penalty: penaltyOf(means.length) });
  const alone = new Set(parts.gross.map(({ index }) => means[index]!.station));
  const choices = grossChoices(profile, doubted, means).map(({ of, probability }) => ({
    of: of.filter(({ station }) => !alone.has(station)),
    probability,
  }));
  const probable = wearProbability(
    choices,
    means,
    parts,
    widened,
    { minimumStations, shapes },
    edgeProbability,
  );
  const at = (i: number): Length => means[i]!.station.station;
  const aside = new Set(parts.gross.map(({ index }) => index));
  const surely = new Set([...gross].filter((i) => isSurelyGross(doubted.probability.get(i))));
  const dof = widened === 1 ? Number.POSITIVE_INFINITY : parts.degreesOfFreedom;
  const built = parts.segments.map((found, k) => {
    const [from, to] = [means[found.from]!.position, means[found.to]!.position];
    const segment = bandInDoubt(found, from, to, choices, widened);
    const members = means.slice(segment.from, segment.to + 1).filter((_, i) => !aside.has(segment.from + i));
    const byAngle = bandByAngle(profile, members, gross, surely, widened);
    const given = { profile, number: k + 1, segment, members, byAngle, widened, dof };
    return { band: wearBand(given, nominal, wornBeyond), segment, byAngle };
  });
  const expected = (index: number): Expected => {
    const { station, angle, standardUncertainty } = profile.readings[index]!;
    const { segment, byAngle } = built[nearestSegment(parts, means, station.si)]!;
    return {
      diameter: heightAt(segment, station.si) + byAngle.offsetAt(angle),
      u: standardUncertainty.si * widened,
    };
  };
  const sideOf = (i: number): number => Math.sign(profile.readings[i]!.diameter.si - expected(i).diameter);
  const alike = profile.stations.filter(
    ({ readings }) =>
      readings.length > 1 && readings.every((i) => gross.has(i) && sideOf(i) === sideOf(readings[0]!)),
  );
  const agreeing = new Set(alike.flatMap(({ readings }) => readings));
  const weighed = (index: number): number | undefined =>
    doubted.sets.length === 0 || agreeing.has(index) ? undefined : (doubted.probability.get(index) ?? 0);
  const listed = grossReadings(profile, gross, expected, weighed);
  const kept = [...doubted.probability].filter(([i, p]) => p >= leastDoubt && !gross.has(i)).map(([i]) => i);
  return Object.freeze<WearBands>({
    kind: "wear bands",
    profile: withoutGross(profile, means, gross),
    nominal,
    limit,
    bands: Object.freeze(built.map(({ band }) => band)),
    edges: Object.freeze(
      parts.edges.map(({ after, before }, k) => edgeBetween(at(after), at(before), probable.edges[k])),
    ),
    gross: listed,
    doubtful: grossReadings(profile, new Set(kept), expected, weighed),
    noiseRatio,
    degreesOfFreedom: parts.degreesOfFreedom,
    bandCountProbability: probable.bandCount,
    probabilityNote: probable.note,
    warnings: Object.freeze([
      ...profile.warnings,
      ...(widened === 1 ? [] : [scatterWarning(noiseRatio)]),
      ...(doubt === undefined ? [] : [doubt]),
      ...stationWarnings(profile, profile.stations, means, listed),
    ]),
  });
}

/** At how many angles a station is read. */
function angleCount(means: readonly StationMean[]): number {
  return Math.min(...means.map(({ station }) => station.readings.length));
}

function edgeBetween(after: Length, before: Length, probable: EdgeProbability | undefined): BandEdge {
  const half = before.minus(after).over(2);
  return Object.freeze({
    after,
    before,
    position: measured(after.plus(half), half.over(Math.sqrt(3))),
    probability: probable?.probability,
    interval: probable?.interval,
    reach: probable?.reach,
  });
}

/** The segment a station lies in, or the nearer one when it lies between two. */
function nearestSegment(parts: Partition, means: readonly StationMean[], station: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  parts.segments.forEach(({ from, to }, k) => {
    const outside = Math.max(means[from]!.position - station, station - means[to]!.position, 0);
    if (outside < least) [best, least] = [k, outside];
  });
  return best;
}
