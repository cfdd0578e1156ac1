// Distributions
export { chiSquareCdf, chiSquareQuantile, chiSquareSurvival } from "./chi-square-distribution.js";
export { compensatedSum } from "./compensated-sum.js";
export { coverageFactor } from "./coverage-factor.js";
// Straightness
export { type Curvature, curvature } from "./curvature.js";
export { fCdf, fQuantile, fSurvival } from "./f-distribution.js";
// Lines
export { type FitLineOptions, fitLine } from "./fit-line.js";
export { type BothErrorsOptions, fitLineBothErrors } from "./fit-line-both-errors.js";
export { type LeastSquaresFit, type LeastSquaresOptions, leastSquares } from "./least-squares.js";
export type { LineFit, Point } from "./line-fit.js";
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
export type { SegmentShape } from "./partition-search.js";
export { type Estimate, inverseLine, predictLine } from "./predict-line.js";
export { type RunsTest, runsTest } from "./runs-test.js";
export { evaluateSegment, type SegmentLine } from "./segment.js";
export { studentTCdf, studentTQuantile } from "./student-t-distribution.js";
