import type { SegmentShape } from "./partition-search.js";

/** What is known about the readings, and what is believed of the bands before the readings are looked at. */
export interface BandPosteriorOptions {
  /** Known standard uncertainty of each value, or one for all [unit of value]. */
  readonly u: number | readonly number[];
  /** Shapes a band may have, each as likely as the other where the readings suffice for both. Default both. */
  readonly shapes?: readonly SegmentShape[];
  /** Fewest readings of a band [-]; default 2. */
  readonly minimumPoints?: number;
  /**
   * Fewest readings of a sloping band [-], at least 3 and at 3 different positions; default 4 (3 where there
   * are only 3 positions).
   */
  readonly minimumSlopingPoints?: number;
  /** Most bands considered [-], 1 to 200; default 20. */
  readonly maximumBands?: number;
  /**
   * How likely 1, 2, 3, … bands are beforehand, up to a common factor [-]; default 1, ¼, ¹⁄₁₆, …: each
   * further band a quarter as likely.
   */
  readonly bandCountPrior?: readonly number[];
  /**
   * Where edges lie beforehand: "gaps" takes every gap between readings alike, "length" takes every place
   * along the line alike, so that a wide gap is likelier. Default "gaps".
   */
  readonly edgePrior?: "gaps" | "length";
  /** Middle of the normal prior of a band's height [unit of value]; default the middle of the values. */
  readonly levelCentre?: number;
  /**
   * Standard deviation of that prior [unit of value]; default the range of the values, at least 10 times the
   * median u.
   */
  readonly levelSpread?: number;
  /**
   * Standard deviation of the normal prior of a slope, about 0 [unit of value / unit of position]; default
   * levelSpread over a quarter of the length surveyed.
   */
  readonly slopeSpread?: number;
  /** Fewest different positions of a band [-]; default 1. */
  readonly minimumPositions?: number;
  /**
   * The row each reading belongs to, such as its angle round the shaft, by any name. Rows share their edges, and in each
   * band the line of each row stands off from the band's by an amount of its own. Default one row. At most 64.
   */
  readonly rows?: readonly (number | string)[];
  /**
   * Standard deviation of that amount [unit of value]; that of its slope is in proportion. Default half of levelSpread
   * where there are several rows.
   */
  readonly rowSpread?: number;
  /** Probability beforehand that a reading is gross [-], 0 to 0.5; default 0.01. With 0 all count. */
  readonly grossProbability?: number;
  /**
   * Width of the range in which a gross reading lies anywhere alike [unit of value]; default twice the range of the
   * values, at least 200 times the median u.
   */
  readonly grossRange?: number;
  /** Readings to begin the search for gross ones with [index]; default those that `partition` puts aside. */
  readonly suspects?: readonly number[];
  /** Number of bands whose edges are described [-]; default the most probable number. */
  readonly bands?: number;
  /** Share each interval of an edge covers [-]; default 0.95. */
  readonly coverage?: number;
  /** Positions where the level is wanted, within the readings [unit of position]; default none. */
  readonly at?: readonly number[];
}

/** A gap between neighbouring readings that may hold an edge. */
export interface PosteriorGap {
  /** Readings at its two sides [index]. */
  readonly after: number;
  readonly before: number;
  /** Their positions [unit of position]. */
  readonly low: number;
  readonly high: number;
  /** Probability that an edge lies in it, over all numbers of bands [-]. */
  readonly probability: number;
}

/** The stretch in which an edge lies with a stated probability: from one reading to another. */
export interface EdgeInterval {
  /** Readings at its two ends [index]. */
  readonly after: number;
  readonly before: number;
  /** Their positions [unit of position]. */
  readonly low: number;
  readonly high: number;
  /** Probability that the edge lies in it, given the number of bands [-]. */
  readonly probability: number;
}

/** Where an edge lies, each gap holding it with its probability and every place within a gap being alike. */
export interface EdgePosition {
  /** Mean and standard deviation, given the number of bands [unit of position]. */
  readonly value: number;
  readonly standardUncertainty: number;
  /** It lies between these with probability `coverage`, and as likely below as above [unit of position]. */
  readonly low: number;
  readonly high: number;
}

