import type { EdgePlaces } from "./band-posterior-places.js";
import { BandSums, type LinePrior } from "./band-sums.js";

/** Readings that count, ready for computing: ascending positions, values, weights 1/u², and the row of each. */
export interface WeightedReadings {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly w: Float64Array;
  readonly row: Int32Array;
  readonly rowCount: number;
}

/** The last bands of the readings before t: their starts from … from + share.length − 1, and their shares. */
export interface LastBands {
  readonly from: number;
  /** Share of all weight of the readings before t that ends with a band s … t−1; they add to 1. */
  readonly share: Float64Array;
}

/** How all divisions of the readings may be read off from the last one backward. */
export interface BackwardSteps {
  /** For each end t, its last bands; none where no band may end at t. */
  readonly lastBands: readonly LastBands[];
  /** ln of the weight of all divisions of all readings, less Σ ln(1/(u √2π)); −Infinity where there is none. */
  readonly logTotal: number;
}

/**
 * Sums prior times likelihood over all divisions: forward recursion over readings 0 … n−1.
 *
 * F(t) = Σₛ F(s) · weight(s) · evidence(s, t); share(s | t) = F(s) weight(s) evidence(s, t) / F(t), where
 * evidence(s, t) is the probability density of readings s … t−1 as one band, its line and shape averaged out.
 *
 * In logarithms from t to t, so that nothing over- or underflows. The walk of s backward ends where all farther
 * starts together could not add e^−cut of what was found: evidence ≤ exp(−½ chi-square of the least-squares
 * line), which only grows as readings join.
 *
 * @param readings those that count
 * @param places where bands may begin and end
 * @param prior prior of the line of a band
 * @param cut shares below e^−cut are left out [-]
 * @returns shares of the last bands for every end, and the logarithm of the total
 * @source P. Fearnhead, Statistics and Computing 16 (2006) 203-213 (recursions; here in the mirrored direction)
 */
export function backwardSteps(
  { x, y, w, row, rowCount }: WeightedReadings,
  places: EdgePlaces,
  prior: LinePrior,
  cut: number,
): BackwardSteps {
  const n = x.length;
  const slopes = places.lastSloping.some((s) => s >= 0);
  const logF = new Float64Array(n + 1).fill(Number.NEGATIVE_INFINITY); // with the weight of an edge at t
  const highest = new Float64Array(n + 1).fill(Number.NEGATIVE_INFINITY); // of logF up to t
  logF[0] = 0;
  highest[0] = 0;
  const flat = new Float64Array(n); // exponents, and factors before them, by start
  const sloping = new Float64Array(n);
  const flatFactor = new Float64Array(n);
  const slopingFactor = new Float64Array(n);
  const none: LastBands = { from: 0, share: new Float64Array(0) };
  const lastBands: LastBands[] = [none];
  const sums = new BandSums(rowCount, prior);
  let logTotal = Number.NEGATIVE_INFINITY;

  for (let t = 1; t <= n; t++) {
    highest[t] = highest[t - 1]!;
    lastBands.push(none);
    if (t < n && places.weight[t] === 0) continue;
    const lastFlat = places.lastFlat[t]!;
    const lastSloping = places.lastSloping[t]!;
    const last = Math.max(lastFlat, lastSloping);
    let best = Number.NEGATIVE_INFINITY;
    let s = t;
    sums.clear();
    while (s > 0) {
      s -= 1;
      sums.add(row[s]!, w[s]!, x[s]!, y[s]!);
      if (s > last || places.weight[s] === 0) continue;
      const chiSquare = sums.leastChiSquare(slopes);
      if (highest[s]! - 0.5 * chiSquare < best - cut) {
        s += 1; // this start and all before it are left out
        break;
      }
      sums.weigh();
      const level = logF[s]! + sums.exponent;
      const factor = 1 / Math.sqrt(sums.spread);
      const both = s <= lastFlat && s <= lastSloping ? 0.5 : 1;
      flat[s] = s <= lastFlat ? level : Number.NEGATIVE_INFINITY;
      flatFactor[s] = both * factor;
      sloping[s] = s <= lastSloping ? level + sums.gain : Number.NEGATIVE_INFINITY;
      slopingFactor[s] = (both * factor) / Math.sqrt(sums.slopeSpread);
      best = Math.max(best, flat[s]!, sloping[s]!);
    }
    if (best === Number.NEGATIVE_INFINITY) continue;
    const share = new Float64Array(last - s + 1);
    let total = 0;
    for (let i = s; i <= last; i++) {
      if (places.weight[i] === 0) continue; // no edge before a reading at the position of the last one
      let term = 0;
      if (flat[i]! > best - cut) term += flatFactor[i]! * Math.exp(flat[i]! - best);
      if (sloping[i]! > best - cut) term += slopingFactor[i]! * Math.exp(sloping[i]! - best);
      share[i - s] = term;
      total += term;
    }
    for (let i = 0; i < share.length; i++) share[i]! /= total;
    lastBands[t] = { from: s, share };
    const sum = best + Math.log(total);
    if (t === n) logTotal = sum;
    else {
      logF[t] = sum + Math.log(places.weight[t]!);
      highest[t] = Math.max(highest[t]!, logF[t]!);
    }
  }
  return { lastBands, logTotal };
}
