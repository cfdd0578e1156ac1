import type { SegmentLine } from "../statistics/index.js";
import type { DoubtfulReadings } from "./doubtful-readings.js";
import type { Profile } from "./profile-types.js";
import { type StationMean, stationMeans } from "./station-means.js";

/** The station means if certain readings are gross, and how probable that is. */
export interface GrossChoice {
  readonly of: readonly StationMean[];
  /** [-] */
  readonly probability: number;
}

/** Choices of gross readings less probable than this are not told apart. */
const leastChoice = 0.01;

/** The choices of gross readings worth telling apart, the most probable first; one where none is in doubt. */
export function grossChoices(
  profile: Profile,
  { sets }: DoubtfulReadings,
  means: readonly StationMean[],
): readonly GrossChoice[] {
  const worth = sets.filter(({ probability }) => probability >= leastChoice);
  if (worth.length < 2) return [{ of: means, probability: 1 }];
  const total = worth.reduce((sum, { probability }) => sum + probability, 0);
  return worth.map(({ gross, probability }, k) => ({
    of: k === 0 ? means : stationMeans(profile, profile.stations, gross),
    probability: probability / total,
  }));
}

/**
 * A band's line with the doubt in it which of its readings are gross.
 *
 * level = Σ p·level(choice), variance = Σ p·[variance(choice) + (level(choice) − level)²], p the probability of a choice
 * of gross readings; the slope stays.
 *
 * @param segment  the line by the most probable choice [m]
 * @param from  first and
 * @param to  last position of the band [m]
 * @param choices  as `grossChoices` gives them, the stations that stand off alone left out
 * @param widened  factor that will be put on the uncertainties [-]
 */
export function bandInDoubt<S extends SegmentLine>(
  segment: S,
  from: number,
  to: number,
  choices: readonly GrossChoice[],
  widened: number,
): S {
  if (choices.length < 2) return segment;
  const levels = choices.map(({ of, probability }) => {
    let [weight, level] = [0, 0];
    for (const { position, diameter, u } of of) {
      if (position < from || position > to) continue;
      const w = u ** -2;
      weight += w;
      level += (w / weight) * (diameter - segment.slope * (position - segment.centre) - level);
    }
    return { probability, level, variance: 1 / weight };
  });
  const [first] = levels;
  const mean = (of: (one: (typeof levels)[number]) => number): number =>
    levels.reduce((sum, one) => sum + one.probability * of(one), 0);
  const shift = mean(({ level }) => level - first!.level);
  const between = mean(({ level }) => (level - first!.level - shift) ** 2);
  const within = mean(({ variance }) => variance - first!.variance);
  if (!Number.isFinite(shift)) return segment; // a choice that leaves the band no reading
  return {
    ...segment,
    level: segment.level + shift,
    uLevel: Math.sqrt(Math.max(0, segment.uLevel ** 2 + within + between / widened ** 2)),
  };
}
