import { requireFiniteList } from "./check.js";
import { logFactorial } from "./stirling.js";

/** Whether the signs of residuals follow one another by chance. */
export interface RunsTest {
  readonly kind: "runs test";
  /** Number of runs: unbroken rows of one sign [-]. */
  readonly runs: number;
  /** Residuals above and below 0 [-]. */
  readonly above: number;
  readonly below: number;
  /** Residuals of exactly 0, which take no side and are left out [-]. */
  readonly zeros: number;
  /** Number of runs to be expected by chance [-]. */
  readonly expected: number;
  /** Chance of so few runs or fewer [-]: small when residuals bow or drift. */
  readonly probabilityOfFew: number;
  /** Chance of so many runs or more [-]: small when residuals alternate. */
  readonly probabilityOfMany: number;
}

/**
 * Runs test of Wald and Wolfowitz on the signs of residuals, with its exact distribution.
 *
 * P(R = 2k) = 2 C(a−1, k−1) C(b−1, k−1) / C(a+b, a), P(R = 2k+1) = [C(a−1, k) C(b−1, k−1) + C(a−1, k−1)
 * C(b−1, k)] / C(a+b, a)
 *
 * Valid when: residuals are in order of position and independent but for their order; residuals about a
 * fitted line are nearly so. Each probability is one-sided. Exact for any number of residuals.
 *
 * @param residuals residuals in order of position [any one unit]
 * @returns runs, their expected number and the two one-sided probabilities
 * @throws RangeError no residual above 0 or none below, or a value that is not finite
 * @example runsTest([1, 1, 1, -1, -1, -1]).probabilityOfFew // 0.1, = 2/20
 * @source A. Wald, J. Wolfowitz, Annals of Mathematical Statistics 11 (1940) 147-162
 */
export function runsTest(residuals: readonly number[]): RunsTest {
  const where = "runsTest";
  requireFiniteList(where, "residuals", residuals, 2);
  const signs = residuals.filter((r) => r !== 0).map(Math.sign);
  const above = signs.filter((s) => s > 0).length;
  const below = signs.length - above;
  if (above === 0 || below === 0)
    throw new RangeError(
      `${where}: residuals must lie on both sides of 0, got ${above} above and ${below} below`,
    );
  const runs = signs.filter((s, i) => i === 0 || s !== signs[i - 1]).length;
  let few = 0;
  let many = 0;
  for (let r = 2; r <= 2 * Math.min(above, below) + 1; r++) {
    const p = probabilityOfRuns(r, above, below);
    if (r <= runs) few += p;
    if (r >= runs) many += p;
  }
  return Object.freeze({
    kind: "runs test",
    runs,
    above,
    below,
    zeros: residuals.length - signs.length,
    expected: 1 + (2 * above * below) / (above + below),
    probabilityOfFew: Math.min(1, few),
    probabilityOfMany: Math.min(1, many),
  });
}

function probabilityOfRuns(runs: number, a: number, b: number): number {
  const k = Math.floor(runs / 2);
  const all = logChoose(a + b, a);
  const term = (i: number, j: number): number => Math.exp(logChoose(a - 1, i) + logChoose(b - 1, j) - all);
  return runs % 2 === 0 ? 2 * term(k - 1, k - 1) : term(k, k - 1) + term(k - 1, k);
}

function logChoose(n: number, k: number): number {
  return k > n ? Number.NEGATIVE_INFINITY : logFactorial(n) - logFactorial(k) - logFactorial(n - k);
}
