import { RunningSums } from "./running-sums.js";

/** A block of the lowest level holds so many starts, and one of the next level so many blocks. */
export const blockSize = 4;

/**
 * Numbers kept of each block, side by side: the sums w, x, y, xx, xy, yy of its readings (see `RunningSums`), and the
 * least of F(s) plus the chi-square, about a level and about a sloping line, from s to the end of the block.
 */
const numbers = 8;

/**
 * Starts in blocks, and blocks in larger ones, each with a bound on what any of its starts can come to: see
 * `searchPartition`, which passes over whole blocks.
 */
export class StartBlocks {
  /** Starts of a block, and where its blocks begin, of each level. */
  private readonly sizes: readonly number[];
  private readonly places: readonly number[];
  private readonly blocks: Float64Array;
  private readonly sums = new RunningSums();

  // Plain fields, not those of #: they are read millions of times.
  /**
   * @param best  F(s), filled by the search as it goes on
   * @param slopes  whether sloping segments are allowed
   */
  constructor(
    private readonly best: Float64Array,
    private readonly x: Float64Array,
    private readonly y: Float64Array,
    private readonly w: Float64Array,
    private readonly slopes: boolean,
  ) {
    const sizes: number[] = [];
    const places: number[] = [];
    let total = 0;
    for (let size = blockSize; size <= x.length; size *= blockSize) {
      sizes.push(size);
      places.push(total);
      total += numbers * Math.floor(x.length / size);
    }
    this.sizes = sizes;
    this.places = places;
    this.blocks = new Float64Array(total);
  }

  /** Bounds every block that ends before t, once F is known up to t − 1. */
  closeAt(t: number): void {
    for (let l = 0; l < this.sizes.length && t % this.sizes[l]! === 0; l++)
      this.close(this.sizes[l]!, this.places[l]!, t);
  }

  private close(size: number, place: number, t: number): void {
    const { best, x, y, w, sums, slopes, blocks } = this;
    let leastFlat = Number.POSITIVE_INFINITY;
    let leastSloping = Number.POSITIVE_INFINITY;
    sums.clear();
    for (let s = t - 1; s >= t - size; s--) {
      sums.add(w[s]!, x[s]!, y[s]!);
      const flat = best[s]! + sums.flat();
      if (flat < leastFlat) leastFlat = flat;
      if (slopes) {
        const sloping = best[s]! + sums.sloping();
        if (sloping < leastSloping) leastSloping = sloping;
      }
    }
    const at = place + numbers * (t / size - 1);
    blocks[at] = sums.w;
    blocks[at + 1] = sums.x;
    blocks[at + 2] = sums.y;
    blocks[at + 3] = sums.xx;
    blocks[at + 4] = sums.xy;
    blocks[at + 5] = sums.yy;
    blocks[at + 6] = leastFlat;
    blocks[at + 7] = leastSloping;
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
    const { sizes, places, blocks: b } = this;
    let l = 0;
    while (l + 1 < sizes.length && s % sizes[l + 1]! === 0) l += 1;
    for (; l >= 0; l--) {
      const size = sizes[l]!;
      const at = places[l]! + numbers * (s / size - 1);
      if (b[at + 6]! + flat <= beatable || b[at + 7]! + sloping <= beatable) continue;
      sums.join(b[at]!, b[at + 1]!, b[at + 2]!, b[at + 3]!, b[at + 4]!, b[at + 5]!);
      return size;
    }
    return 0;
  }
}
