import { Matrix, QrDecomposition } from "ml-matrix";
import { requireFiniteList, requireSameLength } from "./check.js";
import { compensatedSum } from "./compensated-sum.js";
import { requireScatter } from "./refusals.js";

/** How the readings of a least-squares fit are weighted. */
export interface LeastSquaresOptions {
  /**
   * Weight of each reading [1/unit of y²]; default 1 each. With knownUncertainty they are 1/u², else only
   * their ratios count.
   */
  readonly weights?: readonly number[];
  /**
   * True when the weights are 1/u² with known standard uncertainties u: the covariance is then not scaled
   * by the scatter.
   */
  readonly knownUncertainty?: boolean;
}

/** A linear model fitted by least squares. */
export interface LeastSquaresFit {
  readonly kind: "least squares";
  /** One a column of the design [unit of y / unit of the column]. */
  readonly coefficients: readonly number[];
  /** Standard uncertainties of the coefficients: roots of the diagonal of the covariance. */
  readonly standardUncertainties: readonly number[];
  /** Covariance matrix of the coefficients, by rows. */
  readonly covariance: readonly (readonly number[])[];
  /** Reading less fit, unweighted [unit of y]. */
  readonly residuals: readonly number[];
  /** Readings less coefficients [-]. */
  readonly degreesOfFreedom: number;
  /** Σ w·residual² ([-] with known uncertainty, else [unit of w · unit of y²]). */
  readonly residualSumOfSquares: number;
  /** Root of residualSumOfSquares over degreesOfFreedom; null when nothing is left over to judge by. */
  readonly residualStandardDeviation: number | null;
  /** Share of the sum of squares of y explained [-]; null when y has none. */
  readonly rSquared: number | null;
  /** What that share is of: of the squares about the mean, or, without a constant column, about zero. */
  readonly rSquaredAbout: "mean" | "zero";
  /** True when the covariance was scaled by the scatter of the residuals. */
  readonly scaled: boolean;
}

/** A column is taken for a sum of others when what stands out of them is smaller than this share of it. */
const dependentBelow = 1e-12;

/**
 * Linear least squares: the coefficients c for which design·c comes nearest to y.
 *
 * Minimises Σ wᵢ (yᵢ − Σⱼ dᵢⱼ cⱼ)², by QR (Householder) of the design scaled to columns of length 1;
 * covariance (DᵀWD)⁻¹ × s², s² = Σ w r² / (n − p), or × 1 with known uncertainty
 *
 * Valid when: no column is a sum of the others (to 1 part in 1e12), errors in y alone and independent. R² is
 * about the mean when a column is constant, else about zero: the two are not comparable.
 *
 * @param design one row a reading, one column a coefficient
 * @param y readings [any one unit]
 * @param options.weights weight of each reading, > 0 [1/unit of y²]
 * @param options.knownUncertainty whether the weights are 1/u² with known u [-]
 * @returns coefficients with covariance, residuals, degrees of freedom and R²
 * @throws RangeError rows of unequal length, fewer readings than coefficients (or as many, with unknown
 * uncertainty), a weight that is not > 0, a dependent column, a value that is not finite, or, with unknown uncertainty,
 * readings that lie on the fit exactly and so tell none
 * @example leastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5.3]).coefficients // [0.95, 2.15]
 * @source G. H. Golub, C. F. Van Loan, Matrix Computations, 3rd edition, 1996, section 5.3 (from memory);
 * checked against NIST StRD, Longley
 */