/** A gap that may hold a certain edge. */
export interface EdgePlace {
  /** Positions of its two sides [unit of position]. */
  readonly low: number;
  readonly high: number;
  /** [-] */
  readonly probability: number;
}

/** An edge of the most probable division into the described number of bands. */
export interface PosteriorEdge {
  /** Readings at the two sides of its gap [index], and their positions [unit of position]. */
  readonly after: number;
  readonly before: number;
  readonly low: number;
  readonly high: number;
  /** Probability that its gap holds an edge, over all numbers of bands [-]. */
  readonly probability: number;
  /** Probability that this edge, counted along the line, lies in its gap, given the number of bands [-]. */
  readonly probabilityGivenBands: number;
  readonly position: EdgePosition;
  /** The gaps that hold it, given the number of bands, along the line; those below 1e-12 are left out. */
  readonly places: readonly EdgePlace[];
  /** Shortest run of gaps that holds this edge with at least probability `coverage`, given the number of bands. */
  readonly interval: EdgeInterval;
}

/** A band of the most probable division into the described number of bands. */
export interface PosteriorSegment {
  /** First and last reading that counts [index]. */
  readonly from: number;
  readonly to: number;
  /** Probability that it is flat and not sloping, given its two ends [-]. */
  readonly flatProbability: number;
}

/** The level at a position, averaged over all divisions by their probability. */
export interface AveragedLevel {
  readonly position: number;
  readonly value: number;
  /** Standard deviation of the mixture: within a division and between divisions [unit of value]. */
  readonly standardUncertainty: number;
}

/** What was believed beforehand, as used. */
export interface BandPrior {
  readonly levelCentre: number;
  readonly levelSpread: number;
  readonly slopeSpread: number;
  /** 0 where there is one row. */
  readonly rowSpread: number;
  readonly grossProbability: number;
  readonly grossRange: number;
  readonly edgePrior: "gaps" | "length";
  /** Probability of 1, 2, 3, … bands beforehand [-]. */
  readonly bandCount: readonly number[];
}

/** A reading that may be a gross error. */
export interface DoubtfulReading {
  readonly index: number;
  /** That it is one, by all the readings [-]. */
  readonly probability: number;
}

/** A choice of gross readings. */
export interface GrossSet {
  /** [index] */
  readonly gross: readonly number[];
  /** That just these are gross [-]. */
  readonly probability: number;
}

/** Probabilities of all divisions of readings along a line into bands. */
export interface BandPosterior {
  readonly kind: "band posterior";
  /** Probability of 1, 2, 3, … bands [-]. */
  readonly bandCountProbability: readonly number[];
  /** The most probable number of bands. */
  readonly bandCount: number;
  /** Every gap that may hold an edge, along the line. */
  readonly gaps: readonly PosteriorGap[];
  /** The number of bands described by `edges` and `segments`. */
  readonly bands: number;
  /**
   * Edges and bands of the most probable division into so many bands; both empty where so many bands are out of
   * the question (probability below about 1e-30).
   */
  readonly edges: readonly PosteriorEdge[];
  readonly segments: readonly PosteriorSegment[];
  /** Levels at the positions asked for. */
  readonly levels: readonly AveragedLevel[];
  /** Readings that are gross in the most probable choice of gross readings [index]. */
  readonly gross: readonly number[];
  /** Every reading that is gross with a probability of 0.01 or more, by index. */
  readonly doubtful: readonly DoubtfulReading[];
  /** The choices of gross readings summed over, the most probable first; those below 1e-6 of it are left out. */
  readonly grossSets: readonly GrossSet[];
  /** Estimated probability of the choices next to these that were not weighed [-]. */
  readonly grossLeft: number;
  /** Natural logarithm of the probability density of the readings, over all divisions and choices of gross ones. */
  readonly logEvidence: number;
  readonly prior: BandPrior;
}
