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
}

/** How often the noise may be learnt anew before the bands stand. */
const mostRounds = 5;

/** Divides the station means, learning the noise from them where they scatter more than stated. */
export function divideMeans(means: readonly StationMean[], divide: Divide): DividedMeans {
  const x = means.map(({ position }) => position);
  const y = means.map(({ diameter }) => diameter);
  const u = means.map((mean) => mean.u);
  let factor = demandedByScatter(x, y, u);
  for (let round = 1; ; round++) {
    const found = divide(x, y, scaled(u, factor));
    const chiSquare = found.totalChiSquare * factor ** 2;
    const noiseRatio = Math.sqrt(chiSquare / found.degreesOfFreedom);
    const tooMuch = scattersTooMuch(chiSquare, found.degreesOfFreedom);
    if (!tooMuch || round === mostRounds || noiseRatio <= factor * 1.01) {
      // The lines do not depend on a common factor of u, but their uncertainties do: back to those stated.
      const parts = { ...found, segments: found.segments.map((s) => statedAgain(s, factor)) };
      return { parts, noiseRatio, widened: tooMuch ? noiseRatio : 1 };
    }
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
