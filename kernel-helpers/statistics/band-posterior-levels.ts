import { eachBand } from "./band-posterior-each-band.js";
import type { WeighedSet } from "./band-posterior-gross.js";
import { heightGiven } from "./band-posterior-model.js";
import type { AveragedLevel } from "./band-posterior-types.js";
import type { BandSums, LinePrior } from "./band-sums.js";

/** Bands less probable than this are left out of an averaged level. */
const negligible = 1e-18;

/**
 * Level at each position, averaged over all divisions and over the shape of the band there, and over which readings
 * are gross.
 *
 * mean = Σ p·mean(band), variance = Σ p·[variance(band) + (mean(band) − mean)²], p being the probability that
 * the band covers the position. In a gap that holds an edge, the edge is taken to lie anywhere in the gap alike.
 * Beyond the readings that count, the first or last band goes on.
 *
 * @param at positions wanted, within the readings
 * @param sets which readings may be gross, each with its probability; one row of readings
 * @param line prior of the line of a band
 */
export function averagedLevels(
  at: readonly number[],
  sets: readonly WeighedSet[],
  line: LinePrior,
): AveragedLevel[] {
  if (at.length === 0) return [];
  const mixtures = at.map(() => new Mixture());
  for (const { weighed, probability: ofSet } of sets) {
    const { places, readings } = weighed;
    const spots = at.map((position) => spotOf(position, readings.x));
    eachBand(weighed, line, negligible, (s, t, p, sums) => {
      const flat = flatGiven(sums, s <= places.lastFlat[t]!, s <= places.lastSloping[t]!);
      spots.forEach((spot, i) => {
        const covered = ofSet * p * coverOf(spot, s, t);
        if (covered === 0) return;
        for (const shape of ["flat", "sloping"] as const) {
          const weight = covered * (shape === "flat" ? flat : 1 - flat);
          if (weight > 0) mixtures[i]!.add(weight, heightGiven(sums.rows[0]!, line, shape, at[i]!));
        }
      });
    });
  }
  return mixtures.map(({ mean, variance }, i) =>
    Object.freeze({ position: at[i]!, value: mean, standardUncertainty: Math.sqrt(variance) }),
  );
}

/** Probability that a band is flat, given its ends. */
export function flatGiven(sums: BandSums, mayBeFlat: boolean, maySlope: boolean): number {
  if (!maySlope) return 1;
  if (!mayBeFlat) return 0;
  sums.weigh();
  return sums.flatShare();
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
  if (position < x[0]! || reading === x.length - 1) return { reading, share: 0 };
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
