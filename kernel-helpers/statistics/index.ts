// Probability of every division into bands
export { bandPosterior } from "./band-posterior.js";
export { positionOfEdge, shortestRunOfGaps } from "./band-posterior-edges.js";
export type {
  AveragedLevel,
  BandPosterior,
  BandPosteriorOptions,
  BandPrior,
  DoubtfulReading,
  EdgeInterval,
  EdgePlace,
  GrossSet,
  PosteriorEdge,
  PosteriorGap,
  PosteriorSegment,
} from "./band-posterior-types.js";
// Distributions
export { chiSquareCdf, chiSquareQuantile, chiSquareSurvival } from "./chi-square-distribution.js";
export { compensatedSum } from "./compensated-sum.js";
export { coverageFactor } from "./coverage-factor.js";
// Straightness
export { type Curvature, curvature } from "./curvature.js";
export { fCdf, fQuantile, fSurvival } from "./f-distribution.js";
// Many tests at once
export { foundAmong } from "./false-discovery.js";
// Approach to an end
export {
  type Approach,
  type Approaching,
  approachAt,
  type FitApproachOptions,
  fitApproach,
} from "./fit-approach.js";
// Lines
export { type FitLineOptions, fitLine } from "./fit-line.js";
export { type BothErrorsOptions, fitLineBothErrors } from "./fit-line-both-errors.js";
export {
  type DemingOptions,
  fitLineDeming,
  fitLineOrthogonal,
  type OrthogonalOptions,
} from "./fit-line-deming.js";
export {
  fitLineRobust,
  type LineOutlier,
  type RobustLine,
  type RobustLineOptions,
} from "./fit-line-robust.js";
// Waves round a circle
export {
  countDirections,
  type FitHarmonicsOptions,
  fitHarmonics,
  type Harmonic,
  type HarmonicCovariance,
  type HarmonicFit,
  harmonicOf,
} from "./harmonics.js";
export {
  type Kink,
  type KinkedLine,
  type KinkedLineOptions,
  type KinkedPiece,
  kinkedLine,
} from "./kinked-line.js";
export { type LeastSquaresFit, type LeastSquaresOptions, leastSquares } from "./least-squares.js";
export type { LineFit, Point } from "./line-fit.js";
export { type LineInfluence, lineInfluence, type PointInfluence } from "./line-influence.js";
export {
  inverseInterval,
  type LineInterval,
  type LineIntervalOptions,
  predictInterval,
} from "./line-interval.js";
export { type MonteCarloInput, monteCarlo, type Simulated } from "./monte-carlo.js";
// Uncertainty: values that know what it came from, and simulation
export {
  arcsineAbout,
  asMeasured,
  type Distribution,
  type DistributionShape,
  distributionOf,
  normalAbout,
  rectangularAbout,
  studentTAbout,
  triangularAbout,
} from "./monte-carlo-distribution.js";
export type {
  Histogram,
  LinearComparison,
  MonteCarlo,
  MonteCarloOptions,
  PlainInterval,
} from "./monte-carlo-types.js";
export { normalCdf, normalQuantile } from "./normal-distribution.js";
// Segments along a line
export {
  type Partition,
  type PartitionEdge,
  type PartitionGrossReading,
  type PartitionOptions,
  type PartitionSegment,
  partition,
} from "./partition.js";
export {
  type RobustPartition,
  type RobustPartitionOptions,
  type RobustSegment,
  robustPartition,
} from "./partition-robust.js";
export type { SegmentShape } from "./partition-search.js";
export { type Estimate, inverseLine, predictLine } from "./predict-line.js";
export {
  type RandomGenerator,
  randomGenerator,
  randomGeneratorFrom,
  splitMix64,
} from "./random-generator.js";
// Repeated readings of one place
export { type RepeatsApart, type RepeatsTest, repeatsTest } from "./repeats-test.js";
export { riceCdf } from "./rice-distribution.js";
export { type RunsTest, runsTest } from "./runs-test.js";
export { evaluateSegment, type SegmentLine } from "./segment.js";
export { type SharedTimeConstant, sharedTimeConstant } from "./shared-time-constant.js";
export { type CoverageIntervals, type Interval, shortestInterval } from "./shortest-interval.js";
export { studentTCdf, studentTQuantile } from "./student-t-distribution.js";
export * from "./uncertain/index.js";
export { welchSatterthwaite } from "./welch-satterthwaite.js";
