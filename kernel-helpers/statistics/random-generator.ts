import { edges, fastNormal, inside, rareNormal } from "./random-generator-normal.js";

/** A source of random numbers that gives the same ones for the same seed, on every machine. */
export interface RandomGenerator {
  /** A whole number from 0 to 2³² − 1, all equally likely. */
  whole(): number;
  /** A number between 0 and 1, never 0 nor 1, from 2⁵² equally likely ones. */
  uniform(): number;
  /** A standard normal number: mean 0, standard deviation 1. */
  normal(): number;
  /**
   * Fills a list with normal numbers, mean + deviation · z: z the same ones, in the same order, that `normal` gives,
   * sooner. Left out: 0 and 1.
   */
  fillNormal(target: Float64Array, mean?: number, deviation?: number): void;
}

const mask64 = (1n << 64n) - 1n;

/**
 * The first outputs of SplitMix64: turns one number into as much well-mixed state as wanted.
 *
 * @param seed   where to start, any whole number from 0 to 2⁶⁴ − 1 [-]
 * @param count  how many outputs [-]
 * @returns whole numbers of 64 bits [-]
 * @example String(splitMix64(1234567n, 1)[0]) // "6457827717110365317"
 * @source G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014, figures
 * 16 and 17; constants of S. Vigna's splitmix64.c (from memory)
 */
export function splitMix64(seed: bigint, count: number): readonly bigint[] {
  let state = seed & mask64;
  return Array.from({ length: count }, () => {
    state = (state + 0x9e3779b97f4a7c15n) & mask64;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & mask64;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & mask64;
    return z ^ (z >> 31n);
  });
}

/** xoshiro128**: four words of state, 32 bits a step, period 2¹²⁸ − 1. Plain fields, for speed. */
class Xoshiro128StarStar implements RandomGenerator {
  private a: number;
  private b: number;
  private c: number;
  private d: number;

  constructor([a, b, c, d]: readonly [number, number, number, number]) {
    this.a = a | 0;
    this.b = b | 0;
    this.c = c | 0;
    this.d = d | 0;
  }

  whole(): number {
    const b = this.b;
    const x = Math.imul(b, 5);
    const result = Math.imul((x << 7) | (x >>> 25), 9) >>> 0;
    const c = this.c ^ this.a;
    const d = this.d ^ b;
    this.b = b ^ c;
    this.a ^= d;
    this.c = c ^ (b << 9);
    this.d = (d << 11) | (d >>> 21);
    return result;
  }

  uniform(): number {
    return ((this.whole() >>> 6) * 0x4000000 + (this.whole() >>> 6) + 0.5) / 0x10000000000000;
  }

  normal(): number {
    return fastNormal(this);
  }

  // `fastNormal` and `whole` written out, with state and tables in local variables, which halves the time.
  fillNormal(target: Float64Array, mean: number = 0, deviation: number = 1): void {
    let { a, b, c, d } = this;
    const [right, sure] = [edges, inside];
    for (let i = 0; i < target.length; i++) {
      let x = Math.imul(b, 5);
      const first = Math.imul((x << 7) | (x >>> 25), 9);
      let t = b << 9;
      c ^= a;
      d ^= b;
      b ^= c;
      a ^= d;
      c ^= t;
      d = (d << 11) | (d >>> 21);
      x = Math.imul(b, 5);
      const second = Math.imul((x << 7) | (x >>> 25), 9);
      t = b << 9;
      c ^= a;
      d ^= b;
      b ^= c;
      a ^= d;
      c ^= t;
      d = (d << 11) | (d >>> 21);
      const layer = ((first & 63) << 1) | (second & 1);
      const place = ((first >>> 6) * 0x4000000 + (second >>> 6) + 0.5) / 0x8000000000000 - 1;
      const value = place * right[layer]!;
      if (Math.abs(place) < sure[layer]!) target[i] = mean + deviation * value;
      else {
        this.moveTo(a, b, c, d);
        target[i] = mean + deviation * rareNormal(this, layer, value);
        ({ a, b, c, d } = this);
      }
    }
    this.moveTo(a, b, c, d);
  }

  private moveTo(a: number, b: number, c: number, d: number): void {
    this.a = a;
    this.b = b;
    this.c = c;
    this.d = d;
  }
}

/**
 * A generator started from a seed. Good for simulation, not for secrets.
 *
 * xoshiro128**, its state filled by SplitMix64; normal numbers by the ziggurat.
 *
 * @param seed  any whole number from 0 to 2⁵³ − 1 [-]
 * @returns a generator; each call of one of its functions moves it on
 * @throws RangeError  the seed is no such whole number
 * @example randomGenerator(1).whole() === randomGenerator(1).whole() // true
 * @source D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators, ACM Transactions on
 * Mathematical Software 47 (2021) 36; reference program xoshiro128starstar.c, version 1.1
 */
export function randomGenerator(seed: number): RandomGenerator {
  if (!Number.isSafeInteger(seed) || seed < 0)
    throw new RangeError(`randomGenerator: seed must be a whole number from 0 to 2^53 − 1, got ${seed}`);
  const [low, high] = splitMix64(BigInt(seed), 2) as [bigint, bigint];
  const word = (of: bigint, shift: bigint): number => Number((of >> shift) & 0xffffffffn);
  return randomGeneratorFrom([word(low, 0n), word(low, 32n), word(high, 0n), word(high, 32n)]);
}

/**
 * A generator started from its full state, as reference programs are.
 *
 * @param state  four whole numbers of 32 bits, not all 0 [-]
 * @throws RangeError  all are 0, or one is no whole number from 0 to 2³² − 1
 * @example randomGeneratorFrom([1, 2, 3, 4]).whole() // 11520
 * @source as `randomGenerator`
 */
export function randomGeneratorFrom(state: readonly [number, number, number, number]): RandomGenerator {
  for (const word of state)
    if (!Number.isInteger(word) || word < 0 || word > 0xffffffff)
      throw new RangeError(
        `randomGeneratorFrom: state must be whole numbers from 0 to 2^32 − 1, got ${word}`,
      );
  if (state.every((word) => word === 0))
    throw new RangeError("randomGeneratorFrom: state must not be all 0, got 0, 0, 0, 0");
  return new Xoshiro128StarStar(state);
}
