import { type RepeatsTest, repeatsTestOf } from "./repeats-test.js";

/** Residuals of so many units in the last place of what they were reckoned from are rounding. */
const unitsInLastPlace = 8;
/** Of a longer list so many readings, evenly spread, say how large its numbers are: to ask all would take as long as a fit. */
const mostAsked = 1000;

/**
 * Rejects readings without stated uncertainty that lie on their model to the last digit: they tell no scatter.
 *
 * @param where the helper that asks, and what it fits: "the line"
 * @param residuals readings less model [unit of y]
 * @param sizeAt what a residual was reckoned from: the sum of the sizes of its terms [unit of y]; the largest counts
 * @param give what to state instead, e.g. "u"
 */
export function requireScatter(
  { where, model, give }: { readonly where: string; readonly model: string; readonly give: string },
  residuals: ArrayLike<number>,
  sizeAt: (i: number) => number,
): void {
  const n = residuals.length;
  const stride = Math.ceil(n / mostAsked);
  let largest = sizeAt(n - 1);
  for (let i = 0; i < n; i += stride) largest = Math.max(largest, sizeAt(i));
  for (let i = 0; i < n; i++)
    if (Math.abs(residuals[i]!) > unitsInLastPlace * Number.EPSILON * largest) return;
  throw new RangeError(
    `${where}: the readings must scatter about ${model} for their uncertainty to be learnt from it, got ${residuals.length} that lie on it to the last digit; give ${give}, for readings rounded to a step at least step/√12 (half the step over √3)`,
  );
}

/** Rejects readings of one place that no uncertainty near the one stated reconciles; see `repeatsTest`. */
export function requireAgreeingRepeats(
  where: string,
  x: readonly number[],
  y: readonly number[],
  weights: ArrayLike<number>,
  names: RepeatNames = { x: "x", y: "y" },
): void {
  const test = repeatsTestOf(x, y, weights);
  if (test.contradictory) throw contradiction(where, x, y, test, names);
}

/** What the caller calls the two lists. */
export interface RepeatNames {
  readonly x: string;
  readonly y: string;
}

/** The refusal of repeats that contradict each other. */
export function contradiction(
  where: string,
  x: readonly number[],
  y: readonly number[],
  { worst, noiseRatio }: RepeatsTest,
  names: RepeatNames,
): RangeError {
  const { indices, differenceInU } = worst!;
  const [i, j] = indices;
  const large = (times: number): string =>
    times < 1e4 ? String(Number(times.toPrecision(3))) : times.toExponential(1);
  return new RangeError(
    `${where}: repeated readings must agree within their uncertainty, got ${names.y}[${i}] = ${y[i]} and ${names.y}[${j}] = ${y[j]} at ${names.x} = ${x[i]}, ${large(differenceInU)} standard uncertainties of a difference apart; read there once more and strike the wrong one, or state the uncertainty that the repeats show, ${large(noiseRatio!)} times as large`,
  );
}
