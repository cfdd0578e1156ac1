import type { Partition } from "../statistics/index.js";
import { demandedByScatter } from "./neighbour-scatter.js";
import { scattersTooMuch } from "./scatter-test.js";
import type { StationMean } from "./station-means.js";

/** Divides a row of values into bands. */
export type Divide = (x: readonly number[], y: readonly number[], u: readonly number[]) => Partition;

/** Bands of station means, and how well the noise stated fits them. */
export interface DividedMeans {
  /** Uncertainties in it are those of the noise as stated. */
  readonly parts: Partition;
  /** Scatter of the means about the bands over the uncertainty stated [-]. */
  readonly noiseRatio: number;
  /** The factor by which the uncertainties must be widened [-]: 1, or the noise ratio. */
  readonly widened: number;
  /** The factor on the uncertainty stated with which the bands were found [-]. */
  readonly factor: number;
}

/** How often the noise may be learnt anew before the bands stand. */
const mostRounds = 5;

/** Divides the station means, learning the noise from them where they scatter more than stated. */
export function divideMeans(means: readonly StationMean[], divide: Divide): DividedMeans {
  const { found, factor, noiseRatio, tooMuch } = divideLearning(
    means.map(({ position }) => position),
    means.map(({ diameter }) => diameter),
    means.map(({ u }) => u),
    divide,
    means.length <= mostForSeveral ? noisier : [],
  );
  // The lines do not depend on a common factor of u, but their uncertainties do: back to those stated.
  const parts = { ...found, segments: found.segments.map((s) => statedAgain(s, factor)) };
  return { parts, noiseRatio, widened: tooMuch ? noiseRatio : 1, factor };
}

/** Bands, and the factor on the noise stated with which they were found. */
interface Learnt {
  readonly found: Partition;
  readonly factor: number;
  /** Scatter about the bands over the uncertainty stated [-], and whether that is more than honest noise gives. */
  readonly noiseRatio: number;
  readonly tooMuch: boolean;
}

/** Noise so many times the stated is tried beside it, in rows of stations up to this many: a longer one tells anyway. */
const noisier = [1.4, 2, 2.8];
const mostForSeveral = 400;

/**
 * Divides a row of values whose noise may be larger than stated.
 *
 * Two accounts of large differences between neighbours can be given: many bands and the noise stated, or few bands and
 * a larger noise. In a long row the scatter about neighbours tells; in a short one most neighbours may lie in different
 * bands, and noise twice the stated may be divided into bands that look quiet. So several are worked out, from the
 * noise stated to that which the neighbours demand, and the most probable is taken: that of least
 *
 * Σ (residual/(f u))² + penalty × parameters of the bands + 2 ν ln f + (ln f/ln 2)², f ≥ 1 the factor on u;
 *
 * ν the degrees of freedom (those the bands took tell nothing of the noise); the last term is what is known of f beforehand: a noise stated by half too small is common, by a tenth rare.
 *
 * @param tried  factors on the noise to try besides [-]
 * @source normal likelihood with its scale unknown; the prior of f: judgement, no source
 */
export function divideLearning(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  divide: Divide,
  tried: readonly number[] = [],
): Learnt {
  const stated = settled(x, y, u, divide, 1);
  const demanded = demandedByScatter(x, y, u);
  const total = ({ found, factor }: Learnt): number =>
    found.criterion + 2 * found.degreesOfFreedom * Math.log(factor) + Math.log2(factor) ** 2;
  let best = stated;
  const starts = [...tried];
  for (let start = demanded; start > Math.max(1, ...tried); start /= 2) starts.push(start);
  for (const start of starts) {
    const other = settled(x, y, u, divide, start);
    if (total(other) < total(best)) best = other;
  }
  return best;
}

/** Divides with a factor on the noise, and anew with what scatter is left, until that no longer grows. */
function settled(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  divide: Divide,
  start: number,
): Learnt {
  let factor = start;
  for (let round = 1; ; round++) {
    const found = divide(x, y, scaled(u, factor));
    const chiSquare = found.totalChiSquare * factor ** 2;
    const noiseRatio = Math.sqrt(chiSquare / found.degreesOfFreedom);
    const tooMuch = scattersTooMuch(chiSquare, found.degreesOfFreedom);
    if (!tooMuch || round === mostRounds || noiseRatio <= factor * 1.01)
      return { found, factor, noiseRatio, tooMuch };
    factor = noiseRatio;
  }
}

function statedAgain<S extends { readonly uLevel: number; readonly uSlope: number }>(
  segment: S,
  factor: number,
): S {
  return { ...segment, uLevel: segment.uLevel / factor, uSlope: segment.uSlope / factor };
}

/** The uncertainties times a factor. */
export function scaled(u: readonly number[], factor: number): readonly number[] {
  return factor === 1 ? u : u.map((v) => v * factor);
}
