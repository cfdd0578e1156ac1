import { RunningSums } from "./running-sums.js";

/**
 * Prior of the lines of a band: height at its weighted middle N(centre, level²), slope N(0, slope²); and how far the
 * line of each row may stand off from that: height N(0, row²), slope N(0, rowSlope²).
 */
export interface LinePrior {
  readonly levelCentre: number;
  readonly levelVariance: number;
  readonly slopeVariance: number;
  readonly rowVariance: number;
  readonly rowSlopeVariance: number;
}

/**
 * The readings of one band, row by row, and their probability density as a flat and as a sloping band, less the factor
 * Π 1/(u √2π) that all divisions share: exp(exponent)/√spread, and exp(exponent + gain)/√(spread · slopeSpread).
 *
 * Row a has W_a = Σw, x̄_a, ȳ_a and its sums about them. With X the weighted middle of the band, d = ȳ_a − centre,
 * δ = x̄_a − X, k_a = W_a/(1 + W_a τ_r²), K = Σk_a, q_a = 1/(1 + Sxx_a σ_r²) (τ, σ spreads of height and slope, τ_r, σ_r
 * those of the rows; means and sums S with a bar weighted by k):
 *
 * exponent = −½ [Σ Syy_a + S_dd + L d̄²], spread = Π(1 + W_a τ_r²) · (1 + K τ²), L = K/(1 + K τ²)
 * A = Σ Sxx_a q_a + S_δδ + L δ̄², B = Σ Sxy_a q_a + S_δd + L δ̄ d̄
 * gain = ½ [B² σ²/(1 + A σ²) + Σ Sxy_a² σ_r² q_a], slopeSpread = (1 + A σ²) Π(1 + Sxx_a σ_r²)
 *
 * With one row and τ_r = σ_r = 0 that is the normal line with a normal prior of the textbooks.
 */
export class BandSums {
  readonly rows: readonly RunningSums[];
  readonly #prior: LinePrior;
  /** As of the last `weigh`. */
  exponent = 0;
  spread = 1;
  gain = 0;
  slopeSpread = 1;

  constructor(rowCount: number, prior: LinePrior) {
    this.rows = Array.from({ length: rowCount }, () => new RunningSums());
    this.#prior = prior;
  }

  clear(): void {
    for (const row of this.rows) row.clear();
  }

  add(row: number, w: number, x: number, y: number): void {
    this.rows[row]!.add(w, x, y);
  }

  /** Least chi-square there can be of these readings, each row having its own line: it only grows as readings join. */
  leastChiSquare(sloping: boolean): number {
    let sum = 0;
    for (const row of this.rows) sum += sloping ? row.sloping() : row.flat();
    return sum;
  }

  /** Works out exponent, spread, gain and slopeSpread. */
  weigh(): void {
    const { levelCentre, levelVariance, slopeVariance, rowVariance, rowSlopeVariance } = this.#prior;
    let [w, middle] = [0, 0];
    for (const row of this.rows) {
      if (row.w === 0) continue;
      w += row.w;
      middle += (row.w / w) * (row.x - middle);
    }
    // Sums of the rows' means about their own middle, as RunningSums has them, but with the weights k.
    let [k, off, away, offOff, offAway, awayAway] = [0, 0, 0, 0, 0, 0];
    let [yy, xx, xy, spread, slopeSpread, rowGain] = [0, 0, 0, 1, 1, 0];
    for (const row of this.rows) {
      if (row.w === 0) continue;
      const wide = 1 + row.w * rowVariance;
      const steep = 1 + row.xx * rowSlopeVariance;
      const weight = row.w / wide;
      const d = row.y - levelCentre - off;
      const a = row.x - middle - away;
      const share = weight / (k + weight);
      const lever = k * share;
      offOff += lever * d * d;
      offAway += lever * d * a;
      awayAway += lever * a * a;
      off += share * d;
      away += share * a;
      k += weight;
      yy += row.yy;
      xx += row.xx / steep;
      xy += row.xy / steep;
      rowGain += (row.xy * row.xy * rowSlopeVariance) / steep;
      spread *= wide;
      slopeSpread *= steep;
    }
    const high = 1 + k * levelVariance;
    const lean = k / high;
    this.exponent = -0.5 * (yy + offOff + lean * off * off);
    this.spread = spread * high;
    const a = xx + awayAway + lean * away * away;
    const b = xy + offAway + lean * away * off;
    const steep = 1 + a * slopeVariance;
    this.gain = 0.5 * ((b * b * slopeVariance) / steep + rowGain);
    this.slopeSpread = slopeSpread * steep;
  }

  /** Probability that the band is flat, given its ends and that either shape is allowed; after `weigh`. */
  flatShare(): number {
    return 1 / (1 + Math.exp(this.gain) / Math.sqrt(this.slopeSpread));
  }

  /** Logarithm of the density, each allowed shape being as likely as the other; after `weigh`. */
  logDensity(mayBeFlat: boolean, maySlope: boolean): number {
    const flat = this.exponent - 0.5 * Math.log(this.spread);
    if (!maySlope) return mayBeFlat ? flat : Number.NEGATIVE_INFINITY;
    const sloping = flat + this.gain - 0.5 * Math.log(this.slopeSpread);
    if (!mayBeFlat) return sloping;
    const most = Math.max(flat, sloping);
    return most + Math.log(0.5 * (Math.exp(flat - most) + Math.exp(sloping - most)));
  }
}
