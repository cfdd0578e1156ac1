import type { Walks } from "./band-posterior-counts.js";
import { flatShare, heightGiven, type LinePrior } from "./band-posterior-model.js";
import type { EdgePlaces } from "./band-posterior-places.js";
import type { LastBands } from "./band-posterior-steps.js";
import type { AveragedLevel } from "./band-posterior-types.js";
import { RunningSums } from "./running-sums.js";

/** Bands less probable than this are left out of an averaged level. */
const negligible = 1e-18;

/**
 * Level at each position, averaged over all divisions and over the shape of the band there.
 *
 * mean = Σ p·mean(band), variance = Σ p·[variance(band) + (mean(band) − mean)²], p being the probability that
 * the band covers the position. In a gap that holds an edge, the edge is taken to lie anywhere in the gap alike.
 *
 * @param at positions wanted, within the readings
 * @param x positions, ascending
 * @param y readings
 * @param w weights 1/u²
 * @param places where bands may begin and end
 * @param prior prior of the line of a band
 * @param lastBands shares of the last bands, by end
 * @param table walks through the readings
 * @param factor weight of each number of bands, made so that the probabilities add to 1
 */
export function averagedLevels(
  at: readonly number[],
  x: Float64Array,
  y: Float64Array,
  w: Float64Array,
  places: EdgePlaces,
  prior: LinePrior,
  lastBands: readonly LastBands[],
  table: Walks,
  factor: Float64Array,
): AveragedLevel[] {
  if (at.length === 0) return [];
  const mixtures = at.map(() => new Mixture());
  const spots = at.map((position) => spotOf(position, x));
  const sums = new RunningSums();
  for (let t = 1; t < lastBands.length; t++) {
    const { from, share } = lastBands[t]!;
    const behind = countsBehind(table, t, factor);
    if (behind === null) continue;
    sums.clear();
    for (let s = t - 1; s >= from; s--) {
      sums.add(w[s]!, x[s]!, y[s]!);
      const p = (share[s - from] ?? 0) * countsBefore(table, s, behind);
      if (p < negligible) continue;
      const flat = flatGiven(sums, prior, s <= places.lastFlat[t]!, s <= places.lastSloping[t]!);
      spots.forEach((spot, i) => {
        const covered = p * coverOf(spot, s, t);
        if (covered === 0) return;
        for (const shape of ["flat", "sloping"] as const) {
          const weight = covered * (shape === "flat" ? flat : 1 - flat);
          if (weight > 0) mixtures[i]!.add(weight, heightGiven(sums, prior, shape, at[i]!));
        }
      });
    }
  }
  return mixtures.map(({ mean, variance }, i) =>
    Object.freeze({ position: at[i]!, value: mean, standardUncertainty: Math.sqrt(variance) }),
  );
}

/** Probability that a band is flat, given its ends. */
export function flatGiven(
  sums: RunningSums,
  prior: LinePrior,
  mayBeFlat: boolean,
  maySlope: boolean,
): number {
  if (!maySlope) return 1;
  return mayBeFlat ? flatShare(sums, prior) : 0;
}

/** Mean and variance of a mixture, built up part by part. */
class Mixture {
  #weight = 0;
  #mean = 0;
  #within = 0;
  #between = 0;

  add(weight: number, part: { readonly mean: number; readonly variance: number }): void {
    const off = part.mean - this.#mean;
    const share = weight / (this.#weight + weight);
    this.#between += this.#weight * share * off * off;
    this.#within += weight * part.variance;
    this.#mean += share * off;
    this.#weight += weight;
  }

  get mean(): number {
    return this.#mean;
  }

  get variance(): number {
    return (this.#within + this.#between) / this.#weight;
  }
}

/** A position among the readings: at a reading (share 0), or a share of the way to the next. */
interface Spot {
  readonly reading: number;
  readonly share: number;
}

function spotOf(position: number, x: Float64Array): Spot {
  let reading = 0;
  while (reading + 1 < x.length && x[reading + 1]! <= position) reading += 1;
  const next = x[reading + 1] ?? Number.POSITIVE_INFINITY;
  return { reading, share: (position - x[reading]!) / (next - x[reading]!) };
}

/** Probability that the band of readings s … t−1 covers a spot: its edges lie anywhere in their gaps. */
function coverOf({ reading, share }: Spot, s: number, t: number): number {
  if (share === 0) return s <= reading && reading < t ? 1 : 0;
  if (reading === t - 1) return 1 - share;
  if (reading === s - 1) return share;
  return s <= reading && reading < t ? 1 : 0;
}

/** For each number of bands i before the band that ends at t: the weight of what may follow t; null for none. */
function countsBehind({ visit, width }: Walks, t: number, factor: Float64Array): Float64Array | null {
  const behind = new Float64Array(width);
  let any = false;
  for (let j = 0; j < width - 1; j++) {
    const v = visit[t * width + j]!;
    if (v === 0) continue;
    any = true;
    for (let i = 0; i + j + 1 < width; i++) behind[i]! += v * factor[i + j + 1]!;
  }
  return any ? behind : null;
}

function countsBefore({ reach, width }: Walks, s: number, behind: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < width - 1; i++) sum += reach[s * width + i]! * behind[i]!;
  return sum;
}