export function leastSquares(
  design: readonly (readonly number[])[],
  y: readonly number[],
  options: LeastSquaresOptions = {},
): LeastSquaresFit {
  const where = "leastSquares";
  const { knownUncertainty = false } = options;
  const columns = design[0]?.length ?? 0;
  if (columns === 0) throw new RangeError(`${where}: design needs at least one column, got none`);
  requireFiniteList(where, "y", y, knownUncertainty ? columns : columns + 1);
  if (design.length !== y.length)
    throw new RangeError(`${where}: design needs one row a reading (${y.length}), got ${design.length}`);
  design.forEach((row, i) => {
    requireFiniteList(where, `design[${i}]`, row, 0);
    if (row.length !== columns)
      throw new RangeError(`${where}: design[${i}] must have ${columns} columns, got ${row.length}`);
  });
  if (knownUncertainty && options.weights === undefined)
    throw new RangeError(`${where}: knownUncertainty needs weights (1/u²), got none`);
  const weights = options.weights ?? new Array<number>(y.length).fill(1);
  requireFiniteList(where, "weights", weights, 0);
  requireSameLength(where, "weights", weights, "y", y);
  weights.forEach((w, i) => {
    if (w <= 0) throw new RangeError(`${where}: weights[${i}] must be greater than 0, got ${w}`);
  });

  const roots = weights.map(Math.sqrt);
  const lengths = Array.from({ length: columns }, (_, j) =>
    Math.sqrt(compensatedSum(design.map((row, i) => weights[i]! * row[j]! ** 2))),
  );
  lengths.forEach((length, j) => {
    if (length === 0) throw new RangeError(`${where}: column ${j} of design must not be all 0, got only 0`);
  });
  const scaledDesign = new Matrix(design.map((row, i) => row.map((d, j) => (d * roots[i]!) / lengths[j]!)));
  const qr = new QrDecomposition(scaledDesign);
  const r = qr.upperTriangularMatrix;
  for (let j = 0; j < columns; j++) {
    if (Math.abs(r.get(j, j)) < dependentBelow)
      throw new RangeError(
        `${where}: no column of design may be a sum of the others, got column ${j} that is one`,
      );
  }

  const solve = (right: readonly number[]): number[] =>
    qr
      .solve(Matrix.columnVector(right.map((v, i) => v * roots[i]!)))
      .to1DArray()
      .map((c, j) => c / lengths[j]!);
  const residualsOf = (c: readonly number[]): number[] =>
    y.map((v, i) => compensatedSum([v, ...design[i]!.map((d, j) => -d * c[j]!)]));
  const first = solve(y);
  // One step of refinement: the residuals of an exact fit carry no more of the design.
  const correction = solve(residualsOf(first));
  const coefficients = first.map((c, j) => c + correction[j]!);
  const residuals = residualsOf(coefficients);
  if (!knownUncertainty)
    requireScatter({ where, model: "the fit", give: "weights 1/u² with knownUncertainty" }, residuals, (i) =>
      design[i]!.reduce((size, d, j) => size + Math.abs(d * coefficients[j]!), Math.abs(y[i]!)),
    );
  const degreesOfFreedom = y.length - columns;
  const residualSumOfSquares = compensatedSum(residuals.map((e, i) => weights[i]! * e * e));
  const variance = degreesOfFreedom > 0 ? residualSumOfSquares / degreesOfFreedom : null;
  const scale = knownUncertainty || variance === null ? 1 : variance;

  const inverse = invertUpper(r, columns);
  const covariance = Array.from({ length: columns }, (_, i) =>
    Object.freeze(
      Array.from({ length: columns }, (_, j) => {
        let sum = 0;
        for (let k = Math.max(i, j); k < columns; k++) sum += inverse[i]![k]! * inverse[j]![k]!;
        return (sum * scale) / (lengths[i]! * lengths[j]!);
      }),
    ),
  );

  const constant = Array.from({ length: columns }, (_, j) => j).some((j) =>
    design.every((row) => row[j] === design[0]![j]),
  );
  const centre = constant ? compensatedSum(y.map((v, i) => v * weights[i]!)) / compensatedSum(weights) : 0;
  const total = compensatedSum(y.map((v, i) => weights[i]! * (v - centre) ** 2));
  return Object.freeze({
    kind: "least squares",
    coefficients: Object.freeze(coefficients),
    standardUncertainties: Object.freeze(covariance.map((row, j) => Math.sqrt(row[j]!))),
    covariance: Object.freeze(covariance),
    residuals: Object.freeze(residuals),
    degreesOfFreedom,
    residualSumOfSquares,
    residualStandardDeviation: variance === null ? null : Math.sqrt(variance),
    rSquared: total > 0 ? 1 - residualSumOfSquares / total : null,
    rSquaredAbout: constant ? "mean" : "zero",
    scaled: !knownUncertainty,
  });
}

/** Inverse of an upper triangular matrix, by rows. */
function invertUpper(r: Matrix, size: number): number[][] {
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++) {
    inverse[j]![j] = 1 / r.get(j, j);
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += r.get(i, k) * inverse[k]![j]!;
      inverse[i]![j] = -sum / r.get(i, i);
    }
  }
  return inverse;
}
