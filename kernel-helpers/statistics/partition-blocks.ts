import { RunningSums } from "./running-sums.js";

/** A block of the lowest level holds so many starts, and one of the next level so many blocks. */
export const blockSize = 4;

/** All blocks of one level, each by its place. */
interface Level {
  /** Starts of a block. */
  readonly size: number;
  /** Sums of all readings of a block. */
  readonly w: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly xx: Float64Array;
  readonly xy: Float64Array;
  readonly yy: Float64Array;
  /** Least of F(s) plus the chi-square, about a level or a sloping line, from s to the end of the block. */
  readonly leastFlat: Float64Array;
  readonly leastSloping: Float64Array;
}

/**
 * Starts in blocks, and blocks in larger ones, each with a bound on what any of its starts can come to: see
 * `searchPartition`, which passes over whole blocks.
 */
export class StartBlocks {
  readonly #levels: readonly Level[];
  readonly #best: Float64Array;
  readonly #x: Float64Array;
  readonly #y: Float64Array;
  readonly #w: Float64Array;
  readonly #slopes: boolean;
  readonly #sums = new RunningSums();

  /**
   * @param best  F(s), filled by the search as it goes on
   * @param slopes  whether sloping segments are allowed
   */
  constructor(best: Float64Array, x: Float64Array, y: Float64Array, w: Float64Array, slopes: boolean) {
    const levels: Level[] = [];
    for (let size = blockSize; size <= x.length; size *= blockSize) {
      const list = (): Float64Array => new Float64Array(Math.floor(x.length / size));
      levels.push({
        size,
        w: list(),
        x: list(),
        y: list(),
        xx: list(),
        xy: list(),
        yy: list(),
        leastFlat: list(),
        leastSloping: list(),
      });
    }
    this.#levels = levels;
    this.#best = best;
    this.#x = x;
    this.#y = y;
    this.#w = w;
    this.#slopes = slopes;
  }

  /** Bounds every block that ends before t, once F is known up to t − 1. */
  closeAt(t: number): void {
    for (const level of this.#levels) {
      if (t % level.size !== 0) return;
      this.#close(level, t);
    }
  }

  #close(level: Level, t: number): void {
    const [best, x, y, w, sums, slopes] = [this.#best, this.#x, this.#y, this.#w, this.#sums, this.#slopes];
    let leastFlat = Number.POSITIVE_INFINITY;
    let leastSloping = Number.POSITIVE_INFINITY;
    sums.clear();
    for (let s = t - 1; s >= t - level.size; s--) {
      sums.add(w[s]!, x[s]!, y[s]!);
      const flat = best[s]! + sums.flat();
      if (flat < leastFlat) leastFlat = flat;
      if (slopes) {
        const sloping = best[s]! + sums.sloping();
        if (sloping < leastSloping) leastSloping = sloping;
      }
    }
    const k = t / level.size - 1;
    level.w[k] = sums.w;
    level.x[k] = sums.x;
    level.y[k] = sums.y;
    level.xx[k] = sums.xx;
    level.xy[k] = sums.xy;
    level.yy[k] = sums.yy;
    level.leastFlat[k] = leastFlat;
    level.leastSloping[k] = leastSloping;
  }

  /**
   * Passes over the largest block before s in which no start can win, and joins its readings to the sums.
   *
   * @param s  a multiple of the block size
   * @param flat  chi-square about a level of the readings behind s, and the cost of a flat segment
   * @param sloping  the same about a sloping line
   * @param beatable  what a start must come to or stay below to win
   * @param sums  of the readings behind s; joined
   * @returns how many starts were passed over, 0 where each must be tried
   */
  passOver(s: number, flat: number, sloping: number, beatable: number, sums: RunningSums): number {
    const levels = this.#levels;
    let top = 0;
    while (top + 1 < levels.length && s % levels[top + 1]!.size === 0) top += 1;
    for (let l = top; l >= 0; l--) {
      const level = levels[l]!;
      const k = s / level.size - 1;
      const hopeless = level.leastFlat[k]! + flat > beatable && level.leastSloping[k]! + sloping > beatable;
      if (!hopeless) continue;
      sums.join(level.w[k]!, level.x[k]!, level.y[k]!, level.xx[k]!, level.xy[k]!, level.yy[k]!);
      return level.size;
    }
    return 0;
  }
}
